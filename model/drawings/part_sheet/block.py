"""What is drawn of a part in one place: a view with its dimensions, or a section."""

from __future__ import annotations

from dataclasses import dataclass

from model.cutting.record import Box
from model.drawings.moved import moved, moved_box
from model.drawings.paper import Fill, Item, Point
from model.units import Mm

LABEL: Mm = 2.0  # height of the capitals of a view's name
TRIANGLE: Mm = 2.0  # side of the sign of a datum


@dataclass(frozen=True, kw_only=True)
class Block:
    """Items and the room that they take, from anywhere on paper."""

    items: tuple[Item, ...]
    box: Box

    @property
    def width(self) -> Mm:
        return self.box.x1 - self.box.x0

    @property
    def height(self) -> Mm:
        return self.box.y1 - self.box.y0

    def at(self, right: Mm, up: Mm) -> Block:
        """The same block, moved."""
        items = tuple(moved(item, right, up) for item in self.items)
        return Block(items=items, box=moved_box(self.box, right, up))

    def with_corner(self, x: Mm, y: Mm) -> Block:
        """The same block with its lower left corner there."""
        return self.at(x - self.box.x0, y - self.box.y0)


def datum(at: Point, outward: Point) -> Fill:
    """The sign of an edge that is measured from: a triangle that stands on it."""
    (x, y), (right, up), half = at, outward, TRIANGLE / 2
    tip = (x + right * 0.9 * TRIANGLE, y + up * 0.9 * TRIANGLE)
    return Fill(((x - up * half, y - right * half), (x + up * half, y + right * half), tip))
