"""One sheet or board as the shop cuts it, to scale: pieces by name and size, cuts by number.

Offcuts worth keeping are hatched and sized, waste is hatched close, bad spans are crossed out.
`about` of the items: `piece/B1-3`, `cut/7` (by its number), `blank/7` (what cut 7 saws apart),
`offcut/1`, `later` (sawn after milling).
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from model.cutting.record import Box, Layout
from model.drawings.cut_sheet import KEY, RIGHT, UPPER, Room, SheetOnPaper
from model.drawings.cut_told import Shown, about_size_words, milled_whole
from model.drawings.grain import grain_strokes
from model.drawings.labels import label_in
from model.drawings.leaders import led_out
from model.drawings.paper import (
    Area,
    Drawing,
    Hatch,
    Item,
    Pen,
    Stroke,
    Text,
    corners,
    outline,
)
from model.units import Share

ROUNDS = 4
LEAST_SHARE = 0.6  # of the scale, when all is named
KEEP, WASTE = 2.4, 1.1  # mm between the strokes of a hatch


def cut_layout(layout: Layout, room: Room, shown: Shown, scale: Share | None = None) -> Drawing:
    """The drawing, as large as the room allows, or at this scale whatever the room.

    A room so small that names led out would take more of it than the board leaves them out.
    """
    plain = SheetOnPaper(
        layout=layout, shown=replace(shown, all_named=False), room=room, wanted=scale
    )
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
    sheet = SheetOnPaper(layout=layout, shown=replace(shown, all_named=False), room=room)
    return Room(sheet.board.x1 + RIGHT, sheet.board.y1 + sheet.upper)


# ---------------------------------------------------------------- what is drawn, ground first


def _items(sheet: SheetOnPaper) -> Iterator[Item]:
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


def _places(sheet: SheetOnPaper) -> Iterator[Area]:
    for cut, line in zip(sheet.cuts, sheet.lines, strict=True):
        yield Area(sheet.place(cut), f"blank/{line.number}")
    for placed in sheet.layout.placed:
        yield Area(sheet.box(placed.box), f"piece/{placed.name}")
    for place, offcut in enumerate(sheet.layout.offcuts, 1):
        yield Area(sheet.place(offcut), f"offcut/{place}")
    for ring in sheet.rings:
        yield Area(ring.box, f"cut/{ring.number}", has_ground=False)


def _left_over(sheet: SheetOnPaper) -> Iterator[Item]:
    """Offcuts with their sizes, and waste."""
    rings = [ring.box for ring in sheet.rings]
    for place, region in enumerate(sheet.layout.offcuts, 1):
        size = about_size_words(region, sheet.shown.unit)
        box, about = sheet.place(region), f"offcut/{place}"
        label = label_in(box, ((("offcut", size), (f"offcut {size}",)), ((size,),)), rings)
        holes = (corners(label.box),) if label is not None else ()
        yield Hatch(corners(box), KEEP, holes=holes, about=about)
        yield from label.texts(about) if label is not None else ()
    for region in sheet.layout.tree.all():
        if region.use == "waste":
            yield Hatch(corners(sheet.place(region)), WASTE, angle=135.0, about="waste")


def _crossed(box: Box) -> Iterator[Item]:
    yield outline(box, "narrow", "bad")
    yield Stroke(((box.x0, box.y0), (box.x1, box.y1)), "narrow", "bad")
    yield Stroke(((box.x0, box.y1), (box.x1, box.y0)), "narrow", "bad")


def _cut_lines(sheet: SheetOnPaper) -> Iterator[Stroke]:
    for cut in milled_whole(sheet.layout):
        pen: Pen = "hidden"
        yield Stroke(sheet.ends(cut), pen, "later")
    for line in sheet.lines:
        yield Stroke((line.start, line.end), "narrow", f"cut/{line.number}")


def _key(sheet: SheetOnPaper) -> Iterator[Text]:
    """The sizes of pieces whose place does not give them."""
    for place, words in enumerate(sheet.key):
        y = sheet.below - (place + 0.5) * 2 * KEY
        yield Text((sheet.board.x0, y), words, KEY, "left")
