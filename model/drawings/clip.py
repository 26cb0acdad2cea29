"""Drawings cut off at the edges of a box, as on sheets that are joined."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator

from model.cutting.record import Box
from model.drawings.paper import Item, Point, Ring, Stroke, Text

SIDES = 48  # of a circle that is cut off


def clipped(items: Iterable[Item], box: Box) -> Iterator[Item]:
    """Strokes and rings as far as they lie in the box, and words that stand in it; nothing else."""
    for item in items:
        if isinstance(item, Stroke):
            yield from _stroke(item, box)
        elif isinstance(item, Ring):
            yield from _ring(item, box)
        elif isinstance(item, Text) and holds(box, item.at):
            yield item


def holds(box: Box, point: Point) -> bool:
    """Whether a point lies in a box or on its edge."""
    return box.x0 <= point[0] <= box.x1 and box.y0 <= point[1] <= box.y1


def _stroke(stroke: Stroke, box: Box) -> Iterator[Stroke]:
    for start, end in zip(stroke.points, stroke.points[1:], strict=False):
        found = _within(start, end, box)
        if found is not None:
            yield stroke._replace(points=found)


def _ring(ring: Ring, box: Box) -> Iterator[Item]:
    (x, y), r = ring.at, ring.radius
    if box.x0 <= x - r and x + r <= box.x1 and box.y0 <= y - r and y + r <= box.y1:
        yield ring
        return
    angles = (2 * math.pi * k / SIDES for k in range(SIDES + 1))
    points = tuple((x + r * math.cos(a), y + r * math.sin(a)) for a in angles)
    yield from _stroke(Stroke(points, ring.pen, ring.about), box)


def _within(start: Point, end: Point, box: Box) -> tuple[Point, Point] | None:
    """The part of a line in a box (Liang and Barsky, A new concept and method for line clipping,
    ACM Transactions on Graphics 3:1-22, 1984; from memory).
    """
    low, high = 0.0, 1.0
    for axis in (0, 1):
        step = end[axis] - start[axis]
        for way, room in ((-step, start[axis] - box[axis]), (step, box[axis + 2] - start[axis])):
            if way == 0.0 and room < 0.0:
                return None
            if way < 0.0:
                low = max(low, room / way)
            elif way > 0.0:
                high = min(high, room / way)
    if low >= high:
        return None
    return _along(start, end, low), _along(start, end, high)


def _along(start: Point, end: Point, share: float) -> Point:
    return (start[0] + share * (end[0] - start[0]), start[1] + share * (end[1] - start[1]))
