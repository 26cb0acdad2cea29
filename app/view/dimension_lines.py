"""Which dimensions are written on the bed, and where their lines run: from named dimensions only.

Several lines of one name (or `key`) are alternatives: the one that is best seen is drawn.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import TYPE_CHECKING, NamedTuple

if TYPE_CHECKING:
    from model.bed import Bed

Point = tuple[float, float, float]
NOWHERE: Point = (0.0, 0.0, 0.0)

# How far the lines stand off what they measure, mm.
NEAR, FAR, FLOOR, FACE = 130.0, 270.0, 200.0, 75.0


class Dimension3D(NamedTuple):
    """One dimension on the bed, mm, bed axes.

    `start` and `end` are what is measured; the line itself stands `away` from them. `faces` is the
    side of the bed from which it can be seen (all sides, if nowhere). `word` is written before the
    number where a number alone could be taken for another. `name` is the dimension's full name.
    """

    start: Point
    end: Point
    name: str
    value: float
    word: str = ""
    away: Point = NOWHERE
    faces: Point = NOWHERE
    is_clearance: bool = False
    key: str = ""

    @property
    def group(self) -> str:
        """What it is an alternative for."""
        return self.key or self.name

    @property
    def is_upright(self) -> bool:
        """Whether it is a height beside the bed, not one written on a face of it."""
        return self.start[2] != self.end[2] and self.faces == NOWHERE

    @property
    def line(self) -> tuple[Point, Point]:
        """Where the arrows are drawn."""
        return _plus(self.start, self.away), _plus(self.end, self.away)


def dimension_lines(bed: Bed) -> tuple[Dimension3D, ...]:
    """The overall sizes, heights and openings of a bed."""
    return (*_overall(bed), *_heights(bed), *_openings(bed))


def _overall(bed: Bed) -> Iterator[Dimension3D]:
    x, far = bed["post_outer_x"], bed["bed_length"]
    for y, out in ((0.0, -1), (far, 1)):
        yield Dimension3D(
            (-x, y, 0), (x, y, 0), "bed_width", bed["bed_width"], away=(0, out * FLOOR, 0)
        )
    for side in (1, -1):
        yield Dimension3D(
            (side * x, 0, 0), (side * x, far, 0), "bed_length", far, away=(side * FLOOR, 0, 0)
        )


def _heights(bed: Bed) -> Iterator[Dimension3D]:
    foot, head = 0.0, bed["bed_length"]
    yield from _upright(bed, "rail_top", "rail", (foot, head), NEAR)
    yield from _upright(bed, "sleeping_height", "sleeping", (foot, head), FAR)
    yield from _upright(bed, "head.end_height_built", "headboard", (head, foot), NEAR)


def _upright(
    bed: Bed, name: str, word: str, ends: tuple[float, float], off: float
) -> Iterator[Dimension3D]:
    """At every corner of the bed, beside it and beyond it; the end named first is the better."""
    high = known(bed, name)
    if high is None:
        return
    for y in ends:
        out = -1 if y == 0 else 1
        for side in (-1, 1) if ends[0] == 0 else (1, -1):
            x = side * bed["post_outer_x"]
            for away in ((side * off, 0.0, 0.0), (0.0, out * off, 0.0)):
                yield Dimension3D((x, y, 0), (x, y, high), name, high, word, away)


def _openings(bed: Bed) -> Iterator[Dimension3D]:
    for row, at in ROWS.items():
        places, width = known(bed, f"{row}.opening_places"), known(bed, f"{row}.opening_width")
        if not places or not known(bed, f"{row}.drawer_count"):
            continue
        low, high = bed["opening_bottom"], bed["opening_top"]
        faces = at(bed, 0.0, 1.0, 0.0)[1]
        away = (faces[0] * FACE, faces[1] * FACE, 0.0)
        start, end = (at(bed, u, 0.0, low)[0] for u in (places[-1], places[-1] + width))
        yield Dimension3D(
            start, end, f"{row}.opening_width", width, "opening", away, faces, key="opening"
        )
        u = places[0] + width * 0.15
        start, end = (at(bed, u, 0.0, z)[0] for z in (low, high))
        yield Dimension3D(
            start, end, "opening_height", bed["opening_height"], "opening", away, faces
        )


def _left(bed: Bed, u: float, v: float, z: float) -> tuple[Point, Point]:
    return (v - bed["post_outer_x"], u, z), (-1.0, 0.0, 0.0)


def _right(bed: Bed, u: float, v: float, z: float) -> tuple[Point, Point]:
    return (bed["post_outer_x"] - v, u, z), (1.0, 0.0, 0.0)


def _foot(bed: Bed, u: float, v: float, z: float) -> tuple[Point, Point]:
    return (u, v, z), (0.0, -1.0, 0.0)


# From a row's own u (along), v (inwards) and z to bed axes, and the way out of the row.
ROWS: dict[str, Callable[[Bed, float, float, float], tuple[Point, Point]]] = {
    "right": _right,
    "left": _left,
    "foot": _foot,
}


def known(bed: Bed, name: str) -> object:
    """A dimension's value, or None where this bed has no such dimension."""
    try:
        return bed[name]
    except KeyError:
        return None


def _plus(a: Point, b: Point) -> Point:
    return (a[0] + b[0], a[1] + b[1], a[2] + b[2])
