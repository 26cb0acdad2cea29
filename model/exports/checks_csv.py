"""`checks.csv`: the checks as a table for a spreadsheet."""

from __future__ import annotations

from pathlib import Path

from model.bed import Bed
from model.exports.checks_table import COLUMNS, rows
from model.exports.csv_text import csv_bytes


def write(bed: Bed, path: Path) -> None:
    """Write one line for each check, worst first."""
    path.write_bytes(csv_bytes(COLUMNS, [tuple(row.values()) for row in rows(bed)]))
