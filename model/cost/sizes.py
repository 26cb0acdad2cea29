"""Sizes as they are asked for at a counter."""

from __future__ import annotations

from model.units import Mm, show_length


def sold_size(size: Mm, unit: str) -> str:
    """A length in the maker's unit, or in mm where it is sold in whole mm and no fraction hits."""
    shown = show_length(size, unit)
    return f"{size:.4g} mm" if shown.startswith("~") else shown
