"""One sheet or board as the shop cuts it, to scale: pieces by name and size, cuts by number.

Offcuts worth keeping are hatched and sized, waste is hatched close, bad spans are crossed out.
`about` of the items: `piece/B1-3`, `cut/7` (by its number), `blank/7` (what cut 7 saws apart),
`offcut/1`, `later` (sawn after milling).
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from functools import cached_property
from typing import NamedTuple

from model.cutting.record import Box, Layout, Placed, Region
from model.drawings import dimension
from model.drawings.cut_numbers import Line, Number, numbered
from model.drawings.grain import grain_strokes
from model.drawings.labels import Label, label_in
from model.drawings.leaders import ROW, Small, led_out, rows_for, runs
from model.drawings.letters import text_box, words_width
from model.drawings.paper import (
    Area,
    Drawing,
    Hatch,
    Item,
    Pen,
    Stroke,
    Text,
    corners,
    grown,
    outline,
)
from model.units import INCH, Mm, Share, show_bare, show_length

TITLE: Mm = 3.0
KEY: Mm = 1.8
LEFT, RIGHT, LOWER, UPPER = 11.0, 9.5, 10.5, 4.5  # margins for dimensions and rings
AWAY: Mm = 6.0  # a dimension from its board: a number in a ring stands between
TITLED: Mm = 5.5  # more of it above, where there is a title
ROUNDS = 4
LEAST_SHARE = 0.6  # of the scale, when all is named
KEEP, WASTE = 2.4, 1.1  # mm between the strokes of a hatch


class Room(NamedTuple):
    """The largest drawing that is wanted, mm on paper."""

    width: Mm
    height: Mm


@dataclass(frozen=True, kw_only=True)
class Shown:
    """How a layout is told: the unit, the names of marks (`box side`), the number of each cut in
    the order of `sawn`, and a title. Where things crowd, `all_named` leads names and numbers to
    their places by lines; else they are left out, as on a screen that can be enlarged.
    """

    unit: str = "mm"
    names: Mapping[str, str] = field(default_factory=dict)
    numbers: Sequence[int] = ()
    title: str = ""
    all_named: bool = True


def sawn(layout: Layout) -> tuple[Region, ...]:
    """What its cuts saw apart, a blank before its parts; not what is cut after milling."""
    return tuple(_sawn(layout.tree, False))


def milled_whole(layout: Layout) -> tuple[Region, ...]:
    """What is sawn apart only after milling."""
    now = {id(region) for region in sawn(layout)}
    return tuple(each for each in layout.tree.all() if each.cut and id(each) not in now)


def _sawn(region: Region, is_later: bool) -> Iterator[Region]:
    is_later = is_later or region.stays_whole
    if region.cut and not is_later:
        yield region
    for part in region.parts:
        yield from _sawn(part, is_later)


def size_words(length: Mm, width: Mm, unit: str) -> str:
    """Two sizes without the sign of their unit."""
    return f"{show_bare(length, unit)} × {show_bare(width, unit)}"


def about_size_words(region: Region, unit: str) -> str:
    """The sizes of what is left over, as near as anybody measures it."""
    step = {"inch": INCH / 16, "mm": 1.0}[unit]
    length, width = (show_bare(side, unit, step) for side in (region.length, region.width))
    return f"{length} × {width}"


def cut_layout(layout: Layout, room: Room, shown: Shown, scale: Share | None = None) -> Drawing:
    """The drawing, as large as the room allows, or at this scale whatever the room.

    A room so small that names led out would take more of it than the board leaves them out.
    """
    plain = _Sheet(layout=layout, shown=replace(shown, all_named=False), room=room, wanted=scale)
    sheet = replace(plain, shown=shown)
    for _ in range(ROUNDS):  # names led out and the key take room, and then fewer fit inside
        above, below = sheet.room_above, sheet.room_below
        if above <= sheet.above and below <= sheet.below:
            break
        sheet = replace(sheet, above=max(above, sheet.above), below=max(below, sheet.below))
    if sheet.scale < LEAST_SHARE * plain.scale:
        sheet = plain
    return Drawing(
        width=sheet.board.x1 + RIGHT, height=sheet.board.y1 + sheet.upper,
        scale=sheet.scale, items=tuple(_items(sheet)), title=shown.title,
    )  # fmt: skip


def paper_size(layout: Layout, room: Room, shown: Shown) -> Room:
    """How large the drawing is, where names need no lines: told before it is made."""
    sheet = _Sheet(layout=layout, shown=replace(shown, all_named=False), room=room)
    return Room(sheet.board.x1 + RIGHT, sheet.board.y1 + sheet.upper)


@dataclass(frozen=True, kw_only=True)
class _Sheet:
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
        size = size_words(placed.length, placed.width, self.shown.unit)
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
            each.mark: size_words(each.length, each.width, self.shown.unit)
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


# ---------------------------------------------------------------- what is drawn, ground first


def _items(sheet: _Sheet) -> Iterator[Item]:
    yield from _places(sheet)
    labelled = [label.box for _, label in sheet.labels if label is not None]
    taken = [*labelled, *(ring.box for ring in sheet.rings)]
    if sheet.layout.stock.has_grain:
        for placed in sheet.layout.placed:
            yield from grain_strokes(sheet.box(placed.box), taken)
    yield from _left_over(sheet)
    for span in sheet.layout.stock.bad:
        yield from _crossed(sheet.box(span))
    yield from _cut_lines(sheet)
    yield outline(sheet.board, "wide")
    for placed, label in sheet.labels:
        yield from label.texts(f"piece/{placed.name}") if label is not None else ()
    yield from led_out(sheet.small, sheet.board.x0, sheet.board.x1, sheet.board.y1 + UPPER + 0.5)
    yield from sheet.around
    yield from _key(sheet)
    for ring in sheet.rings:
        yield from ring.items(f"cut/{ring.number}")


def _places(sheet: _Sheet) -> Iterator[Area]:
    for cut, line in zip(sheet.cuts, sheet.lines, strict=True):
        yield Area(sheet.place(cut), f"blank/{line.number}")
    for placed in sheet.layout.placed:
        yield Area(sheet.box(placed.box), f"piece/{placed.name}")
    for place, offcut in enumerate(sheet.layout.offcuts, 1):
        yield Area(sheet.place(offcut), f"offcut/{place}")
    for ring in sheet.rings:
        yield Area(ring.box, f"cut/{ring.number}", has_ground=False)


def _left_over(sheet: _Sheet) -> Iterator[Item]:
    """Offcuts with their sizes, and waste."""
    rings = [ring.box for ring in sheet.rings]
    for place, region in enumerate(sheet.layout.offcuts, 1):
        size = about_size_words(region, sheet.shown.unit)
        box, about = sheet.place(region), f"offcut/{place}"
        label = label_in(box, ((("offcut", size), (f"offcut {size}",)), ((size,),)), rings)
        holes = (label.box,) if label is not None else ()
        yield Hatch(corners(box), KEEP, holes=holes, about=about)
        yield from label.texts(about) if label is not None else ()
    for region in sheet.layout.tree.all():
        if region.use == "waste":
            yield Hatch(corners(sheet.place(region)), WASTE, angle=135.0, about="waste")


def _crossed(box: Box) -> Iterator[Item]:
    yield outline(box, "narrow", "bad")
    yield Stroke(((box.x0, box.y0), (box.x1, box.y1)), "narrow", "bad")
    yield Stroke(((box.x0, box.y1), (box.x1, box.y0)), "narrow", "bad")


def _cut_lines(sheet: _Sheet) -> Iterator[Stroke]:
    for cut in milled_whole(sheet.layout):
        pen: Pen = "hidden"
        yield Stroke(sheet.ends(cut), pen, "later")
    for line in sheet.lines:
        yield Stroke((line.start, line.end), "narrow", f"cut/{line.number}")


def _around(sheet: _Sheet) -> Iterator[Item]:
    """Overall sizes and the title."""
    board, stock, unit = sheet.board, sheet.layout.stock, sheet.shown.unit
    length, width = show_length(stock.length, unit), show_length(stock.width, unit)
    if words_width(width, dimension.WORDS) > board.y1 - board.y0:  # a board too narrow for it
        length = f"{length} × {width}"
    else:
        yield from dimension.upright(board.y0, board.y1, board.x0 - AWAY, board.x0, width)
    yield from dimension.level(board.x0, board.x1, board.y0 - AWAY, board.y0, length)
    if sheet.shown.title:
        top = board.y1 + sheet.upper - TITLE
        yield Text((board.x0, top), sheet.shown.title, TITLE, "left")


def _key(sheet: _Sheet) -> Iterator[Text]:
    """The sizes of pieces whose place does not give them."""
    for place, words in enumerate(sheet.key):
        y = sheet.below - (place + 0.5) * 2 * KEY
        yield Text((sheet.board.x0, y), words, KEY, "left")
