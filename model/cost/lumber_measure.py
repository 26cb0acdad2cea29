"""How lumber is measured for the bill: board feet at the nominal thickness, or cubic metres."""

from __future__ import annotations

from model.stock.prices import BoardMeasure
from model.units import INCH, Mm

_BOARD_FOOT = 144 * INCH**3  # mm3
_CUBIC_METRE = 1e9  # mm3


def board_feet(thickness: Mm, length: Mm, width: Mm) -> float:
    """Board feet of a rough board: 144 cubic inches each; less than an inch thick counts as one.

    Source: grading rules of the hardwood lumber association, from memory
    """
    return max(thickness, INCH) * length * width / _BOARD_FOOT


def measure(thickness: Mm, length: Mm, width: Mm, by: BoardMeasure) -> float:
    """What a board is billed by."""
    if by == "board foot":
        return board_feet(thickness, length, width)
    return thickness * length * width / _CUBIC_METRE


def unit_of(by: BoardMeasure) -> str:
    """The unit as a list says it."""
    return "board foot" if by == "board foot" else "m3"
