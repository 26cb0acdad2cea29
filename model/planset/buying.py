"""Materials and hardware: what is bought, before anything is cut."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import groupby

from model.cost.buy import Buy
from model.cost.costing import costing_of
from model.cost.lumber_measure import measure
from model.planset.flow import Line, heading, paragraph
from model.planset.setting import Setting
from model.planset.sheet import Sheet, text_sheets
from model.planset.table import Head, Row, table
from model.shop.cut_list import CutPiece, cut_list
from model.shop.order import say
from model.stock.prices import BoardMeasure
from model.units import Mm

KEY = "buying"
HEADS = (Head("Buy", "right"), Head("What"), Head("Size"), Head("The bed takes"), Head("Note"))
SAID = (
    "Have the mattress, the slides and the connectors in hand before the first cut, and measure "
    "them: the sizes in this set hold for what is named here. Quantities count what the bed takes "
    "and round up to what is sold."
)
LUMBER_HEADS = (
    Head("Wood"), Head("Rough thickness"), Head("Rough sizes add up to"), Head("Pieces", "right"),
    Head("Longest"), Head("Widest"),
)  # fmt: skip
LUMBER = (
    "Net of all rough sizes. Boards have knots, splits and odd widths: a yard is asked for a third "
    "more than this, and for more yet of a low grade (common practice, no source)."
)
TITLES = {"on hand": "From the shop's own rack, as the board plans are drawn"}


def sheets(setting: Setting) -> tuple[Sheet, ...]:
    """The pages of what is bought."""
    return text_sheets(
        KEY, "Materials and hardware", lambda wide: tuple(_lines(setting, wide)), setting.paper
    )


def _lines(setting: Setting, width: Mm) -> Iterator[Line]:
    yield from paragraph(SAID, width)
    yield from _lumber(setting, width)
    buys = costing_of(setting.bed).buys
    every = [_row(buy) for buy in buys]
    for group, some in groupby(buys, key=lambda buy: buy.group):
        yield from heading(TITLES.get(group, str(group).capitalize()), width)
        yield from table(HEADS, [_row(buy) for buy in some], width, alike=every)


def _lumber(setting: Setting, width: Mm) -> Iterator[Line]:
    """What solid wood the bed takes, whoever's boards it is cut from."""
    found: dict[tuple[str, Mm], list[CutPiece]] = {}
    for piece in cut_list(setting.bed):
        if piece.source is not None:
            found.setdefault((piece.material.name, piece.thickness), []).append(piece)
    if not found:
        return
    by: BoardMeasure = "board foot" if setting.unit == "inch" else "cubic metre"
    rows = [_lumber_row(setting, name, some, by) for (name, _), some in sorted(found.items())]
    yield from heading("Lumber in all", width)
    yield from paragraph(LUMBER, width, keeps=True)
    yield from table(LUMBER_HEADS, rows, width)


def _lumber_row(setting: Setting, name: str, pieces: list[CutPiece], by: BoardMeasure) -> Row:
    thick = pieces[0].thickness
    total = sum(measure(thick, each.rough.length, each.rough.width, by) * each.quantity
                for each in pieces)  # fmt: skip
    longest = max(pieces, key=lambda each: each.rough.length)
    widest = max(pieces, key=lambda each: each.rough.width)
    measured = f"{total:.1f} board feet" if by == "board foot" else f"{total:.4f} m3"
    return Row(
        (name, setting.size(thick), measured, str(sum(each.quantity for each in pieces)),
         f"{say.rough(longest.rough.length, setting.unit)} ({longest.name})",
         f"{say.rough(widest.rough.width, setting.unit)} ({widest.name})")
    )  # fmt: skip


def _row(buy: Buy) -> Row:
    note, *_ = buy.note.split(" (")  # where a figure comes from stands in the cost sheet
    return Row((_packs(buy), buy.name, buy.size, _quantity(buy), note))


def _packs(buy: Buy) -> str:
    if buy.on_hand:
        return "on hand"
    if buy.pack != 1:
        return f"{buy.packs:g} × {_amount(buy.pack, buy.unit)}"
    return _amount(buy.packs, buy.unit)


def _quantity(buy: Buy) -> str:
    """What the bed takes; lumber by the measure stands in a table of its own, net of waste."""
    if buy.unit in ("board foot", "m3"):
        return ""
    return _amount(round(buy.quantity, 2), buy.unit)


def _amount(number: float, unit: str) -> str:
    """`1 sheet`, `37 board feet`, `0.5 litre`."""
    many = {"board foot": "board feet", "m3": "m3", "kg": "kg"}
    return f"{number:g} {many.get(unit, f'{unit}s') if number > 1 else unit}"
