"""Columns of a price table, and how its keys begin that are no things to buy."""

from __future__ import annotations

from typing import Literal

Column = Literal["pack", "price", "minutes", "value"]
COLUMNS = ("key", "name", "unit", "pack", "price", "minutes", "value")

WORK, EXTRA, WHOLE = "work/", "extra/", "general/"
