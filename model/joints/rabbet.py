"""Rabbet: a step along the corner where a face meets an edge or an end."""

from __future__ import annotations

from model.part import Cut, Face, Point
from model.units import Mm


def rabbet(
    size: Point,
    face: Face,
    edge: Face,
    *,
    width: Mm,
    depth: Mm,
    along: tuple[Mm, Mm] | None = None,
    kind: str = "rabbet",
) -> Cut:
    """A step `depth` deep from `face`, reaching `width` in from `edge`.

    `along` is its extent on the third axis; None is through.
    """
    low, high = [0.0, 0.0, 0.0], [float(each) for each in size]
    for side, wood in ((face, depth), (edge, width)):
        if side.is_high:
            low[side.axis] = high[side.axis] - float(wood)
        else:
            high[side.axis] = float(wood)
    if along is not None:
        third = 3 - face.axis - edge.axis
        low[third], high[third] = float(along[0]), float(along[1])
    return Cut(kind, face, (low[0], low[1], low[2]), (high[0], high[1], high[2]))
