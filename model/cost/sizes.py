"""Sizes as they are asked for at a counter."""

from __future__ import annotations

from model.units import Mm, show_length, tape_grid


def sold_size(size: Mm, unit: str) -> str:
    """A length in the maker's unit, or in mm where it is sold in whole mm and no fraction hits."""
    shown = show_length(size, unit)
    return f"{size:.4g} mm" if shown.startswith("~") else shown


def sold_sides(length: Mm, width: Mm, unit: str) -> str:
    """The sides of a sheet or board; one that is sold by whole mm is told in inches as well, as
    near as drawings show it, so that both tell one figure.
    """
    told = f"{sold_size(length, unit)} x {sold_size(width, unit)}"
    if unit == "inch" and "mm" in told:
        sides = " x ".join(show_length(side, unit).removeprefix("~") for side in (length, width))
        return f"{sides} ({length:.4g} mm x {width:.4g} mm)"
    return told


def at_least(size: Mm, unit: str) -> str:
    """A length that is asked for, on the next sixteenth of an inch, or mm, up."""
    return show_length(tape_grid(unit).up(size), unit)


def at_most(size: Mm, unit: str) -> str:
    """A length that is there, on the next sixteenth of an inch, or mm, down."""
    return show_length(tape_grid(unit).down(size), unit)
