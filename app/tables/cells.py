"""What cells of several tables have in common: unit in the heading, natural order, quantities."""

from __future__ import annotations

import math
import re
from collections.abc import Callable
from typing import Any

from model.units import show_bare, show_length

UNIT_SIGN = {"mm": "mm", "inch": "in"}


def plain(heading: str) -> Callable[[str], str]:
    """A heading that does not depend on the shown unit."""
    return lambda _: heading


def sized(heading: str) -> Callable[[str], str]:
    """A heading that names the shown unit, so that the cells need not."""
    return lambda unit: f"{heading}, {UNIT_SIGN[unit]}"


def natural(text: str) -> tuple[tuple[int, int | str], ...]:
    """A2 comes before A10."""
    split = re.split(r"(\d+)", text.casefold())
    return tuple((0, int(each)) if each.isdigit() else (1, each) for each in split if each)


def size_text(size: Any, unit: str) -> str:
    """A size without its unit sign."""
    return show_bare(float(size), unit)


def quantity_text(number: float, unit_of: str, unit: str) -> str:
    """A checked quantity: lengths in the shown unit, others as they are; "" where endless."""
    if not math.isfinite(number):
        return ""
    if unit_of == "mm":
        return show_length(number, unit)
    figure = f"{number:.3g}" if abs(number) < 1000 else f"{number:.0f}"
    return f"{figure} {unit_of}".strip()
