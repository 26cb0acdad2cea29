"""Hours: what each kind of work takes at the maker's own rates."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from decimal import Decimal

from model.cost.money import Money, exact, rounded
from model.cost.work import Work, rate_of
from model.stock.prices import Prices


@dataclass(frozen=True, kw_only=True)
class Timed:
    """A kind of work with its time. `rate` is minutes for one unit, None where the maker has none;
    `cost` is None as long as rate or hour is not known.
    """

    work: Work
    rate: float | None
    cost: Money | None

    @property
    def minutes(self) -> Decimal | None:
        """All of it, None where there is no rate."""
        return None if self.rate is None else exact(self.rate) * exact(self.work.quantity)


def timed(work: Iterable[Work], prices: Prices) -> tuple[Timed, ...]:
    """Each kind of work at the maker's rate, and what that costs at what an hour costs."""
    return tuple(_timed(each, prices) for each in work)


def _timed(work: Work, prices: Prices) -> Timed:
    kept = prices.minutes(work.key)
    rate = None if kept is None else rate_of(work, kept)
    if rate is None or prices.hour is None:
        return Timed(work=work, rate=rate, cost=None)
    cost = exact(rate) * exact(work.quantity) * exact(prices.hour) / 60
    return Timed(work=work, rate=rate, cost=rounded(cost, prices.decimals))


def hours(lines: Iterable[Timed]) -> Decimal:
    """Hours of what has a rate, to a tenth."""
    minutes = sum((line.minutes or Decimal(0) for line in lines), Decimal(0))
    return rounded(minutes / 60, 1)
