"""How a choice and its value are called, wherever they are shown or told."""

from __future__ import annotations

import re
from typing import Any

from model.brief.declare import Choice
from model.units import INCH, ShopGrid, show_length

YES_NO = {True: "yes", False: "no"}
# Ends of ranges are rounded inwards to these: what is shown is inside, and can be typed as it is.
ENDS = {"inch": ShopGrid(INCH / 16, "inch"), "mm": ShopGrid(0.5, "mm")}
_IN_MM = re.compile(r"(?P<low>\d+(?:\.\d+)?)(?:(?P<word> to | x )(?P<high>\d+(?:\.\d+)?))? mm\b")


def value_text(choice: Choice, value: Any, unit: str) -> str:
    """A value as the maker reads it; empty for a measured one that was left out."""
    if value is None:
        return ""
    if choice.is_flag:
        return YES_NO[bool(value)]
    if choice.keys:
        return row_name(choice, value)
    if choice.is_length:
        return show_length(value, unit)
    return f"{value:g} {choice.unit}".strip()


def row_name(choice: Choice, key: str) -> str:
    """A key as its table names it, or the key itself."""
    row = choice.table().get(key) if choice.table is not None else None
    return str(getattr(row, "name", key))


def full_label(choice: Choice) -> str:
    """A label that needs no heading above it: `Left drawers`, `Mattress width`."""
    scope = choice.name.rpartition(".")[0]
    return f"{scope.capitalize()} {choice.label.lower()}" if scope else choice.label


def in_unit(sentence: str, unit: str) -> str:
    """A sentence with its millimetres in the shown unit: `36.5 mm` is `~1 7/16"` in inches."""
    if unit == "mm":
        return sentence

    def shown(found: re.Match[str]) -> str:
        step = ENDS[unit].step
        ends = (found["low"], found["high"])
        told = (show_length(float(end), unit, step) for end in ends if end)
        return (found["word"] or "").join(told)

    return _IN_MM.sub(shown, sentence)
