"""Every cut and hole of a part as a machine makes it: the figures it is set to, and the spot.

A figure is counted from the nearer of two edges, faces or ends, so that alike cuts in different
parts (and in mirror images) come out as one setting.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator
from typing import NamedTuple

from model.part import Cut, Face, Hole, Part, Point
from model.shop.order.record import Distance, Spot, Way
from model.units import Mm, snapped

Alike = tuple[tuple[str, float], ...]

HAIR: Mm = 1e-6
# Figures are compared in steps of 1 µm. The odd shift keeps parts of an inch, which are multiples
# of 1/16000 mm, from falling to two sides of a step.
_DECIMALS, _SHIFT = 3, 0.00013

FACES: tuple[tuple[Face, Face], ...] = (
    (Face.NEAR, Face.FAR),
    (Face.LOWER, Face.UPPER),
    (Face.BACK, Face.FACE),
)
# Cuts that lie across the part: the fence (a stop) stands at its end.
ACROSS = ("dado", "tenon cheek", "tenon shoulder")
ALONG = ("groove", "mortise", "plate recess", "hook pocket", "hand hole")


class Job(NamedTuple):
    """One cut or hole: its `kind`, how it is made, the figures of its setting, and where."""

    kind: str
    way: Way
    figures: tuple[Distance, ...]
    spot: Spot


def jobs(part: Part) -> Iterator[Job]:
    """All cuts and holes of a part as it is cut; features are counted cuts first, then holes."""
    for k, cut in enumerate(part.cuts):
        yield _slot(part.size, cut, k)
    holes = list(enumerate(part.holes, len(part.cuts)))
    pockets = [(k, hole) for k, hole in holes if hole.kind == "pocket pilot"]
    for k, hole in holes:
        if hole.kind == "pocket hole":
            yield _pocket(part.size, hole, k, pockets)
        elif hole.kind != "pocket pilot":
            yield _hole(part.size, hole, k)


def figure(what: str, size: Mm) -> Distance:
    """A figure of a setting, without floating-point dust."""
    return Distance(what, snapped(float(size)) + 0.0)


def alike(figures: Iterable[Distance]) -> Alike:
    """What two settings share that are the same."""
    return tuple((each.what, round(each.size + _SHIFT, _DECIMALS)) for each in figures)


# ---------------------------------------------------------------- box cuts


def _slot(size: Point, cut: Cut, index: int) -> Job:
    low = tuple(max(float(x), 0.0) for x in cut.low)
    high = tuple(min(float(x), side) for x, side in zip(cut.high, size, strict=True))
    face = _told_from(size, cut, low, high)
    into = face.axis
    depth = size[into] - low[into] if face.is_high else high[into]
    fence = _fence_axis(size, cut.kind, into, low, high)
    along = 3 - into - fence
    against, distance = nearer(fence, low[fence], high[fence], size[fence])
    end, start = nearer(along, low[along], high[along], size[along])
    width, run = high[fence] - low[fence], high[along] - low[along]
    figures = (figure("width", width), figure("depth", depth), figure("fence", distance))
    return Job(cut.kind, "slot", figures, Spot(face, against, end, start, start + run, index))


def _told_from(size: Point, cut: Cut, low: tuple[Mm, ...], high: tuple[Mm, ...]) -> Face:
    """The face that a cut is made in: a rabbet along an edge in the broad side that it opens to, as
    its part is drawn, whichever of both its joint was thought from.
    """
    is_open = (low[2] <= HAIR, high[2] >= size[2] - HAIR)
    if cut.kind != "rabbet" or cut.face.axis != Face.LOWER.axis or sum(is_open) != 1:
        return cut.face
    return Face.FACE if is_open[1] else Face.BACK


def _fence_axis(
    size: Point, kind: str, into: int, low: tuple[Mm, ...], high: tuple[Mm, ...]
) -> int:
    """The axis across which the cut is as wide as its cutter; it runs along the other one."""
    first, second = (axis for axis in range(3) if axis != into)
    if kind in ACROSS and into != 0:
        return 0
    if kind in ALONG:
        return second
    if kind == "dovetail allowance":
        return first
    return first if high[first] - low[first] < high[second] - low[second] else second


def nearer(axis: int, low: Mm, high: Mm, side: Mm) -> tuple[Face, Mm]:
    """The face from which a span is measured, and how far it begins from there.

    What lies in the middle is measured from the face, the lower edge or the near end.
    """
    from_low, from_high = max(low, 0.0), max(side - high, 0.0)
    prefers_high = axis == 2
    if abs(from_low - from_high) <= HAIR:
        return FACES[axis][1 if prefers_high else 0], from_low
    return (FACES[axis][0], from_low) if from_low < from_high else (FACES[axis][1], from_high)


# ---------------------------------------------------------------- holes


def _hole(size: Point, hole: Hole, index: int) -> Job:
    into = hole.face.axis
    if abs(abs(hole.toward[into]) - 1.0) > HAIR:
        raise ValueError(f"a {hole.kind} at a slant, which no setting here is made for")
    mouth = size[into] - hole.at[into] if hole.face.is_high else hole.at[into]
    depth = mouth + hole.depth
    fence, along = {0: (2, 1), 1: (2, 0), 2: (1, 0)}[into]
    against, distance = nearer(fence, hole.at[fence], hole.at[fence], size[fence])
    end, start = nearer(along, hole.at[along], hole.at[along], size[along])
    figures = [figure("diameter", hole.diameter), figure("fence", distance)]
    if depth < size[into] - HAIR:
        figures.append(figure("depth", depth))
    return Job(
        hole.kind, "hole", tuple(figures), Spot(hole.face, against, end, start, start, index)
    )


def _pocket(size: Point, hole: Hole, index: int, pilots: list[tuple[int, Hole]]) -> Job:
    """A stepped bit makes the pocket and its pilot in one go, at the angle of the jig."""
    end = Face.FAR if hole.toward[0] > 0 else Face.NEAR
    also, pilot = next((k, each) for k, each in pilots if _goes_on(hole, each))
    from_end = size[0] - hole.at[0] if end is Face.FAR else hole.at[0]
    across, start = nearer(1, hole.at[1], hole.at[1], size[1])
    angle = math.degrees(math.asin(min(1.0, abs(hole.toward[2]))))
    figures = (
        figure("stock", size[2]),
        figure("diameter", hole.diameter),
        figure("depth", hole.depth),
        figure("pilot", pilot.diameter),
        figure("reach", pilot.depth),
        figure("from end", from_end),
        figure("angle", angle),
    )
    spot = Spot(hole.face, end, across, start, start, index, also)
    return Job("pocket hole", "pocket", figures, spot)


def _goes_on(hole: Hole, pilot: Hole) -> bool:
    """Whether a pilot hole begins where the pocket ends."""
    seat = (x + hole.depth * way for x, way in zip(hole.at, hole.toward, strict=True))
    return max(abs(a - b) for a, b in zip(seat, pilot.at, strict=True)) < 1e-3
