"""`parts.xlsx`: parts, hardware and shop aids as the sheets of a workbook."""

from __future__ import annotations

import io
from collections.abc import Iterable, Sequence
from datetime import datetime
from pathlib import Path
from typing import Any

from model.bed import Bed
from model.exports.hardware_table import HARDWARE_COLUMNS, SHOP_AID_COLUMNS, hardware, shop_aids
from model.exports.parts_table import COLUMNS, SHOWN_COLUMNS, table
from model.exports.plain import harmless

_MADE = datetime(2000, 1, 1)  # one day for all: the same design gives the same bytes
_WIDEST = 40  # characters: a longer text runs on into the next column


def write(bed: Bed, path: Path) -> None:
    """Write the workbook; figures are numbers in mm, texts are texts and never formulas."""
    path.write_bytes(_workbook(bed))


def _workbook(bed: Bed) -> bytes:
    import xlsxwriter

    content = io.BytesIO()
    book = xlsxwriter.Workbook(content, {"in_memory": True})
    book.set_properties({"title": harmless(bed.design.name), "created": _MADE})
    head = book.add_format({"bold": True, "bottom": 1})
    tables: Iterable[tuple[str, Sequence[str], Iterable[Sequence[Any]]]] = (
        ("Parts", (*COLUMNS, *SHOWN_COLUMNS), table(bed)),
        ("Hardware", HARDWARE_COLUMNS, [tuple(each.values()) for each in hardware(bed)]),
        ("Shop aids", SHOP_AID_COLUMNS, [tuple(each.values()) for each in shop_aids(bed)]),
    )
    for title, columns, rows in tables:
        _fill(book.add_worksheet(title), columns, rows, head)
    book.close()
    return content.getvalue()


def _fill(page: Any, columns: Sequence[str], rows: Iterable[Sequence[Any]], head: Any) -> None:
    widths = [len(column) for column in columns]
    for at, column in enumerate(columns):
        page.write_string(0, at, column, head)
    for line, row in enumerate(rows, start=1):
        for at, cell in enumerate(row):
            _write_cell(page, line, at, cell)
            widths[at] = max(widths[at], len(str(cell)))
    for at, width in enumerate(widths):
        page.set_column(at, at, min(width, _WIDEST) + 2)
    page.freeze_panes(1, 1)


def _write_cell(page: Any, line: int, at: int, cell: Any) -> None:
    if isinstance(cell, str):
        page.write_string(line, at, harmless(cell))
    elif cell is not None:
        page.write_number(line, at, cell)
