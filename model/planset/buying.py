"""Materials and hardware: what is bought, before anything is cut."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import groupby

from model.cost.buy import Buy
from model.cost.costing import costing_of
from model.planset.flow import Line, heading, paragraph
from model.planset.setting import Setting
from model.planset.sheet import Sheet, text_sheets
from model.planset.table import Head, Row, table
from model.units import Mm

KEY = "buying"
HEADS = (Head("Buy", "right"), Head("What"), Head("Size"), Head("The bed takes"), Head("Note"))
SAID = (
    "Have the mattress, the slides and the connectors in hand before the first cut, and measure "
    "them: the sizes in this set hold for what is named here. Quantities count what the bed takes "
    "and round up to what is sold."
)


def sheets(setting: Setting) -> tuple[Sheet, ...]:
    """The pages of what is bought."""
    return text_sheets(
        KEY, "Materials and hardware", lambda wide: tuple(_lines(setting, wide)), setting.paper
    )


def _lines(setting: Setting, width: Mm) -> Iterator[Line]:
    yield from paragraph(SAID, width)
    buys = costing_of(setting.bed).buys
    every = [_row(buy) for buy in buys]
    for group, some in groupby(buys, key=lambda buy: buy.group):
        yield from heading(str(group).capitalize(), width)
        yield from table(HEADS, [_row(buy) for buy in some], width, alike=every)


def _row(buy: Buy) -> Row:
    note, *_ = buy.note.split(" (")  # where a figure comes from stands in the cost sheet
    return Row((_packs(buy), buy.name, buy.size, _quantity(buy), note))


def _packs(buy: Buy) -> str:
    if buy.on_hand:
        return "on hand"
    return (
        f"{buy.packs:g} × {buy.pack:g} {buy.unit}" if buy.pack != 1 else f"{buy.packs:g} {buy.unit}"
    )


def _quantity(buy: Buy) -> str:
    return f"{round(buy.quantity, 2):g} {buy.unit}"
