"""Figures and texts as files hold them: figures that JSON has, texts that no table would run."""

from __future__ import annotations

import json
import math
from collections.abc import Iterable
from typing import Any

Number = float | int | None

_SNAP = 6  # decimals of a mm: 1 nm, as everywhere in the model

# A spreadsheet takes a cell that begins with one of these for a formula; some take the wide forms
# for the same, and drop what stands before the first character that shows.
_FORMULA_SIGNS = ("=", "+", "-", "@", "\uff1d", "\uff0b", "\uff0d", "\uff20")


def harmless(text: str) -> str:
    """A text that a spreadsheet shows and never runs: an apostrophe goes before what could run.

    Characters that do not show become spaces: a tab or an end of line would begin a new cell.
    """
    shown = "".join(each if each.isprintable() else " " for each in text)
    return f"'{shown}" if shown.lstrip().startswith(_FORMULA_SIGNS) else shown


def number(value: float) -> Number:
    """A figure snapped to six decimals, whole where it is whole; None for what is no number."""
    if not math.isfinite(value):
        return None
    snapped = round(float(value), _SNAP)
    return int(snapped) if snapped == int(snapped) else snapped


def numbers(values: Iterable[float]) -> list[Number]:
    """Figures in a row, each as `number` gives it."""
    return [number(value) for value in values]


def json_bytes(content: Any) -> bytes:
    """JSON that every reader takes: UTF-8, keys in the order given, a row of figures a line."""
    return (_text(content, "\n") + "\n").encode("utf-8")


def _text(content: Any, end: str) -> str:
    inner = end + "  "
    if isinstance(content, dict) and content:
        lines = [f"{_scalar(str(key))}: {_text(each, inner)}" for key, each in content.items()]
        return "{" + inner + ("," + inner).join(lines) + end + "}"
    if isinstance(content, list | tuple) and content:
        if not any(isinstance(each, dict | list | tuple) for each in content):
            return "[" + ", ".join(_scalar(each) for each in content) + "]"
        return "[" + inner + ("," + inner).join(_text(each, inner) for each in content) + end + "]"
    return _scalar(content)


def _scalar(content: Any) -> str:
    return json.dumps(content, ensure_ascii=False, allow_nan=False)
