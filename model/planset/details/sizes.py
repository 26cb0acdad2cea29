"""Which sizes a joint drawn large tells: those of its cut faces, and the room between them."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from itertools import pairwise
from typing import NamedTuple

import numpy as np

from model.cutting.record import Box
from model.drawings.clip import holds
from model.drawings.dimensioning.runs import Side, axis_of
from model.drawings.paper import Point
from model.drawings.views.section import Section
from model.drawings.views.view import View
from model.parts.pieces import Floats
from model.planset.details.fasteners import Bar
from model.planset.details.shots import Shown, Work
from model.planset.plate import Chain
from model.units import Mm

LEAST: Mm = 2.0  # of a straight face that is measured
SAME: Mm = 0.02
ROOM: Mm = 8.0  # a gap up to this is a room that was left on purpose
BORED = ("dowel hole", "bolt hole", "nut hole", "counterbore")
POCKETS = ("pocket pilot",)
AXES = (*BORED, "shank hole", *POCKETS)  # told by their axes


class Edge(NamedTuple):
    """A straight edge of a cut face along one axis of the paper: it stands `at` the other one's
    place, between two ends; wood lies towards `wood` (1 or -1).
    """

    axis: int
    at: Mm
    low: Mm
    high: Mm
    wood: int

    @property
    def ends(self) -> tuple[Point, Point]:
        """Its two ends on the paper."""
        if self.axis == 0:
            return (self.at, self.low), (self.at, self.high)
        return (self.low, self.at), (self.high, self.at)


def chains(seen: Shown) -> Iterator[Chain]:
    """The sizes of the two pieces of a joint, where one lies on the other, and the rooms between
    all that is cut.
    """
    view = seen.view
    own = [list(edges(view, row, seen.told[row])) for row in seen.both]
    wood, bought = (
        [list(edges(view, row, None)) for row in seen.rest if seen.is_bought[row] == each]
        for each in (False, True)
    )
    for axis in (0, 1):
        sides: tuple[Side, ...] = ("below", "below") if axis == 0 else ("left", "right")
        found = [
            _places(own[k], axis, _of((*seen.bars, *seen.crossing), seen.pieces[row]), view)
            for k, row in enumerate(seen.both)
        ]
        told: set[tuple[float, float]] = set()
        for k in sorted(range(len(found)), key=lambda k: -len(found[k])):
            spans = _spans([at for at, _ in found[k]])
            if not spans <= told:
                yield Chain(sides[k], _led_to(sides[k], found[k]))
            told |= spans
        # Between wood and wood, and between bought things: these lie close on the wood.
        rooms = (*_rooms([*own, *wood], axis), *_rooms(bought, axis))
        for ends in (*rooms, *_offset(found)):
            if not _spans([at for at, _ in ends]) <= told:
                told |= _spans([at for at, _ in ends])
                yield Chain(sides[0], _led_to(sides[0], ends))


def _offset(found: Sequence[list[tuple[Mm, Edge]]]) -> Iterator[tuple[tuple[Mm, Edge], ...]]:
    """How far apart the nearest faces of two pieces are that have none in line."""
    one, other = found
    pairs = [
        (a, b) if a[0] < b[0] else (b, a) for a in one for b in other
    ]  # fmt: skip
    if pairs:
        low, high = min(pairs, key=lambda pair: pair[1][0] - pair[0][0])
        if high[0] - low[0] > SAME:
            yield low, high


def _spans(places: Sequence[Mm]) -> set[tuple[float, float]]:
    return {(round(a, 2), round(b, 2)) for a, b in pairwise(places)}


def _led_to(side: Side, places: Iterable[tuple[Mm, Edge]]) -> tuple[Point, ...]:
    return tuple(_led(side, at, edge) for at, edge in places)


def edges(view: View, row: int, work: Work | None) -> Iterator[Edge]:
    """The straight edges of a piece's cut faces; with `work` those that count at this joint."""
    for section in view.sections:
        if section.piece == row:
            for loop in (section.outline, *section.holes):
                for start, end in zip(loop, np.roll(loop, -1, axis=0), strict=True):
                    for edge in _edge(start.tolist(), end.tolist(), view.box):
                        if work is None or _counts(edge, work):
                            yield edge


def _counts(edge: Edge, work: Work) -> bool:
    """Whether it is a face of the stock, or one of a cut of this joint; no wall of a round hole."""
    if any(all(holds(hole, end) for end in edge.ends) for hole in work.holes):
        return False
    stock = work.stock
    if min(abs(edge.at - stock[edge.axis]), abs(edge.at - stock[edge.axis + 2])) < SAME:
        return True
    return any(all(holds(cut, end) for end in edge.ends) for cut in work.cuts)


def _edge(start: list[float], end: list[float], box: Box) -> Iterator[Edge]:
    for axis in (0, 1):
        at = start[axis]
        if abs(at - end[axis]) > 1e-6 or abs(start[1 - axis] - end[1 - axis]) < LEAST:
            continue
        if min(abs(at - box[axis]), abs(at - box[axis + 2])) < 1e-6:
            continue  # the side of the window
        low, high = sorted((start[1 - axis], end[1 - axis]))
        rises = end[1 - axis] > start[1 - axis]
        # Outlines run with the wood to their left.
        yield Edge(axis, at, low, high, (-1 if rises else 1) * (1 if axis == 0 else -1))


def _places(
    found: Iterable[Edge], axis: int, bars: Iterable[Bar], view: View
) -> list[tuple[Mm, Edge]]:
    """Where its faces and the axes of its holes stand, in rising order, each once."""
    every = [(edge.at, edge) for edge in found if edge.axis == axis]
    faces = list(every)
    for bar in bars:
        if bar.kind in AXES and not bar.is_screw:
            ends = [view.gaze.flat(each) for each in (bar.start, bar.end)]
            spots = {round(float(end[axis]), 6) for end in ends}
            if len(spots) == 1:
                every += [(at, _spot(axis, at, float(ends[0][1 - axis]))) for at in spots]
            elif bar.kind in BORED and faces:
                at = float(ends[1][axis])
                every.append((at, _spot(axis, at, float(ends[1][1 - axis]))))
    low, high = view.box[axis], view.box[axis + 2]
    kept: list[tuple[Mm, Edge]] = []
    for at, edge in sorted(every, key=lambda each: (each[0], each[1].low)):
        if low < at < high and (not kept or at - kept[-1][0] > SAME):
            kept.append((at, edge))
    return kept


def _spot(axis: int, at: Mm, beside: Mm) -> Edge:
    return Edge(axis, at, beside, beside, 1)


def _rooms(
    every: Sequence[Sequence[Edge]], axis: int
) -> Iterator[tuple[tuple[Mm, Edge], tuple[Mm, Edge]]]:
    """Gaps between the faces of two pieces that look at each other."""
    seen: set[tuple[float, float]] = set()
    for k, one in enumerate(every):
        for other in [edge for j, some in enumerate(every) if j != k for edge in some]:
            for edge in one:
                if edge.axis != axis or other.axis != axis or edge.wood > 0 or other.wood < 0:
                    continue
                gap = other.at - edge.at
                beside = min(edge.high, other.high) - max(edge.low, other.low)
                key = (round(edge.at, 2), round(other.at, 2))
                if SAME < gap <= ROOM and beside > LEAST and key not in seen:
                    seen.add(key)
                    yield (edge.at, edge), (other.at, other)


def _led(side: Side, at: Mm, edge: Edge) -> Point:
    """Where the line that leads to a dimension begins: the nearest end of the edge."""
    near = edge.low if side in ("below", "left") else edge.high
    return (at, near) if axis_of(side) == 0 else (near, at)


def _of(bars: Iterable[Bar], piece: int) -> list[Bar]:
    return [bar for bar in bars if bar.piece == piece]


def inside(section: Section) -> Point:
    """A place well within a cut face, for a leader."""
    loop = section.outline
    (x0, y0), (x1, y1) = loop.min(axis=0), loop.max(axis=0)
    best, where = -1.0, (float(x0 + x1) / 2, float(y0 + y1) / 2)
    for share in (0.5, 0.35, 0.65, 0.2, 0.8):
        y = float(y0 + share * (y1 - y0))
        crossings = sorted(_crossings((loop, *section.holes), y))
        for a, b in zip(crossings[::2], crossings[1::2], strict=False):
            if b - a > best + 1.0:
                best, where = b - a, ((a + b) / 2, y)
    return where


def _crossings(loops: Iterable[Floats], y: Mm) -> Iterator[Mm]:
    for loop in loops:
        for (ax, ay), (bx, by) in zip(
            loop.tolist(), np.roll(loop, -1, axis=0).tolist(), strict=True
        ):
            if (ay <= y) != (by <= y):
                yield ax + (y - ay) / (by - ay) * (bx - ax)
