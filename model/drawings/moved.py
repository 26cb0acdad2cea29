"""Items moved over the paper, and the room that they take."""

from __future__ import annotations

from collections.abc import Iterable

from model.cutting.record import Box
from model.drawings.letters import text_box
from model.drawings.measures import measure_ink
from model.drawings.paper import (
    Area,
    Fill,
    Hatch,
    Item,
    Measure,
    Picture,
    Point,
    Ring,
    Stroke,
    Text,
)
from model.units import Mm


def moved(item: Item, right: Mm, up: Mm) -> Item:
    """The same item elsewhere."""
    match item:
        case Stroke():
            return item._replace(points=_all(item.points, right, up))
        case Ring() | Text():
            return item._replace(at=_point(item.at, right, up))
        case Hatch():
            holes = tuple(_all(hole, right, up) for hole in item.holes)
            return item._replace(outline=_all(item.outline, right, up), holes=holes)
        case Fill():
            return item._replace(outline=_all(item.outline, right, up))
        case Area() | Picture():
            return item._replace(box=moved_box(item.box, right, up))
    return _moved_measure(item, right, up)


def moved_box(box: Box, right: Mm, up: Mm) -> Box:
    """The same box elsewhere."""
    return Box(box.x0 + right, box.y0 + up, box.x1 + right, box.y1 + up)


def around(items: Iterable[Item]) -> Box | None:
    """The room that items take, words and the ink of dimensions included."""
    boxes = [box for item in items for box in _boxes(item)]
    return together(boxes) if boxes else None


def together(boxes: Iterable[Box]) -> Box:
    """The least box around some."""
    x0, y0, x1, y1 = zip(*boxes, strict=True)
    return Box(min(x0), min(y0), max(x1), max(y1))


def _boxes(item: Item) -> list[Box]:
    match item:
        case Text():
            return [text_box(item)]
        case Ring():
            (x, y), r = item.at, item.radius
            return [Box(x - r, y - r, x + r, y + r)]
        case Area() | Picture():
            return [item.box]
        case Measure():
            return [box for each in measure_ink(item) for box in _boxes(each)]
    points = item.points if isinstance(item, Stroke) else item.outline
    xs, ys = [x for x, _ in points], [y for _, y in points]
    return [Box(min(xs), min(ys), max(xs), max(ys))]


def _moved_measure(item: Measure, right: Mm, up: Mm) -> Measure:
    return item._replace(
        start=_point(item.start, right, up),
        end=_point(item.end, right, up),
        line=item.line + (right if item.upright else up),
        words_at=None if item.words_at is None else _point(item.words_at, right, up),
    )


def _all(points: Iterable[Point], right: Mm, up: Mm) -> tuple[Point, ...]:
    return tuple(_point(point, right, up) for point in points)


def _point(point: Point, right: Mm, up: Mm) -> Point:
    return (point[0] + right, point[1] + up)
