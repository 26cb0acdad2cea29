"""Views with their dimensions around them, at the largest standard scale that a page allows."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from itertools import pairwise
from typing import NamedTuple

from model.cutting.record import Box
from model.drawings.dimensioning.rows import FIRST, ROW, Rows, rows
from model.drawings.dimensioning.runs import Run, Side, axis_of
from model.drawings.dimensioning.told import Told
from model.drawings.letters import text_box
from model.drawings.measures import inked
from model.drawings.moved import moved, together
from model.drawings.paper import Item, Point, Text, touches
from model.drawings.scales import scale_words, scales
from model.drawings.views.on_paper import on_paper
from model.drawings.views.view import View
from model.planset.letters import HEADING
from model.planset.marked_views import Marks, mark_words
from model.planset.sheet import Content
from model.units import Mm, Share

SIDES: tuple[Side, ...] = ("below", "above", "left", "right")
CAPTION: Mm = 8.0  # room above a view for what it is called
BETWEEN: Mm = 6.0
LARGEST: Share = 0.5
MOST_FARTHER = 9  # half rows by which dimensions may be moved out of each other's way


class Chain(NamedTuple):
    """Sizes to be told along one side of a view: `points` in the view's own mm, in rising order.

    `words` are told in place of the sizes where they are given.
    """

    side: Side
    points: tuple[Point, ...]
    level: int = 0
    words: tuple[str, ...] = ()

    def sizes(self) -> tuple[Mm, ...]:
        """Of wood, from point to point."""
        axis = axis_of(self.side)
        return tuple(b[axis] - a[axis] for a, b in pairwise(self.points))


class Figure(NamedTuple):
    """A view with what is told of it; `marks` are those of its pieces, if they are told."""

    caption: str
    view: View
    chains: tuple[Chain, ...] = ()
    marks: Marks | None = None


class Plate(NamedTuple):
    """A figure at a scale, its own (0, 0) at the paper's; `box` holds all of it."""

    figure: Figure
    items: tuple[Item, ...]
    box: Box

    @property
    def width(self) -> Mm:
        """Of all its ink."""
        return self.box.x1 - self.box.x0

    @property
    def height(self) -> Mm:
        """With its caption."""
        return self.box.y1 - self.box.y0 + (CAPTION if self.figure.caption else 0.0)


def figures_on(
    room: Box, figures: Sequence[Figure], told: Told, largest: Share = LARGEST
) -> Content:
    """Figures below each other, all at the largest scale at which they have room; at that which
    lacks least where none does: words take the same room at every scale.
    """
    best: tuple[Mm, Share, list[Plate]] | None = None
    every = list(scales(told.unit, largest))
    for scale in [each for each in every if _have_room(figures, room, each)] or every[-1:]:
        plates = [plate_at(figure, told, scale) for figure in figures]
        lack = _lack(plates, room)
        if best is None or lack < best[0]:
            best = (lack, scale, plates)
        if lack <= 0.0:
            break
    assert best is not None
    return _below_each_other(best[2], room, best[1])


def _have_room(figures: Sequence[Figure], room: Box, scale: Share) -> bool:
    """Whether the views alone have room: what is told of them is laid only then."""
    boxes = [each.view.box for each in figures]
    wide = max(box.x1 - box.x0 for box in boxes)
    high = sum(box.y1 - box.y0 for box in boxes)
    return wide * scale <= room.x1 - room.x0 and high * scale <= room.y1 - room.y0


def _below_each_other(plates: Sequence[Plate], room: Box, scale: Share) -> Content:
    items: list[Item] = []
    spare = room.y1 - room.y0 - sum(each.height for each in plates)
    y = room.y1
    for each in plates:
        items += _placed(each, room, y, scale)
        y -= each.height + max(BETWEEN, min(spare / len(plates), 4 * BETWEEN))
    return Content(tuple(items), scale=scale_words(scale))


def _lack(plates: Sequence[Plate], room: Box) -> Mm:
    """How much they are too wide or too high; less than nothing where they have room."""
    high = sum(each.height for each in plates) + BETWEEN * (len(plates) - 1)
    wide = max(each.width for each in plates)
    return max(wide - (room.x1 - room.x0), high - (room.y1 - room.y0))


def _placed(plate: Plate, room: Box, top: Mm, scale: Share) -> Iterator[Item]:
    """A plate in the middle between left and right, its caption above it on the left."""
    caption = plate.figure.caption
    if caption:
        yield Text((room.x0, top - HEADING / 2), caption, HEADING, "left", bold=True)
        top -= CAPTION
    x = (room.x0 + room.x1 - plate.box.x0 - plate.box.x1) / 2
    y = top - plate.box.y1
    view = plate.figure.view
    drawn = on_paper(view, scale, (0.0, 0.0))
    marks = plate.figure.marks
    told = mark_words(view, marks, scale, plate.items) if marks else ()
    yield from (moved(item, x, y) for item in (*plate.items, *drawn, *told))


def plate_at(figure: Figure, told: Told, scale: Share) -> Plate:
    """The dimensions of a figure alone."""
    box = Box(*(side * scale for side in figure.view.box))
    items: list[Item] = []
    boxes = [box]
    for side in SIDES:
        runs = list(_runs(figure.chains, side, told, scale))
        if runs:
            laid = _clear_of(items, box, side, runs)
            items += laid.items
            boxes.append(laid.box)
    return Plate(figure, tuple(items), together(boxes))


def _clear_of(there: Sequence[Item], box: Box, side: Side, runs: Sequence[Run]) -> Rows:
    """The rows of a side, moved out until no words at a corner lie on those of another side."""
    taken = _words(there)
    for farther in range(MOST_FARTHER):
        laid = rows(box, side, runs, FIRST + farther * ROW / 2, taken)
        if not any(touches(one, other) for one in _words(laid.items) for other in taken):
            break
    return laid


def _words(items: Iterable[Item]) -> list[Box]:
    return [text_box(item) for item in inked(items) if isinstance(item, Text)]


def _runs(chains: Sequence[Chain], side: Side, told: Told, scale: Share) -> Iterator[Run]:
    for chain in chains:
        if chain.side == side:
            points = tuple((x * scale, y * scale) for x, y in chain.points)
            sizes = chain.sizes()
            yield Run(points, sizes, chain.words or told.row(sizes), chain.level)
