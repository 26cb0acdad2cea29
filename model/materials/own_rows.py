"""Reading the maker's own rows from a table and from a design file, and writing them again."""

from __future__ import annotations

import csv
import io
import re
from collections.abc import Iterable, Mapping
from dataclasses import fields
from typing import Any

from model.errors import BadInput
from model.materials.own import OwnRows
from model.materials.own_sheet import sheet_of_cells
from model.materials.own_wood import wood_of_cells
from model.materials.sheet import Sheet, sheets
from model.materials.species import Species, species

_SHEET_ONLY = "nominal_mm"  # the column that a table of sheets has and one of woods has not
_MOST_ROWS = 200
_TAB = "\t"


def rows_of_table(text: str, name: str) -> OwnRows:
    """The rows of a CSV text, or of cells copied from a spreadsheet, under a line of headings.

    The columns are those of `species.csv` or `sheets.csv`; see `wood_of_cells` and
    `sheet_of_cells` for those that may be left out. `name` is what sentences call the table.
    Refused with BadInput: what these refuse, no rows, a key that stands twice.
    """
    plain = text.removeprefix("\ufeff")
    first = plain.partition("\n")[0]
    between = _TAB if _TAB in first else ";" if ";" in first and "," not in first else ","
    reader = csv.DictReader(io.StringIO(plain), delimiter=between)
    headings = [heading.strip() for heading in reader.fieldnames or ()]
    rows = []
    for cells in reader:
        place = f"{name}, line {reader.line_num}"
        if None in cells or None in cells.values():
            raise BadInput(name, f"{place}: the row and the headings differ in length.")
        texts = [_with_point(cell) if between != "," else cell for cell in cells.values()]
        if any(cell.strip() for cell in texts):
            rows.append((dict(zip(headings, texts, strict=True)), place))
    if not rows:
        raise BadInput(name, f"{name} holds no rows under its headings.")
    if _SHEET_ONLY in headings:
        return _sound(OwnRows(sheets=tuple(sheet_of_cells(*each) for each in rows)), name)
    return _sound(OwnRows(species=tuple(wood_of_cells(*each) for each in rows)), name)


def _with_point(cell: str) -> str:
    """Where commas do not part cells they may be decimal marks."""
    return cell.replace(",", ".") if re.fullmatch(r"\s*\d+,\d+\s*", cell) else cell


def rows_of_record(record: Any, name: str) -> OwnRows:
    """The rows in a design file: `{"species": [{column: value}], "sheets": [...]}`.

    Refused with BadInput: what is no such record, and what a table refuses.
    """
    kinds = ("species", "sheets")
    if not isinstance(record, dict) or not set(record) <= set(kinds):
        raise BadInput(name, f"{name} must hold species and sheets in braces {{}}.")
    listed = {kind: _cells_of(record.get(kind, []), f"{name} {kind}") for kind in kinds}
    return _sound(
        OwnRows(
            species=tuple(wood_of_cells(*each) for each in listed["species"]),
            sheets=tuple(sheet_of_cells(*each) for each in listed["sheets"]),
        ),
        name,
    )


def record_of_rows(own: OwnRows) -> dict[str, list[dict[str, Any]]]:
    """The rows as a design file holds them: every figure that is given, with its source."""
    woods, flat = [_record(row) for row in own.species], [_record(row) for row in own.sheets]
    return {kind: rows for kind, rows in (("species", woods), ("sheets", flat)) if rows}


def _record(row: Species | Sheet) -> dict[str, Any]:
    values = {field.name: getattr(row, field.name) for field in fields(row)}
    told = {
        name: ";".join(value) if isinstance(value, tuple) else value
        for name, value in values.items()
    }
    return {name: value for name, value in told.items() if value not in (None, "")}


def _cells_of(listed: Any, name: str) -> list[tuple[Mapping[str, str], str]]:
    if not isinstance(listed, list):
        raise BadInput(name, f"{name} must be a list of rows in brackets [].")
    found: list[tuple[Mapping[str, str], str]] = []
    for number, row in enumerate(listed, 1):
        place = f"{name}, row {number}"
        if not isinstance(row, dict):
            raise BadInput(name, f"{place} must be columns and values in braces {{}}.")
        for column, value in row.items():
            if isinstance(value, bool) or not isinstance(value, str | int | float | None):
                raise BadInput(name, f"{place}: {column} must be a number or a text.")
        found.append(({c: "" if v is None else str(v) for c, v in row.items()}, place))
    return found


def _sound(own: OwnRows, name: str) -> OwnRows:
    """Refuse what reads well row by row and is wrong together."""
    keys = own.keys
    if len(keys) > _MOST_ROWS:
        raise BadInput(name, f"{name} holds {len(keys)} rows; {_MOST_ROWS} are the most.")
    if twice := _twice(keys):
        raise BadInput(name, f"{name}: “{twice}” stands twice.")
    mixed = [row.key for row in own.species if row.key in sheets()]
    mixed += [row.key for row in own.sheets if row.key in species()]
    if mixed:
        raise BadInput(name, f"{name}: the key “{mixed[0]}” is taken by another kind of material.")
    return own


def _twice(keys: Iterable[str]) -> str:
    seen: set[str] = set()
    for key in keys:
        if key in seen:
            return key
        seen.add(key)
    return ""
