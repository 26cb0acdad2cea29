"""`parts.csv`: the parts list as a table for a spreadsheet."""

from __future__ import annotations

from pathlib import Path

from model.bed import Bed
from model.exports.csv_text import csv_bytes
from model.exports.parts_table import COLUMNS, SHOWN_COLUMNS, table


def write(bed: Bed, path: Path) -> None:
    """Write one line for each mark; sizes in mm, then in the unit that the maker reads."""
    path.write_bytes(csv_bytes((*COLUMNS, *SHOWN_COLUMNS), table(bed)))
