"""What of a page lies under the mouse: a way to another page, or a piece of the bed."""

from __future__ import annotations

from math import hypot

from model.cutting.record import Box
from model.drawings.paper import Area, Item, Point, Ring, Stroke
from model.planset.page import Link, Page
from model.units import Mm

PIECE = "piece/"


class PlanPlaces:
    """The places of one page, in mm from its lower left corner."""

    def __init__(self, page: Page) -> None:
        self.links = page.links
        self._areas: list[Area] = []
        self._strokes: list[tuple[str, tuple[Point, ...]]] = []
        self._boxes: dict[str, Box] = {}
        for item in page.drawing.items:
            if item.about.startswith(PIECE):
                self._keep(item)

    def _keep(self, item: Item) -> None:
        if isinstance(item, Area):
            self._areas.append(item)
        elif isinstance(item, Stroke):
            self._strokes.append((item.about, item.points))
            self._widen(item.about, item.points)
        elif isinstance(item, Ring):
            (x, y), r = item.at, item.radius
            self._widen(item.about, ((x - r, y - r), (x + r, y + r)))

    def _widen(self, about: str, points: tuple[Point, ...]) -> None:
        xs, ys = [x for x, _ in points], [y for _, y in points]
        known = self._boxes.get(about)
        if known is not None:
            xs, ys = [*xs, known.x0, known.x1], [*ys, known.y0, known.y1]
        self._boxes[about] = Box(min(xs), min(ys), max(xs), max(ys))

    def link_at(self, point: Point) -> Link | None:
        """The way to another page there."""
        return next((link for link in self.links if _holds(link.box, point)), None)

    def piece_at(self, point: Point, near: Mm) -> str:
        """What the piece there is `about`, or "": one whose line is that near, else the smallest
        whose lines reach around the point.
        """
        areas = [area.about for area in self._areas if _holds(area.box, point)]
        if areas:
            return areas[-1]
        far, about = min(
            ((_distance(points, point), about) for about, points in self._strokes),
            default=(near, ""),
        )
        if far < near:
            return about
        around = [(_size(box), each) for each, box in self._boxes.items() if _holds(box, point)]
        return min(around, default=(0.0, ""))[1]

    def box_of(self, about: str) -> Box | None:
        """Where a piece stands, if it does."""
        areas = [area.box for area in self._areas if area.about == about]
        return areas[0] if areas else self._boxes.get(about)


def _holds(box: Box, point: Point) -> bool:
    return box.x0 <= point[0] <= box.x1 and box.y0 <= point[1] <= box.y1


def _size(box: Box) -> float:
    return (box.x1 - box.x0) * (box.y1 - box.y0)


def _distance(points: tuple[Point, ...], point: Point) -> Mm:
    """From a point to the nearest line between points that follow each other."""
    return min(
        (_to_line(a, b, point) for a, b in zip(points, points[1:], strict=False)),
        default=float("inf"),
    )


def _to_line(a: Point, b: Point, point: Point) -> Mm:
    dx, dy = b[0] - a[0], b[1] - a[1]
    long = dx * dx + dy * dy
    share = ((point[0] - a[0]) * dx + (point[1] - a[1]) * dy) / long if long else 0.0
    share = min(max(share, 0.0), 1.0)
    return hypot(point[0] - a[0] - share * dx, point[1] - a[1] - share * dy)
