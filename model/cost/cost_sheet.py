"""The cost sheet: what the bed costs its maker. It is for the shop and not for the client."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal

from model.cost.buy import CONSUMABLES, HARDWARE, MATERIALS
from model.cost.costing import Costing
from model.cost.hours import hours
from model.cost.money import Money, added, exact, rounded
from model.units import Count


@dataclass(frozen=True, kw_only=True)
class Extra:
    """What the maker charges beyond the bed; None is not priced."""

    name: str
    amount: Money | None


@dataclass(frozen=True, kw_only=True)
class CostSheet:
    """Sums in the maker's currency, of what is known. `missing` says in sentences what is not: an
    incomplete total is no total.

    `offcuts` is what the offcuts that are left are worth; it is taken off nothing.
    """

    currency: str
    materials: Money
    hardware: Money
    consumables: Money
    extras: tuple[Extra, ...]
    hours: Decimal
    labour: Money
    overhead: Money
    total: Money
    offcuts: Money
    missing: tuple[str, ...]
    is_example: bool

    @property
    def is_complete(self) -> bool:
        """Whether nothing is missing."""
        return not self.missing

    @property
    def direct(self) -> Money:
        """All before overhead."""
        return self.total - self.overhead


def cost_sheet(costing: Costing) -> CostSheet:
    """What is known of the cost, group by group, with the overhead on all of it."""
    prices = costing.prices
    groups = [costing.bought(each) for each in (MATERIALS, HARDWARE, CONSUMABLES)]
    extras = tuple(
        Extra(
            name=row.name,
            amount=None if row.price is None else rounded(exact(row.price), prices.decimals),
        )
        for row in prices.extras
    )
    labour = added((each.cost for each in costing.work), prices.decimals)
    direct = added([*groups, labour, *(each.amount for each in extras)])
    overhead = rounded(direct * exact(prices.overhead), prices.decimals)
    return CostSheet(
        currency=prices.currency,
        materials=groups[0],
        hardware=groups[1],
        consumables=groups[2],
        extras=extras,
        hours=hours(costing.work),
        labour=labour,
        overhead=overhead,
        total=direct + overhead,
        offcuts=added((each.value for each in costing.offcuts), prices.decimals),
        missing=tuple(_missing(costing)),
        is_example=prices.is_example,
    )


def _missing(costing: Costing) -> Iterator[str]:
    if gone := len(costing.not_priced):
        yield f"{gone} of {len(costing.buys)} lines of the buying list {_are(gone)} not priced."
    if gone := len(costing.not_timed):
        yield f"{gone} of {len(costing.work)} kinds of work {_are(gone)} not timed."
    if costing.work and costing.prices.hour is None:
        yield "What an hour of the shop costs is not told."
    if gone := sum(each.price is None for each in costing.prices.extras):
        yield f"{gone} of the charges beyond the bed {_are(gone)} not priced."
    if gone := costing.without_stock:
        pieces = "piece has" if gone == 1 else "pieces have"
        yield f"{gone} {pieces} nothing to be cut from: see the cutting plans."


def _are(count: Count) -> str:
    return "is" if count == 1 else "are"
