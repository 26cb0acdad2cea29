"""Tables of stock: typed in a window, or pasted from a spreadsheet under a line of headings."""

from __future__ import annotations

import csv
import io
import re
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from model.errors import BadInput
from model.materials import Material
from model.stock.cells import BadCell, Row, shown_bad, shown_thickness
from model.stock.rows import Board, SheetSize, SoldSize
from model.stock.stock_record import LONGEST, NARROWEST, SHORTEST, THICKEST, WIDEST
from model.units import show_bare

Known = Mapping[str, Material]
Cells = tuple[str, ...]

MOST_ROWS = 500
_HEADINGS: Mapping[str, tuple[str, ...]] = {
    "name": ("name", "board", "mark", "label"),
    "material": ("material", "wood", "species", "sheet"),
    "thickness": ("thickness", "class", "thick"),
    "length": ("length", "long"),
    "width": ("width", "wide"),
    "quantity": ("quantity", "count", "pieces", "how many", "qty"),
    "bad": ("bad", "bad spans", "knots", "defects"),
    "price": ("price", "cost", "price each"),
    "planed": ("planed", "dressed", "surfaced"),
    "on_hand": ("on hand", "on_hand", "offcut", "mine"),
}
_LENGTHS = ("thickness", "length", "width", "bad")
_UNITS = {"mm": "mm", "cm": "cm", "in": "inch", "inch": "inch", "inches": "inch", '"': "inch"}


@dataclass(frozen=True)
class Table:
    """One kind of stock as a table: its columns, how a row is read, and how it is shown."""

    key: str
    columns: tuple[str, ...]
    needed: tuple[str, ...]
    read: Callable[[Row, Known], Any]
    show: Callable[[Any, str, Known], Cells]


# ---------------------------------------------------------------- the three tables


def _board(row: Row, known: Known) -> Board:
    length, width = row.length("length", SHORTEST, LONGEST), row.length("width", NARROWEST, WIDEST)
    return Board(
        name=row.text("name"),
        material=row.material("material", known, "solid"),
        thickness=row.thickness("thickness", THICKEST),
        length=length,
        width=width,
        quantity=row.quantity("quantity") or 1,
        bad=row.bad("bad", length, width),
        price=row.price("price"),
        planed=row.flag("planed"),
    )


def _sold(row: Row, known: Known) -> SoldSize:
    return SoldSize(
        material=row.material("material", known, "solid"),
        thickness=row.thickness("thickness", THICKEST),
        length=row.length("length", SHORTEST, LONGEST),
        width=row.length("width", NARROWEST, WIDEST),
        planed=row.flag("planed"),
        price=row.price("price"),
    )


def _sheet(row: Row, known: Known) -> SheetSize:
    return SheetSize(
        material=row.material("material", known, "sheet"),
        length=row.length("length", SHORTEST, LONGEST),
        width=row.length("width", NARROWEST, WIDEST),
        quantity=row.quantity("quantity"),
        on_hand=row.flag("on_hand"),
        price=row.price("price"),
    )


def _shown_board(row: Board, unit: str, known: Known) -> Cells:
    return (
        row.name,
        _name(row.material, known),
        shown_thickness(row.thickness, not row.planed, unit),
        show_bare(row.length, unit),
        show_bare(row.width, unit),
        str(row.quantity),
        shown_bad(row.bad, row.width, unit),
        _money(row.price),
        "yes" if row.planed else "",
    )


def _shown_sold(row: SoldSize, unit: str, known: Known) -> Cells:
    return (
        _name(row.material, known),
        shown_thickness(row.thickness, not row.planed, unit),
        show_bare(row.length, unit),
        show_bare(row.width, unit),
        "yes" if row.planed else "",
        _money(row.price),
    )


def _shown_sheet(row: SheetSize, unit: str, known: Known) -> Cells:
    return (
        _name(row.material, known),
        show_bare(row.length, unit),
        show_bare(row.width, unit),
        "" if row.quantity is None else str(row.quantity),
        "yes" if row.on_hand else "",
        _money(row.price),
    )


def _name(key: str, known: Known) -> str:
    return known[key].name if key in known else key


def _money(price: float | None) -> str:
    return "" if price is None else f"{price:.4f}".rstrip("0").rstrip(".")


_SIZE = ("length", "width")
BOARDS = Table(
    "boards",
    ("name", "material", "thickness", *_SIZE, "quantity", "bad", "price", "planed"),
    ("material", "thickness", *_SIZE),
    _board,
    _shown_board,
)
SOLD = Table(
    "sold",
    ("material", "thickness", *_SIZE, "planed", "price"),
    ("material", "thickness", *_SIZE),
    _sold,
    _shown_sold,
)
SHEETS = Table(
    "sheets",
    ("material", *_SIZE, "quantity", "on_hand", "price"),
    ("material", *_SIZE),
    _sheet,
    _shown_sheet,
)
TABLES = (BOARDS, SOLD, SHEETS)


# ---------------------------------------------------------------- rows of texts


def rows_of_cells(
    table: Table, rows: Sequence[Cells], unit: str, known: Known, last: Sequence[Any] = ()
) -> tuple[Any, ...]:
    """What rows of texts say, in the order of the table's columns; bare lengths are in `unit`.

    A row that reads as one of the `last` rows is shown is that row: a size that its text can only
    say roughly stays what it was. Refused with BadCell, which tells row and column.
    """
    units = dict.fromkeys(_LENGTHS, unit)
    kept = {table.show(row, unit, known): row for row in last}
    if len(rows) > MOST_ROWS:
        raise _too_many(table.key, len(rows))
    found = []
    for number, cells in enumerate(rows):
        given = dict(zip(table.columns, cells, strict=False))
        known_row = kept.get(tuple(cells))
        found.append(known_row or table.read(Row(given, number, table.key, units), known))
    return tuple(found)


def _too_many(name: str, rows: int) -> BadInput:
    return BadInput(name, f"{name} holds {rows} rows; {MOST_ROWS} are the most.")


def cells_of_rows(table: Table, rows: Sequence[Any], unit: str, known: Known) -> tuple[Cells, ...]:
    """Rows as they are typed, lengths bare in `unit`."""
    return tuple(table.show(row, unit, known) for row in rows)


# ---------------------------------------------------------------- pasted tables


def rows_of_text(
    table: Table, text: str, unit: str, known: Known, name: str = ""
) -> tuple[Any, ...]:
    """The rows of a pasted table: tabs, semicolons or commas between cells, headings first.

    A heading may say its unit: `length (in)`. Columns that are not known are refused, so that
    nothing is lost unseen. `name` is what sentences call the table.
    """
    called = name or table.key
    lines = [line for line in _lines(text) if any(cell.strip() for cell in line)]
    if not lines:
        raise BadInput(called, f"{called}: nothing was pasted.")
    columns, units = _columns(table, lines[0], unit, called)
    rows = []
    for number, line in enumerate(lines[1:]):
        if len(line) > len(columns) and any(cell.strip() for cell in line[len(columns) :]):
            raise BadCell(
                called, f"{called}, row {number + 1}: it has more cells than headings.", number, ""
            )
        rows.append(dict(zip(columns, line, strict=False)))
    if not rows:
        raise BadInput(called, f"{called} holds no rows under its headings.")
    if len(rows) > MOST_ROWS:
        raise _too_many(called, len(rows))
    return tuple(table.read(Row(row, n, called, units), known) for n, row in enumerate(rows))


def _lines(text: str) -> list[list[str]]:
    plain = text.removeprefix("\ufeff")
    first = plain.partition("\n")[0]
    between = next((each for each in "\t;" if each in first), ",")
    return list(csv.reader(io.StringIO(plain), delimiter=between))


def _columns(
    table: Table, headings: Sequence[str], unit: str, name: str
) -> tuple[list[str], dict[str, str]]:
    """The column of each heading, and the unit of each column of lengths."""
    columns, units = [], dict.fromkeys(_LENGTHS, unit)
    for heading in headings:
        column, own = _column(table, heading, name)
        if column in columns:
            raise BadInput(name, f"{name}: the heading {column} stands twice.")
        columns.append(column)
        if own:
            units[column] = own
    if missing := [column for column in table.needed if column not in columns]:
        raise BadInput(
            name,
            f"{name} lacks the heading {missing[0]}. Headings: {', '.join(table.columns)}.",
        )
    return columns, units


def _column(table: Table, heading: str, name: str) -> tuple[str, str]:
    told = re.fullmatch(r"\s*(.*?)\s*(?:[(\[,]\s*(\S+?)\s*[)\]]?)?\s*", heading.casefold())
    word, unit = (told[1], told[2] or "") if told else (heading, "")
    for column in table.columns:
        if word in _HEADINGS[column] or word == column:
            return column, _UNITS.get(unit, "")
    raise BadInput(
        name,
        f"{name}: there is no column “{heading.strip()[:60]}”. Headings: "
        f"{', '.join(table.columns)}.",
    )
