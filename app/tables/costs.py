"""The maker's cost sheet as a table, and the columns of the price list that is typed in."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from app.tables.cells import natural, plain
from app.tables.entries import Entry
from app.tables.rows import Column

SheetRow = tuple[Any, ...]

# As in the file of the cost sheet; written out, because reading it takes long to import.
SHEET_COLUMNS = ("section", "name", "quantity", "unit", "rate", "amount", "currency", "note")

_ORDER = (
    "heading", "bought", "work", "charge", "sum", "total", "missing", "offcut", "waste",
)  # fmt: skip


def _cell(name: str) -> Callable[[SheetRow], str]:
    place = SHEET_COLUMNS.index(name)

    def text(row: SheetRow) -> str:
        value = row[place]
        if value is None:
            return ""
        return f"{value:.10g}" if isinstance(value, int | float) else str(value)

    return text


def _column(heading: str, name: str, is_number: bool = False) -> Column:
    say = _cell(name)
    return Column(plain(heading), lambda r, _: say(r), lambda r: natural(say(r)), is_number)


COST_COLUMNS = (
    Column(plain("Section"), lambda r, _: str(r[0]), lambda r: _ORDER.index(str(r[0]))),
    _column("What", "name"),
    _column("How much", "quantity", is_number=True),
    _column("Unit", "unit"),
    _column("Rate", "rate", is_number=True),
    _column("Amount", "amount", is_number=True),
    _column("Currency", "currency"),
    _column("Note", "note"),
)

PRICE_ENTRIES = (
    Entry("name", plain("What"), "A charge of your own begins in the last row"),
    Entry("unit", plain("Unit"), is_fixed=True),
    Entry("pack", plain("Sold by"), "How many of the unit are sold together", is_number=True),
    Entry("price", plain("Price"), "Of what is sold together", is_number=True),
    Entry("minutes", plain("Minutes"), "That you take for one of the unit", is_number=True),
    Entry("value", plain("Value"), "For the whole list"),
)
