"""One cell of a price table, read as people type it: decimal comma or point, a currency's sign."""

from __future__ import annotations

import re
import unicodedata
from decimal import Decimal

from model.errors import BadInput
from model.stock.given import DEAREST

_PLAIN = re.compile(r"\d+([.,]\d+)?")
_GROUPED = re.compile(r"[1-9]\d{0,2}(?P<group>[.,])\d{3}((?P=group)\d{3})*(?!(?P=group))([.,]\d+)?")
_THREE_PLACES = re.compile(r"[1-9]\d{0,2}\.\d{3}")  # would be read as thousands
_ENDLESS = 24  # figures: longer ones are no amounts


def amount(text: str, place: str, column: str, currency: str = "") -> float | None:
    """The figure of a cell, None where it is empty; refused with BadInput: what is no amount.

    `place` says where it stands: `prices.csv, line 3`. 1,234.50 and 1.234,50 are read; 1,234 alone
    is not: it could be either.
    """
    bare = _bare(text, currency)
    if not bare:
        return None
    figure = _figure(bare)
    if figure is None:
        raise BadInput(column, f"{place}: {column} is {_shown(text)}, {_why(bare)}")
    if figure > DEAREST:
        raise BadInput(column, f"{place}: {column} is {_shown(text)}, more than anything costs.")
    return figure


def figure_text(figure: float | None) -> str:
    """A figure as `amount` reads it again; nothing where there is none."""
    if figure is None:
        return ""
    text = f"{Decimal(repr(float(figure))):f}"
    text = text.rstrip("0").rstrip(".") if "." in text else text
    return f"{text}0" if _THREE_PLACES.fullmatch(text) else text


def _bare(text: str, currency: str) -> str:
    """The cell without spaces, an apostrophe before it, and the currency's name or sign."""
    bare = text.strip().removeprefix("'")
    if currency:
        bare = bare.replace(currency, "")
    kept = (c for c in bare if not c.isspace() and unicodedata.category(c) != "Sc")
    return "".join(kept)


def _figure(bare: str) -> float | None:
    if len(bare) > _ENDLESS or not bare.isascii():
        return None
    if grouped := _GROUPED.fullmatch(bare):
        last = max(bare.rfind(","), bare.rfind("."))
        if bare[last] != grouped["group"]:
            return float(f"{re.sub(r'[.,]', '', bare[:last])}.{bare[last + 1 :]}")
        return None if bare.count(grouped["group"]) == 1 else float(re.sub(r"[.,]", "", bare))
    return float(bare.replace(",", ".")) if _PLAIN.fullmatch(bare) else None


def _why(bare: str) -> str:
    if _GROUPED.fullmatch(bare):
        return f"which could be {bare[0]} and a bit or thousands: write it without the mark."
    if bare.startswith("-"):
        return "and nothing costs less than nothing: write a figure of zero or more."
    return "not an amount: write a figure such as 12.50, or leave the cell empty."


def _shown(text: str) -> str:
    """What was typed, short and printable enough for a sentence."""
    plain = "".join(c if c.isprintable() else "?" for c in text.strip()[:40])
    return f"“{plain}{'…' if len(text.strip()) > 40 else ''}”"
