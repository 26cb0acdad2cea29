"""Which sizes a joint drawn large tells: those of its cut faces, and the room between them."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from typing import NamedTuple

import numpy as np

from model.cutting.record import Box
from model.drawings.dimensioning.runs import Side, axis_of
from model.drawings.paper import Point
from model.drawings.views.section import Section
from model.drawings.views.view import View
from model.planset.details.fasteners import Bar
from model.planset.plate import Chain
from model.units import Mm

LEAST: Mm = 2.0  # of a straight face that is measured
SAME: Mm = 0.02
ROOM: Mm = 8.0  # a gap up to this is a room that was left on purpose
BORED = ("dowel hole", "bolt hole", "nut hole", "counterbore")
AXES = (*BORED, "shank hole")  # told by their axes, where these are in the plane


class Edge(NamedTuple):
    """A straight edge of a cut face along one axis of the paper: it stands `at` the other one's
    place, between two ends; wood lies towards `wood` (1 or -1).
    """

    axis: int
    at: Mm
    low: Mm
    high: Mm
    wood: int


def chains(
    view: View, rows: Sequence[int], helpers: Sequence[int], bars: Sequence[Bar],
    pieces: Sequence[int],
) -> Iterator[Chain]:  # fmt: skip
    """The sizes of two pieces (rows of the view's scene), and the rooms between all that is cut."""
    own = [list(edges(view, row, _of(bars, pieces[row]))) for row in rows]
    for axis in (0, 1):
        told: list[tuple[Mm, ...]] = []
        for k, found in enumerate(own):
            side: Side = "below" if axis == 0 else ("left", "right")[k]  # type: ignore[assignment]
            places = _places(found, axis, _of(bars, pieces[rows[k]]), view)
            key = tuple(round(at, 2) for at, _ in places)
            if len(places) > 1 and key not in told:
                told.append(key)
                yield Chain(side, tuple(_led(view.box, side, at, edge) for at, edge in places))
        every = [*own, *(list(edges(view, row, ())) for row in helpers)]
        spans = {span for key in told for span in zip(key, key[1:], strict=False)}
        for low, high in _rooms(every, axis):
            if (round(low[0], 2), round(high[0], 2)) not in spans:
                side = "below" if axis == 0 else "left"
                yield Chain(side, tuple(_led(view.box, side, at, edge) for at, edge in (low, high)))


def edges(view: View, row: int, bars: Sequence[Bar]) -> Iterator[Edge]:
    """The straight edges of a piece's cut faces, without those of round holes."""
    holes = [_around(bar, view) for bar in bars if not bar.is_screw]
    for section in view.sections:
        if section.piece == row:
            for loop in (section.outline, *section.holes):
                for start, end in zip(loop, np.roll(loop, -1, axis=0), strict=True):
                    yield from _edge(start.tolist(), end.tolist(), view.box, holes)


def _edge(start: list[float], end: list[float], box: Box, holes: list[Box]) -> Iterator[Edge]:
    for axis in (0, 1):
        if abs(start[axis] - end[axis]) > 1e-6 or abs(start[1 - axis] - end[1 - axis]) < LEAST:
            continue
        at = start[axis]
        if min(abs(at - box[axis]), abs(at - box[axis + 2])) < 1e-6:
            continue  # the side of the window
        if any(_within(start, hole) and _within(end, hole) for hole in holes):
            continue
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


def _led(box: Box, side: Side, at: Mm, edge: Edge) -> Point:
    """Where the line that leads to a dimension begins: the end of the edge that is nearest to it."""
    near = edge.low if side in ("below", "left") else edge.high
    return (at, near) if axis_of(side) == 0 else (near, at)


def _of(bars: Iterable[Bar], piece: int) -> list[Bar]:
    return [bar for bar in bars if bar.piece == piece]


def _around(bar: Bar, view: View) -> Box:
    ends = np.stack([view.gaze.flat(bar.start), view.gaze.flat(bar.end)])
    (x0, y0), (x1, y1) = ends.min(axis=0).tolist(), ends.max(axis=0).tolist()
    r = bar.diameter / 2 + 0.1
    return Box(x0 - r, y0 - r, x1 + r, y1 + r)


def _within(at: list[float], box: Box) -> bool:
    return box.x0 <= at[0] <= box.x1 and box.y0 <= at[1] <= box.y1


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


def _crossings(loops: Iterable[np.ndarray], y: Mm) -> Iterator[Mm]:  # type: ignore[type-arg]
    for loop in loops:
        for (ax, ay), (bx, by) in zip(loop.tolist(), np.roll(loop, -1, axis=0).tolist(), strict=True):
            if (ay <= y) != (by <= y):
                yield ax + (y - ay) / (by - ay) * (bx - ax)
