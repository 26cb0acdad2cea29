"""A layout on its way to paper: its scale, where its pieces lie, and which words have room."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import NamedTuple

from model.cutting.record import Box, Layout, Placed, Region
from model.drawings.cut_numbers import Line, Number, numbered
from model.drawings.cut_told import Shown, sawn
from model.drawings.labels import Label, label_in
from model.drawings.leaders import ROW, Small, rows_for, runs
from model.drawings.letters import text_box, words_width
from model.drawings.measures import ABOVE, WORDS, measure_ink
from model.drawings.paper import Item, Measure, Text, grown
from model.units import Mm, Share

TITLE: Mm = 3.0
KEY: Mm = 1.8
LEFT, RIGHT, LOWER, UPPER = 11.0, 9.5, 10.5, 4.5  # margins for dimensions and rings
AWAY: Mm = 6.0  # a dimension from its board: a number in a ring stands between
TITLED: Mm = 5.5  # more of it above, where there is a title


class Room(NamedTuple):
    """The largest drawing that is wanted, mm on paper."""

    width: Mm
    height: Mm


@dataclass(frozen=True, kw_only=True)
class SheetOnPaper:
    """A layout on its way to paper; `above` and `below` are room for more words."""

    layout: Layout
    shown: Shown
    room: Room
    wanted: Share | None = None
    above: Mm = 0.0
    below: Mm = 0.0

    @cached_property
    def scale(self) -> Share:
        stock = self.layout.stock
        across = (self.room.width - LEFT - RIGHT) / stock.length
        up = (self.room.height - LOWER - self.upper - self.below) / stock.width
        return self.wanted or max(min(across, up), 1e-3)

    @property
    def upper(self) -> Mm:
        """What lies above the board on paper."""
        return UPPER + self.above + (TITLED if self.shown.title else 0.0)

    @property
    def room_above(self) -> Mm:
        return rows_for(self.small, self.board.x1 - self.board.x0) * ROW

    @property
    def room_below(self) -> Mm:
        return len(self.key) * 2 * KEY

    def box(self, box: Box) -> Box:
        """A box of wood on paper."""
        x, y, s = LEFT, LOWER + self.below, self.scale
        return Box(x + s * box.x0, y + s * box.y0, x + s * box.x1, y + s * box.y1)

    def place(self, region: Region) -> Box:
        """Where a region lies on paper."""
        far = (region.x + region.length, region.y + region.width)
        return self.box(Box(region.x, region.y, *far))

    @cached_property
    def board(self) -> Box:
        return self.box(Box(0.0, 0.0, self.layout.stock.length, self.layout.stock.width))

    @cached_property
    def cuts(self) -> tuple[Region, ...]:
        return sawn(self.layout)

    @cached_property
    def lines(self) -> tuple[Line, ...]:
        numbers = self.shown.numbers or range(1, len(self.cuts) + 1)
        return tuple(
            Line(*self.ends(cut), number) for cut, number in zip(self.cuts, numbers, strict=True)
        )

    def ends(self, cut: Region) -> tuple[tuple[Mm, Mm], tuple[Mm, Mm]]:
        """The middle of the blade's way, from the lower or left end."""
        middle = cut.at + cut.kerf / 2
        level = Box(cut.x, middle, cut.x + cut.length, middle)
        upright = Box(middle, cut.y, middle, cut.y + cut.width)
        box = self.box(level if cut.cut == "rip" else upright)
        return (box.x0, box.y0), (box.x1, box.y1)

    @cached_property
    def rings(self) -> tuple[Number, ...]:
        words = [text_box(item) for item in self.around if isinstance(item, Text)]
        return numbered(self.lines, self.board, words, self.shown.all_named)

    @cached_property
    def around(self) -> tuple[Item, ...]:
        """Overall sizes and the title."""
        return tuple(_around(self))

    @cached_property
    def labels(self) -> tuple[tuple[Placed, Label | None], ...]:
        taken = [grown(ring.box, 0.2) for ring in self.rings]
        return tuple(
            (each, label_in(self.box(each.box), self.ways(each), taken))
            for each in self.layout.placed
        )

    def ways(self, placed: Placed) -> tuple[tuple[tuple[str, ...], ...], ...]:
        """How a piece is named: with its size where there is any room for it, then without."""
        size = self.shown.size(placed.length, placed.width)
        name = self.shown.names.get(placed.mark, "")
        full = ((placed.name, name, size), (f"{placed.name} {name}", size)) if name else ()
        sized = (*full, (placed.name, size), (f"{placed.name}  {size}",))
        return sized, ((placed.name,),), ((placed.mark,),)

    @cached_property
    def small(self) -> tuple[Small, ...]:
        """Pieces that have no room for any words, if they are to be named all the same."""
        found = (
            Small(self.box(each.box), each.mark, each.name, f"piece/{each.name}")
            for each, label in self.labels
            if label is None
        )
        return runs(tuple(found)) if self.shown.all_named else ()

    @cached_property
    def key(self) -> tuple[str, ...]:
        """Lines that give the sizes of pieces whose place does not."""
        if not self.shown.all_named:
            return ()
        sizes = {
            each.mark: self.shown.size(each.length, each.width)
            for each, label in self.labels
            if label is None or not any("×" in words for words in label.lines)
        }
        told = [f"{mark}: {size}" for mark, size in sizes.items()]
        return _wrapped(told, self.board.x1 - self.board.x0)


def _wrapped(told: Sequence[str], width: Mm) -> tuple[str, ...]:
    lines: list[str] = []
    for words in told:
        longer = f"{lines[-1]}   {words}" if lines else words
        if lines and words_width(longer, KEY) <= width:
            lines[-1] = longer
        else:
            lines.append(words)
    return tuple(lines)


def _around(sheet: SheetOnPaper) -> Iterator[Item]:
    """Overall sizes and the title."""
    board, stock = sheet.board, sheet.layout.stock
    length, width = sheet.shown.length(stock.length), sheet.shown.length(stock.width)
    if words_width(width, WORDS) > board.y1 - board.y0:  # a board too narrow for it
        length = f"{length} × {width}"
    else:
        yield from _dimension(board, width, stock.width, upright=True)
    yield from _dimension(board, length, stock.length, upright=False)
    if sheet.shown.title:
        top = board.y1 + sheet.upper - TITLE
        yield Text((board.x0, top), sheet.shown.title, TITLE, "left")


def _dimension(board: Box, words: str, size: Mm, upright: bool) -> Iterator[Item]:
    """A side of the board, left of it or below it; a level one has its words below its line, out of
    the way of the rings.
    """
    start = (board.x0, board.y0)
    if upright:
        measure = Measure(start, (board.x0, board.y1), board.x0 - AWAY, True, words, size)
    else:
        line = board.y0 - AWAY
        at = ((board.x0 + board.x1) / 2, line - ABOVE * WORDS)
        measure = Measure(start, (board.x1, board.y0), line, False, words, size, words_at=at)
    return measure_ink(measure)
