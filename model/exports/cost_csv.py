"""`cost.csv`: the maker's own cost sheet, with hours and rates; it is not for the client."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator
from pathlib import Path

from model.bed import Bed
from model.cost.buy import Buy, Group
from model.cost.cost_sheet import CostSheet, cost_sheet
from model.cost.costing import Costing, costing_of
from model.cost.hours import Timed
from model.cost.leftover import Offcut, Waste
from model.cost.measures import shop_measure
from model.cost.money import NOT_PRICED, Money, added, figure
from model.cost.sizes import at_most, sold_sides
from model.cost.stock_needs import rough_name
from model.exports.csv_text import Cell, csv_bytes
from model.exports.plain import number
from model.exports.shopping_csv import EXAMPLE

COLUMNS = ("section", "name", "quantity", "unit", "rate", "amount", "currency", "note")
NOT_TIMED = "not timed"
PAID_BEFORE = "counted as 0 in cost and quote; a board of the rack counts once it has a price"

Row = tuple[Cell, ...]


def write(bed: Bed, path: Path) -> None:
    """Write the cost sheet: groups of the buying list, work, overhead, total; offcuts apart."""
    path.write_bytes(content(costing_of(bed), str(bed["shown_unit"])))


def content(costing: Costing, unit: str) -> bytes:
    """The bytes of the file; lengths in the unit shown."""
    return csv_bytes(COLUMNS, rows(costing, unit))


def rows(costing: Costing, unit: str) -> tuple[Row, ...]:
    """The cost sheet in the columns of the file; lengths in the unit shown."""
    sheet = cost_sheet(costing)
    parts = (
        *_heading(sheet), *_groups(costing), *_work(costing), *_sums(sheet), *_left(costing, unit),
    )  # fmt: skip
    return tuple(_told(row, sheet.currency) for row in parts)


def _told(row: Row, currency: str) -> Row:
    section, name, quantity, unit, rate, amount, note = row
    is_money = amount not in ("", NOT_PRICED)
    return section, name, quantity, unit, rate, amount, currency if is_money else "", note


def _heading(sheet: CostSheet) -> Iterator[Row]:
    if sheet.is_example:
        yield "heading", EXAMPLE, None, "", "", "", "invented for the demo: put in your own"


def _groups(costing: Costing) -> Iterator[Row]:
    groups: dict[Group, list[Buy]] = {}
    for buy in costing.buys:
        groups.setdefault(buy.group, []).append(buy)
    for group, buys in groups.items():
        gone = sum(not buy.is_priced for buy in buys)
        note = f"incomplete: {gone} of {len(buys)} lines not priced" if gone else ""
        if all(buy.on_hand for buy in buys):
            note = PAID_BEFORE
        known = added((buy.total for buy in buys), costing.prices.decimals)
        amount = f"{known:f}" if gone < len(buys) else NOT_PRICED
        yield "bought", group, len(buys), "line", "", amount, note


def _work(costing: Costing) -> Iterator[Row]:
    for line in costing.work:
        yield _timed(line)


def _timed(line: Timed) -> Row:
    rate = NOT_TIMED if line.rate is None else f"{line.rate:.3g} min"
    note = "" if line.minutes is None else f"{float(line.minutes) / 60:.2f} h"
    worth = figure(line.cost)
    return "work", line.work.name, number(line.work.quantity), line.work.unit, rate, worth, note


def _sums(sheet: CostSheet) -> Iterator[Row]:
    partly = "incomplete" if sheet.missing else ""
    yield "sum", "Work, at what an hour costs", float(sheet.hours), "h", "", f"{sheet.labour:f}", ""
    for extra in sheet.extras:
        yield "charge", extra.name, None, "", "", figure(extra.amount), ""
    yield "sum", "All before overhead", None, "", "", f"{sheet.direct:f}", partly
    yield "sum", "Overhead", None, "", "", f"{sheet.overhead:f}", ""
    yield "total", "Cost", None, "", "", f"{sheet.total:f}", partly
    for sentence in sheet.missing:
        yield "missing", sentence, None, "", "", "", ""


def _left(costing: Costing, unit: str) -> Iterator[Row]:
    """What is left over: worth something, and taken off nothing."""
    for (name, value), count in _alike(costing.offcuts, unit).items():
        amount = figure(None if value is None else value * count)
        yield "offcut", name, count, "piece", "", amount, "worth keeping; not taken off"
    for spent in costing.waste:
        said = f"{spent.share * 100:.1f} % waste, {spent.offcuts / spent.area * 100:.1f} % offcuts"
        measure = shop_measure("m2", unit)
        area = number(round(spent.area / 1e6 / measure.holds, 3))
        yield "waste", _wasted(spent, unit), area, measure.name, "", "", said


def _wasted(spent: Waste, unit: str) -> str:
    """What a row of waste is of; plans of one wood and thickness differ by the boards' width."""
    if spent.is_sheet:
        return spent.material_name
    if spent.sold_width is None:
        return f"{spent.material_name}, {rough_name(spent.thickness, unit)}"
    return f"{spent.material_name}, {sold_sides(spent.thickness, spent.sold_width, unit)}"


def _alike(offcuts: Iterable[Offcut], unit: str) -> Counter[tuple[str, Money | None]]:
    """Offcuts of one name, size and worth counted together, in the order of the plans."""
    return Counter(
        (
            f"{each.material_name}, {at_most(each.length, unit)} x {at_most(each.width, unit)}",
            each.value,
        )
        for each in offcuts
    )
