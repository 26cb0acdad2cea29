"""The strokes of a hatch: parallel lines, cut off at its outline and at its holes."""

from __future__ import annotations

import math
from collections.abc import Iterator

from model.drawings.paper import Hatch, Point
from model.units import Mm


def hatch_strokes(hatch: Hatch) -> tuple[tuple[Point, Point], ...]:
    """Its lines, each from end to end. All hatches of one spacing and angle run on in each other.

    The plane is turned until the lines are level; between each two crossings of a line with the
    edges, counted from its end, there is ink in every second space.
    """
    turn = math.radians(hatch.angle)
    loops = [hatch.outline, *hatch.holes]
    level = [[_turned(point, -turn) for point in loop] for loop in loops]
    heights = [y for _, y in level[0]]
    first, last = min(heights) / hatch.spacing, max(heights) / hatch.spacing
    return tuple(
        (_turned((x0, y), turn), _turned((x1, y), turn))
        for y in (k * hatch.spacing for k in range(math.ceil(first), math.floor(last) + 1))
        for x0, x1 in _inked(level, y)
    )


def _inked(loops: list[list[Point]], y: Mm) -> Iterator[tuple[Mm, Mm]]:
    found = sorted(x for loop in loops for x in _crossings(loop, y))
    return zip(found[::2], found[1::2], strict=True)


def _crossings(loop: list[Point], y: Mm) -> Iterator[Mm]:
    """Where a level line meets the edges; a corner counts with the edge above it only."""
    for (x0, y0), (x1, y1) in zip(loop, [*loop[1:], loop[0]], strict=True):
        if (y0 > y) != (y1 > y):
            yield x0 + (y - y0) / (y1 - y0) * (x1 - x0)


def _turned(point: Point, by: float) -> Point:
    x, y = point
    return (x * math.cos(by) - y * math.sin(by), x * math.sin(by) + y * math.cos(by))
