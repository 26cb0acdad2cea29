"""The loops that bound a hatch in a file: its outline, its holes, and the rings that lie on it.

On paper a blank ring covers the hatching below it; in a file it is left out of the hatch.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator

from model.cutting.record import Box
from model.drawings.paper import Hatch, Point, Ring
from model.units import Mm

_SIDES = 32

Loop = tuple[Point, ...]


def hatched_loops(hatch: Hatch, blanks: Iterable[Ring]) -> list[Loop]:
    """The outline first. Of a ring, what lies within the box around the outline."""
    xs, ys = zip(*hatch.outline, strict=True)
    box = Box(min(xs), min(ys), max(xs), max(ys))
    covered = (_within(_round(ring), box) for ring in blanks if _meets(ring, box))
    return [hatch.outline, *hatch.holes, *(loop for loop in covered if len(loop) > 2)]


def _meets(ring: Ring, box: Box) -> bool:
    (x, y), r = ring.at, ring.radius
    return box.x0 < x + r and x - r < box.x1 and box.y0 < y + r and y - r < box.y1


def _round(ring: Ring) -> Loop:
    (x, y), r = ring.at, ring.radius
    turns = (2 * math.pi * k / _SIDES for k in range(_SIDES))
    return tuple((x + r * math.cos(turn), y + r * math.sin(turn)) for turn in turns)


def _within(loop: Loop, box: Box) -> Loop:
    """A loop clipped to a box, side by side. Source: Sutherland and Hodgman 1974, from memory."""
    for axis, bound, sign in (
        (0, box.x0, 1), (0, box.x1, -1), (1, box.y0, 1), (1, box.y1, -1),
    ):  # fmt: skip
        loop = tuple(_clipped(loop, axis, bound, sign))
    return loop


def _clipped(loop: Loop, axis: int, bound: Mm, sign: int) -> Iterator[Point]:
    for here, there in zip(loop, (*loop[1:], *loop[:1]), strict=True):
        a, b = sign * (here[axis] - bound), sign * (there[axis] - bound)
        if a >= 0:
            yield here
        if (a >= 0) != (b >= 0):
            share = a / (a - b)
            yield (here[0] + share * (there[0] - here[0]), here[1] + share * (there[1] - here[1]))
