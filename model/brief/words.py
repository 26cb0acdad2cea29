"""How a choice and its value are called, wherever they are shown or told."""

from __future__ import annotations

from typing import Any

from model.brief.declare import Choice
from model.units import show_length

YES_NO = {True: "yes", False: "no"}


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
