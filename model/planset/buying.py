"""Materials and hardware: what is bought before anything is cut, by somebody who has none."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import groupby

from model.building.consumables import consumables
from model.building.fittings import fittings
from model.building.screw_list import ScrewLine, screw_list
from model.building.words import called
from model.cost.buy import Buy
from model.cost.costing import costing_of
from model.cost.sizes import sold_size
from model.planset.flow import Line, heading, paragraph, points
from model.planset.setting import Setting
from model.planset.sheet import Sheet, text_sheets
from model.planset.table import Head, Row, table
from model.planset.wood_list import BOARD_HEADS, LUMBER_HEADS, WoodList
from model.units import Mm

KEY = "buying"
HEADS = (Head("Buy", "right"), Head("What"), Head("Size"), Head("The bed takes"), Head("Note"))
SCREW_HEADS = (
    Head("Buy", "right"), Head("What"), Head("Long"), Head("Head"), Head("The bed takes"),
    Head("Through"),
)  # fmt: skip
SAID = (
    "Have the mattress, the slides and the connectors in hand before the first cut, and measure "
    "them: the sizes in this set hold for what is named here. Quantities count what the bed takes "
    "and round up to what is sold."
)
LUMBER = (
    "Net is the sum of all rough sizes. Boards have knots, splits and odd widths: ask for a third "
    "more, and for more yet of a low grade (common practice). Where more is told, it is what nine "
    "of ten racks of boards, drawn at random, had to hold to give every piece, or all boards that "
    "the plans are drawn on, whole as they are sold, whichever is more: a few small pieces still "
    "take a whole board. Buy it dried for furniture. The checks of strength reckon with this grade "
)
SPARED = "Look at these offcuts before you buy more:"
OWN = (
    "In place of the lumber above, as far as you find such boards: those that the plans are drawn "
    "on. The maker of this design had them on hand, as well as any offcut below; boards that are "
    "told by a name carry it in the plans. Where yours are others, lay the pieces out anew by the "
    "rough sizes of the parts list."
)
DRAWN = "In place of the lumber above: the boards that the plans are drawn on."
SCREWS = (
    "Of steel, zinc-plated or coated; in oak of stainless steel or brass, since oak stains plain "
    "steel black. Any drive that fits your bits: square, star or cross, one kind for all. A head "
    "that is sunk is conical below, and lies flush; a pan head is flat below, and stands on "
    "metal or a washer."
)
SMALL = "No counts: so much as the work takes."
OF_WOOD = ("boards", "sheets", "on hand")


def sheets(setting: Setting) -> tuple[Sheet, ...]:
    """The pages of what is bought."""
    return text_sheets(
        KEY, "Materials and hardware", lambda wide: tuple(_lines(setting, wide)), setting.paper
    )


def _lines(setting: Setting, width: Mm) -> Iterator[Line]:
    yield from paragraph(SAID, width)
    yield from _wood(setting, width)
    buys = [buy for buy in costing_of(setting.bed).buys if buy.group not in OF_WOOD]
    every = [_row(buy) for buy in buys if buy.group != "screws"]
    for group, some in groupby(buys, key=lambda buy: buy.group):
        yield from heading(str(group).capitalize(), width)
        if group == "screws":
            yield from _screws(setting, width)
            continue
        yield from table(HEADS, [_row(buy) for buy in some], width, alike=every)
        if group == "hardware":
            yield from _fittings(setting, width)
    yield from _small(setting, width)


# ---------------------------------------------------------------- wood


def _wood(setting: Setting, width: Mm) -> Iterator[Line]:
    wood = WoodList(setting.bed, setting.unit)
    lumber, boards, whole = wood.lumber(), wood.boards(), wood.sheets()
    if lumber:
        yield from heading("Lumber in all", width)
        grade = setting.bed["stock_grade"].name
        yield from paragraph(f"{LUMBER}({grade[:1].lower()}{grade[1:]}).", width, keeps=True)
        yield from table(LUMBER_HEADS, lumber, width)
        asked = tuple(wood.long_and_wide())
        if asked:
            yield from paragraph("Among it must be:", width, keeps=True)
            yield from points(asked, width)
        spared = tuple(wood.spared())
        if spared:
            yield from paragraph(SPARED, width, keeps=True)
            yield from points(spared, width)
    every = [*boards, *whole]
    columns = len(BOARD_HEADS) if any(row.cells[-1] for row in every) else len(BOARD_HEADS) - 1
    every, boards, whole = (
        [_first(row, columns) for row in rows] for rows in (every, boards, whole)
    )
    if boards:
        yield from heading("The same board by board", width)
        yield from paragraph(OWN if wood.has_own else DRAWN, width, keeps=True)
        yield from table(BOARD_HEADS[:columns], boards, width, alike=every)
    if whole:
        yield from heading("Sheets", width)
        yield from table(BOARD_HEADS[:columns], whole, width, alike=every)


def _first(row: Row, columns: int) -> Row:
    """A row without the last column, where that is empty in all of them."""
    return row._replace(cells=row.cells[:columns])


# ---------------------------------------------------------------- hardware and screws


def _row(buy: Buy) -> Row:
    note, *_ = buy.note.split(" (")  # where a figure comes from stands in the cost sheet
    note, *_ = note.split(": common practice")
    return Row((_packs(buy), buy.name, buy.size, _quantity(buy), note))


def _fittings(setting: Setting, width: Mm) -> Iterator[Line]:
    """What each must measure, so that it goes into what is cut for it."""
    told = fittings(setting.bed)
    if told:
        yield from heading("What the hardware must measure", width)
        yield from points([f"{each.name}. {each.text}" for each in told], width)


def _screws(setting: Setting, width: Mm) -> Iterator[Line]:
    yield from paragraph(SCREWS, width, keeps=True)
    rows = [_screw_row(setting, each) for each in screw_list(setting.bed)]
    yield from table(SCREW_HEADS, rows, width)


def _screw_row(setting: Setting, each: ScrewLine) -> Row:
    packs = _amount(each.quantity, "piece")
    if each.pack != 1:
        packs = f"{each.packs} × {_amount(each.pack, 'piece')}"
    through = ", ".join(called(name, is_wood=True) for name in each.through)
    by_step = f", {each.reckoned} of them set out as the steps tell" if each.reckoned else ""
    more = f", {each.quantity} with spares" if each.quantity > each.number else ""
    return Row(
        (packs, each.name, sold_size(each.length, setting.unit), each.head,
         f"{each.number}{more}", f"{through}{by_step}")
    )  # fmt: skip


def _small(setting: Setting, width: Mm) -> Iterator[Line]:
    told = consumables(setting.bed, setting.steps)
    if told:
        yield from heading("Small things", width)
        yield from paragraph(SMALL, width, keeps=True)
        yield from points([f"{each.name}: {each.use}." for each in told], width, sign="☐")


# ---------------------------------------------------------------- amounts


def _packs(buy: Buy) -> str:
    if buy.pack != 1:
        return f"{buy.packs:g} × {_amount(buy.pack, buy.unit)}"
    return _amount(buy.packs, buy.unit)


def _quantity(buy: Buy) -> str:
    return _amount(round(buy.quantity, 2), buy.unit)


def _amount(number: float, unit: str) -> str:
    """`1 sheet`, `12 pieces`, `0.5 litre`."""
    return f"{number:g} {f'{unit}s' if number > 1 else unit}"
