"""What is drawn of a part in one place: a view with its dimensions, or a section."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import NamedTuple

from model.cutting.record import Box
from model.drawings.moved import moved, moved_box, together
from model.drawings.paper import Fill, Item, Point
from model.units import Mm

LABEL: Mm = 2.0  # height of the capitals of a view's name
TRIANGLE: Mm = 2.0  # side of the sign of a datum


class _Placed(NamedTuple):
    """Items, and how far they are moved."""

    items: tuple[Item, ...]
    right: Mm
    up: Mm


@dataclass(frozen=True, kw_only=True)
class Block:
    """Items and the room that they take, from anywhere on paper. They are moved when asked for."""

    parts: tuple[_Placed, ...]
    box: Box

    @classmethod
    def of(cls, items: Iterable[Item], box: Box) -> Block:
        """Items where they are."""
        return cls(parts=(_Placed(tuple(items), 0.0, 0.0),), box=box)

    @classmethod
    def joined(cls, blocks: Sequence[Block]) -> Block:
        """Several as one."""
        parts = tuple(part for block in blocks for part in block.parts)
        return cls(parts=parts, box=together([block.box for block in blocks]))

    @property
    def items(self) -> tuple[Item, ...]:
        """All of them in their places."""
        return tuple(moved(item, part.right, part.up) for part in self.parts for item in part.items)

    @property
    def width(self) -> Mm:
        return self.box.x1 - self.box.x0

    @property
    def height(self) -> Mm:
        return self.box.y1 - self.box.y0

    def at(self, right: Mm, up: Mm) -> Block:
        """The same block, moved."""
        parts = tuple(
            part._replace(right=part.right + right, up=part.up + up) for part in self.parts
        )
        return Block(parts=parts, box=moved_box(self.box, right, up))

    def with_corner(self, x: Mm, y: Mm) -> Block:
        """The same block with its lower left corner there."""
        return self.at(x - self.box.x0, y - self.box.y0)


def datum(at: Point, outward: Point) -> Fill:
    """The sign of an edge that is measured from: a triangle that stands on it."""
    (x, y), (right, up), half = at, outward, TRIANGLE / 2
    tip = (x + right * 0.9 * TRIANGLE, y + up * 0.9 * TRIANGLE)
    return Fill(((x - up * half, y - right * half), (x + up * half, y + right * half), tip))
