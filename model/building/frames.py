"""Rectangles that are glued up square, and the clamps that close them."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence

from model.building.joined import Joined
from model.building.joints import FRAMED
from model.building.record import Clamping, Square
from model.building.ways import Way, Ways
from model.part import Part
from model.shop.order.milling import CLAMPS_APART
from model.units import Mm

# How far two diagonals may differ, by the longer side of what is measured: a drawer or a front
# shows it in its gaps, a bed frame in how it stands. Common practice, no source.
_MOST: tuple[tuple[Mm, Mm], ...] = ((1200.0, 1.5875), (math.inf, 3.175))
_PRESSED = ("glued on top", "glued")
_HELD = ("glued and screwed", "screwed and glued", "screwed", "screwed from behind")
_HELD_APART: Mm = 900.0  # clamps that hold a piece to its line for its screws; common practice
_TENONED = ("tenon cheek", "tenon shoulder")

Span = tuple[Mm, Mm]


class Frames:
    """What is measured, and clamped, of the glue-ups of a bed."""

    def __init__(self, joined: Joined, ways: Ways) -> None:
        self._joined, self._ways = joined, ways
        low, high = joined.pieces.bounds
        self._low: list[list[float]] = low.tolist()
        self._high: list[list[float]] = high.tolist()

    # ------------------------------------------------------------ squares

    def square(self, what: str, pieces: Sequence[int]) -> Square | None:
        """The outer rectangle of a glue-up, over shoulders where tenons stand out, and without the
        tapered feet of posts; None for what is no rectangle of three pieces and more.
        """
        wood = [piece for piece in pieces if self._joined.is_wood(piece)]
        if len(wood) < 3:
            return None
        spans = [self._body(piece) for piece in wood]
        over = [(min(s[k][0] for s in spans), max(s[k][1] for s in spans)) for k in range(3)]
        width, length = sorted(high - low for low, high in over)[1:]
        return Square(what, length, width, math.hypot(length, width), self.most(length))

    def of_bed(self, posts: Sequence[int]) -> Square:
        """The plan of the whole bed, over the outer corners of its posts."""
        (x0, x1), (y0, y1), _ = self._spans(posts)
        length, width = y1 - y0, x1 - x0
        what = "The bed from corner to corner of its posts"
        return Square(what, length, width, math.hypot(length, width), self.most(length))

    def most(self, length: Mm) -> Mm:
        """How far the diagonals of a frame may differ."""
        return next(most for below, most in _MOST if length < below)

    def _body(self, piece: int) -> list[Span]:
        """What a piece fills on each bed axis, but for its tenons and a tapered foot."""
        part = self._joined.part(piece)
        near, far = _shoulders(part)
        spans = [(self._low[piece][k], self._high[piece][k]) for k in range(3)]
        along = self._joined.pieces.matrices[piece][:3, 0].tolist()
        axis = max(range(3), key=lambda k: abs(along[k]))
        low, high = spans[axis]
        off = (near, float(part.length) - far)
        start, stop = off if along[axis] > 0 else (off[1], off[0])
        spans[axis] = (low + start, high - stop)
        return spans

    # ------------------------------------------------------------ clamps

    def clamps(self, pieces: Sequence[int], there: Iterable[int]) -> tuple[Clamping, ...]:
        """Clamps for a glue-up of members: one over each row of joints, along the way they close.

        The span is that of the whole glue-up along this way.
        """
        own, known = set(pieces), {*pieces, *there}
        wood = {piece for piece in known if self._joined.is_wood(piece)}
        over: list[set[tuple[Mm, ...]]] = [set(), set(), set()]
        links = dict.fromkeys(link for piece in sorted(own) for link in self._joined.of(piece))
        for link in links:
            if link.joint in FRAMED and {link.one, link.other} <= wood:
                axis = self.closing_axis(link.one, link.other)
                over[axis].add(self._line(link.one, link.other, axis))
        spans = self._spans(wood)
        return tuple(
            Clamping(_apart(rows), spans[axis][1] - spans[axis][0])
            for axis, rows in enumerate(over)
            if rows
        )

    def pressing(self, pieces: Sequence[int], there: Iterable[int]) -> tuple[Clamping, ...]:
        """Clamps for what is glued down on a face, a hand and a half apart, over both pieces."""
        known = {*pieces, *there}
        found = []
        for piece in pieces:
            hosts = self._hosts(piece, known, _PRESSED)
            if hosts:
                axis = self.closing_axis(piece, hosts[0])
                low, high = self._spans([piece, *hosts[-1:]])[axis]
                long = max(high - low for low, high in self._spans([piece]))
                found.append(Clamping(int(long // CLAMPS_APART) + 1, high - low))
        return tuple(dict.fromkeys(found))

    def holding(self, pieces: Sequence[int], there: Iterable[int]) -> tuple[Clamping, ...]:
        """Clamps that hold a piece to its line while its screws are driven: one on a short piece,
        else at both ends, and between them on a long one. One piece after the other is fixed.
        """
        known = {*pieces, *there}
        most: dict[Mm, int] = {}
        for piece in pieces:
            hosts = self._hosts(piece, known, _HELD)
            if hosts:
                axis = self.closing_axis(piece, hosts[0])
                low, high = self._spans([piece, hosts[0]])[axis]
                long = max(high - low for low, high in self._spans([piece]))
                is_small = long < CLAMPS_APART and not self._is_front(piece)
                number = 1 if is_small else int(long // _HELD_APART) + 2
                span = round(high - low, 1)
                most[span] = max(number, most.get(span, 0))
        return tuple(Clamping(number, span) for span, number in most.items())

    def _is_front(self, piece: int) -> bool:
        """Whether a piece is of a front, whose stiles alone lie on the box."""
        return self._joined.part(piece).assembly == "fronts"

    def _hosts(self, piece: int, known: set[int], joints: Sequence[str]) -> list[int]:
        """The wood that a piece is joined to by some joints."""
        if not self._joined.is_wood(piece):
            return []
        return [
            link.other
            for link in self._joined.of(piece)
            if link.one == piece and link.other in known and link.joint in joints
            and self._joined.is_wood(link.other)
        ]  # fmt: skip

    def room(self, piece: int, others: Iterable[int], axis: int, sign: int) -> Mm:
        """How far a piece is from the next wood along a bed axis; inf where there is none."""
        return self._ways.room(piece, others, Way(axis, sign))

    def closing_axis(self, one: int, other: int) -> int:
        """The bed axis along which two pieces are pushed together: along it one can leave the
        other; of several that along which they share least.
        """
        leaving = self._ways.leaving((one,), (other,))
        free = {way.axis for way in leaving if self._ways.is_free((one,), (other,), way)}
        low, high = self._low, self._high
        shared = [
            min(high[one][k], high[other][k]) - max(low[one][k], low[other][k]) for k in range(3)
        ]
        return min(free or range(3), key=lambda k: (round(shared[k], 3), k))

    def _line(self, one: int, other: int, axis: int) -> tuple[Mm, ...]:
        """Where a clamp lies that closes a joint: the middle of what both share, to the cm."""
        low, high = self._low, self._high
        return tuple(
            round((max(low[one][k], low[other][k]) + min(high[one][k], high[other][k])) / 2, -1)
            for k in range(3)
            if k != axis
        )

    def _spans(self, pieces: Iterable[int]) -> list[Span]:
        own = list(pieces)
        return [
            (min(self._low[p][k] for p in own), max(self._high[p][k] for p in own))
            for k in range(3)
        ]


def _shoulders(part: Part) -> Span:
    """Where the body of a part begins and ends along its length: behind its tenons, and above a
    tapered foot, which is at its near end.
    """
    length = float(part.length)
    near = [float(cut.high[0]) for cut in part.cuts if cut.kind in _TENONED and cut.low[0] <= 0]
    far = [float(cut.low[0]) for cut in part.cuts if cut.kind in _TENONED and cut.high[0] >= length]
    foot = float(part.taper_length) if part.taper else 0.0
    return max([foot, *near]), min([length, *far])


def _apart(rows: set[tuple[Mm, ...]]) -> int:
    """How many clamps serve rows of joints: one reaches those that lie close beside it."""
    spread = [max(row[k] for row in rows) - min(row[k] for row in rows) for k in range(2)]
    across = 0 if spread[0] >= spread[1] else 1
    count, last = 0, -math.inf
    for at in sorted(row[across] for row in rows):
        if at - last >= CLAMPS_APART:
            count, last = count + 1, at
    return max(count, min(2, len({row[across] for row in rows})))
