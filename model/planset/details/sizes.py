"""Which sizes a joint drawn large tells: those of its cut faces, and the room between them."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from itertools import pairwise

from model.drawings.dimensioning.runs import Side, axis_of
from model.drawings.paper import Point
from model.drawings.views.view import View
from model.planset.details.faces import LEAST, SAME, Edge, edges
from model.planset.details.fasteners import Bar
from model.planset.details.shots import Shown
from model.planset.plate import Chain
from model.units import Mm

ROOM: Mm = 8.0  # a gap up to this is a room that was left on purpose
BORED = ("dowel hole", "bolt hole", "nut hole", "counterbore")
POCKETS = ("pocket pilot",)
AXES = (*BORED, "shank hole", *POCKETS)  # told by their axes


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
