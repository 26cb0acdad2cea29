"""How lumber is measured for the bill: board feet at the nominal thickness, or cubic metres."""

from __future__ import annotations

from model.cutting.racks import board_feet
from model.stock.prices import BoardMeasure
from model.units import Mm

_CUBIC_METRE = 1e9  # mm3


def measure(thickness: Mm, length: Mm, width: Mm, by: BoardMeasure) -> float:
    """What a board is billed by; by the board foot, less than an inch thick counts as one."""
    if by == "board foot":
        return board_feet(length * width, thickness)
    return thickness * length * width / _CUBIC_METRE


def unit_of(by: BoardMeasure) -> str:
    """The unit as a list says it."""
    return "board foot" if by == "board foot" else "m3"
