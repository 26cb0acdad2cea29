"""A drawing on paper: strokes, rings, hatches, fills, words and dimensions, in mm from lower left.

A drawing knows no file format and no screen: it is made once and played to either. It has no
colours: paper is white, ink is black, and a fill is a grey between them. `about` says what an item
stands for, so that a player may light it; an `Area` leaves no ink at all.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from typing import Literal, NamedTuple

from model.cutting.record import Box
from model.units import Degrees, Mm, Share

Point = tuple[Mm, Mm]
Pen = Literal["wide", "narrow", "fine", "hidden", "centre"]
Anchor = Literal["left", "middle", "right"]

# Two widths in the ratio 2 : 1, and one finer for what fills: grain and hatching.
# Source: ISO 128-2, from memory.
PEN_WIDTHS: dict[Pen, Mm] = {
    "wide": 0.5, "narrow": 0.25, "fine": 0.13, "hidden": 0.25, "centre": 0.25,
}  # fmt: skip
# Strokes and gaps in pen widths: dashed, and long dash, dot. Source: ISO 128-2, from memory.
DASHES: dict[Pen, tuple[float, ...]] = {"hidden": (12, 3), "centre": (24, 3, 0.5, 3)}


class Stroke(NamedTuple):
    """A line through points."""

    points: tuple[Point, ...]
    pen: Pen = "narrow"
    about: str = ""


class Ring(NamedTuple):
    """A circle, white inside when it is `blank`: what lies under it is not seen."""

    at: Point
    radius: Mm
    pen: Pen = "narrow"
    blank: bool = False
    about: str = ""


class Hatch(NamedTuple):
    """Parallel strokes within an outline and outside its holes, `spacing` apart."""

    outline: tuple[Point, ...]
    spacing: Mm
    angle: Degrees = 45.0
    holes: tuple[tuple[Point, ...], ...] = ()
    about: str = ""


class Text(NamedTuple):
    """A line of words. `at` is its left end, middle or right end, half-way up its capitals.

    `height` is that of a capital; `turned` words read upwards, from the right of the page.
    """

    at: Point
    words: str
    height: Mm
    anchor: Anchor = "middle"
    turned: bool = False
    about: str = ""
    bold: bool = False


class Fill(NamedTuple):
    """A polygon without an outline, in a tone of grey: 0 is paper, 1 is ink."""

    outline: tuple[Point, ...]
    tone: Share = 1.0
    about: str = ""


class Measure(NamedTuple):
    """A dimension, kept as one so that a player that knows dimensions can write it as such.

    From `start` to `end`, two points of what is measured. Its line stands at `line`: the height of
    a level one, the distance from the left of an `upright` one. `size` is what it says in mm of
    wood, `words` how. The words stand at `words_at`, or half-way along where that is None; `model.
    drawings.measures` gives its strokes.
    """

    start: Point
    end: Point
    line: Mm
    upright: bool
    words: str
    size: Mm
    words_at: Point | None = None
    about: str = ""


class Area(NamedTuple):
    """A place on the drawing that stands for something; a later area lies on an earlier one.

    `has_ground` is whether it may be tinted; a ring has a ground of its own.
    """

    box: Box
    about: str
    has_ground: bool = True


class Picture(NamedTuple):
    """A PNG file that fills a box of its own proportions."""

    box: Box
    file: bytes
    about: str = ""


Item = Stroke | Ring | Hatch | Text | Fill | Measure | Picture | Area


@dataclass(frozen=True, kw_only=True)
class Drawing:
    """What lies on a paper of this size; `scale` is mm on paper to mm of wood."""

    width: Mm
    height: Mm
    scale: Share
    items: tuple[Item, ...]
    title: str = ""

    def texts(self) -> Iterator[Text]:
        """The words on it."""
        return (item for item in self.items if isinstance(item, Text))

    def areas(self) -> Iterator[Area]:
        """The places on it."""
        return (item for item in self.items if isinstance(item, Area))

    def about(self, name: str) -> Iterator[Item]:
        """All items that stand for one thing."""
        return (item for item in self.items if item.about == name)


def corners(box: Box) -> tuple[Point, ...]:
    """The corners of a box, all the way round."""
    return ((box.x0, box.y0), (box.x1, box.y0), (box.x1, box.y1), (box.x0, box.y1))


def outline(box: Box, pen: Pen = "narrow", about: str = "") -> Stroke:
    """The edge of a box."""
    return Stroke((*corners(box), (box.x0, box.y0)), pen, about)


def grown(box: Box, by: Mm) -> Box:
    """A box grown by as much on every side."""
    return Box(box.x0 - by, box.y0 - by, box.x1 + by, box.y1 + by)


def touches(one: Box, other: Box) -> bool:
    """Whether two boxes share room; a common edge is none."""
    return one.x0 < other.x1 and other.x0 < one.x1 and one.y0 < other.y1 and other.y0 < one.y1


def is_free(box: Box, taken: Iterable[Box]) -> bool:
    """Whether a box shares room with none of those that are taken."""
    return not any(touches(box, each) for each in taken)
