"""The quote: what the client is asked. It shows no rate, no hour and no margin of the shop."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal

from model.cost.cost_sheet import CostSheet
from model.cost.costing import Costing
from model.cost.money import Money, added, exact, rounded
from model.stock.prices import Prices
from model.units import Share


@dataclass(frozen=True, kw_only=True)
class QuoteLine:
    """What the client pays for; None is not priced yet."""

    name: str
    amount: Money | None


@dataclass(frozen=True, kw_only=True)
class Quote:
    """What the client is asked: `net` is the sum of the lines, `tax` comes on top.

    A quote with anything `missing` is a draft: its sums are not what the bed will cost.
    """

    currency: str
    lines: tuple[QuoteLine, ...]
    net: Money
    tax_share: Share
    tax: Money
    total: Money
    valid_days: int
    terms: str
    missing: tuple[str, ...]
    is_example: bool

    @property
    def is_draft(self) -> bool:
        """Whether something is not priced or not timed yet."""
        return bool(self.missing)


def quote(sheet: CostSheet, costing: Costing) -> Quote:
    """Every group of the cost with overhead and margin inside, rounded once, and tax on the sum.

    A line is its cost x (1 + overhead) / (1 - margin): the margin, below 1, is a share of what is
    asked.
    """
    prices = costing.prices
    factor = _factor(prices)
    lines = tuple(
        QuoteLine(
            name=name,
            amount=None if cost is None else rounded(cost * factor, prices.decimals),
        )
        for name, cost in _costs(sheet)
    )
    net = added((line.amount for line in lines), prices.decimals)
    tax = rounded(net * exact(prices.tax), prices.decimals)
    return Quote(
        currency=prices.currency,
        lines=lines,
        net=net,
        tax_share=prices.tax,
        tax=tax,
        total=net + tax,
        valid_days=prices.valid_days,
        terms=prices.terms,
        missing=sheet.missing,
        is_example=prices.is_example,
    )


def _factor(prices: Prices) -> Decimal:
    return (1 + exact(prices.overhead)) / (1 - exact(prices.margin))


def _costs(sheet: CostSheet) -> Iterator[tuple[str, Money | None]]:
    """Lines that a client understands; what costs nothing is left out."""
    for name, cost in (
        ("Wood and sheet goods", sheet.materials),
        ("Fittings and screws", sheet.hardware),
        ("Finish, glue and abrasives", sheet.consumables),
        ("Making and finishing the bed", sheet.labour),
    ):
        if cost:
            yield name, cost
    for extra in sheet.extras:
        yield extra.name, extra.amount
