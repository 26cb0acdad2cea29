"""Sizes as they are asked for at a counter."""

from __future__ import annotations

from model.units import GRIDS, Mm, show_length

_COARSE = {"inch": "1/16 in", "mm": "1 mm"}  # no yard reads a tape closer


def sold_size(size: Mm, unit: str) -> str:
    """A length in the maker's unit, or in mm where it is sold in whole mm and no fraction hits."""
    shown = show_length(size, unit)
    return f"{size:.4g} mm" if shown.startswith("~") else shown


def at_least(size: Mm, unit: str) -> str:
    """A length that is asked for, on the next sixteenth of an inch, or mm, up."""
    return show_length(GRIDS[_COARSE[unit]].up(size), unit)


def at_most(size: Mm, unit: str) -> str:
    """A length that is there, on the next sixteenth of an inch, or mm, down."""
    return show_length(GRIDS[_COARSE[unit]].down(size), unit)
