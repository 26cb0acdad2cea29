"""`checks.json`: every check with value, limit, margin, verdict, reason and source."""

from __future__ import annotations

from pathlib import Path

from model.bed import Bed
from model.exports.checks_table import rows
from model.exports.plain import json_bytes


def write(bed: Bed, path: Path) -> None:
    """Write the checks, worst first; values, limits and margins in the unit beside them."""
    path.write_bytes(json_bytes({"schema": 1, "checks": rows(bed)}))
