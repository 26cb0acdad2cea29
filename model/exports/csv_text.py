"""Tables as CSV: commas, double quotes, UTF-8, one way for every table of the package."""

from __future__ import annotations

import csv
import io
from collections.abc import Iterable, Sequence

from model.exports.plain import harmless

Cell = str | float | int | None


def csv_bytes(columns: Sequence[str], rows: Iterable[Sequence[Cell]]) -> bytes:
    """A heading line and a line for each row; figures with a point, texts made harmless."""
    file = io.StringIO(newline="")
    lines = csv.writer(file, lineterminator="\n")
    lines.writerow([harmless(column) for column in columns])
    lines.writerows([_cell(cell) for cell in row] for row in rows)
    return file.getvalue().encode("utf-8")


def _cell(cell: Cell) -> str | float | int:
    if cell is None:
        return ""
    return harmless(cell) if isinstance(cell, str) else cell
