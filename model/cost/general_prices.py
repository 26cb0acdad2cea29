"""What holds for a whole price list: currency, what an hour costs, overhead, margin, tax."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from types import MappingProxyType
from typing import Any, Literal, get_args

from model.cost.price_cells import amount, figure_text
from model.errors import BadInput
from model.stock.price_record import LONGEST, MOST
from model.stock.prices import NO_PRICES, BoardMeasure, Prices


@dataclass(frozen=True, kw_only=True)
class General:
    """One value of the whole list: what it is, and what kind of cell it takes."""

    name: str
    unit: str
    kind: Literal["text", "word", "whole", "amount", "percent", "yes or no"]


GENERAL: Mapping[str, General] = MappingProxyType(
    {
        "currency": General(name="Currency, as you write it", unit="", kind="text"),
        "decimals": General(name="Places behind the point", unit="", kind="whole"),
        "board_measure": General(name="Lumber is billed by", unit="", kind="word"),
        "hour": General(name="What an hour of the shop costs", unit="an hour", kind="amount"),
        "overhead": General(name="Overhead, on the cost", unit="percent", kind="percent"),
        "margin": General(name="Margin, of the quote", unit="percent", kind="percent"),
        "tax": General(name="Tax, on the quote", unit="percent", kind="percent"),
        "offcut_share": General(
            name="What an offcut is worth, of its price", unit="percent", kind="percent"
        ),
        "valid_days": General(name="A quote stands for", unit="days", kind="whole"),
        "terms": General(name="Your words below a quote", unit="", kind="text"),
        "is_example": General(name="Prices are examples", unit="yes or no", kind="yes or no"),
    }
)


def general_text(name: str, prices: Prices) -> str:
    """A value as its cell shows it."""
    value, kind = getattr(prices, name), GENERAL[name].kind
    if kind == "percent":
        return figure_text(round(value * 100, 8))
    if kind == "yes or no":
        return "yes" if value else "no"
    return figure_text(value) if kind in ("amount", "whole") else str(value)


def with_general(prices: Prices, name: str, text: str, place: str) -> Prices:
    """The list with one value changed; an empty cell is the usual value. Refused with BadInput."""
    changed: dict[str, Any] = {name: _value(name, text.strip(), place, prices.currency)}
    return replace(prices, **changed)


def _value(name: str, text: str, place: str, currency: str) -> Any:
    row = GENERAL[name]
    if row.kind == "text":
        return _words(name, text, place)
    if not text:
        return getattr(NO_PRICES, name)
    if row.kind == "word":
        return _word(text, place)
    if row.kind == "yes or no":
        return _yes(text, place)
    figure = amount(text.removesuffix("%"), place, name, currency)
    if row.kind == "amount":
        return figure
    if figure is None:  # a sign of the currency and nothing else
        return getattr(NO_PRICES, name)
    return _within(figure, name, row, place)


def _within(figure: float, name: str, row: General, place: str) -> float | int:
    most = MOST[name] if row.kind == "whole" else MOST[name] * 100
    if figure > most or (row.kind == "whole" and figure != int(figure)):
        what = "a whole number" if row.kind == "whole" else "a percentage"
        raise BadInput(name, f"{place}: {name} is {figure:g}; it takes {what} up to {most:g}.")
    return int(figure) if row.kind == "whole" else figure / 100


def _words(name: str, text: str, place: str) -> str:
    if len(text) > LONGEST[name]:
        raise BadInput(name, f"{place}: {name} is longer than {LONGEST[name]} characters.")
    if not all(each.isprintable() or each == "\n" for each in text):
        raise BadInput(name, f"{place}: {name} holds characters that cannot be printed.")
    return text


def _word(text: str, place: str) -> str:
    words = get_args(BoardMeasure)
    if text not in words:
        raise BadInput(
            "board_measure", f"{place}: board_measure is “{text}”, not {' or '.join(words)}."
        )
    return text


def _yes(text: str, place: str) -> bool:
    if text.lower() not in ("yes", "no"):
        raise BadInput("is_example", f"{place}: is_example is “{text}”, not yes or no.")
    return text.lower() == "yes"
