"""The numbers on a section and what they measure."""

from __future__ import annotations

from typing import NamedTuple

from app.tables.cells import natural, plain
from app.tables.rows import Column
from model.units import show_length


class GapRow(NamedTuple):
    """One number: the dimension that it shows, its value in mm, and why it is so."""

    number: int
    name: str
    words: str
    value: float
    reason: str


GAP_COLUMNS = (
    Column(plain("No."), lambda g, _: f"{g.number}", lambda g: g.number, True),
    Column(
        plain("Measure"), lambda g, _: g.words, lambda g: natural(g.words),
        about=lambda g: g.name, tip=lambda g, _: g.reason,
    ),
    Column(
        plain("Size"), lambda g, unit: show_length(g.value, unit), lambda g: g.value, True,
        about=lambda g: g.name, tip=lambda g, _: f"{g.reason} Click to see why it is this size.",
    ),
)  # fmt: skip
