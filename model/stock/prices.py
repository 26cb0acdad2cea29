"""What the maker pays and asks: a price list and rates, in the maker's own currency.

Nothing is priced by the program: rows come from the maker, or from a demo, which says so.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property
from typing import Literal

from model.units import Share

BoardMeasure = Literal["board foot", "cubic metre"]


@dataclass(frozen=True, kw_only=True)
class PriceRow:
    """What one pack of a thing costs; `pack` is how many (or how much) is in it, in the unit of the
    buying list, None where it is sold as the tables of the trade say.
    """

    key: str
    price: float | None = None
    pack: float | None = None


@dataclass(frozen=True, kw_only=True)
class RateRow:
    """Minutes that an operation takes for one of its units."""

    key: str
    minutes: float


@dataclass(frozen=True, kw_only=True)
class ExtraRow:
    """What the bed does not tell and the maker charges for: delivery, a day of hired help."""

    name: str
    price: float | None = None


@dataclass(frozen=True, kw_only=True)
class Prices:
    """The maker's price list and rates; `hour` is what an hour of the shop costs.

    `overhead` is a share of the cost, `margin` a share of the quote, `tax` a share on top of it.
    Money is rounded to `decimals` places. Random-width lumber is billed by its `board_measure`.
    An offcut that is kept is valued at `offcut_share` of what its area cost. A quote stands for
    `valid_days`; `terms` are the maker's own words below it. `is_example` heads the list `example
    prices`.
    """

    currency: str = ""
    decimals: int = 2
    board_measure: BoardMeasure = "board foot"
    rows: tuple[PriceRow, ...] = ()
    rates: tuple[RateRow, ...] = ()
    extras: tuple[ExtraRow, ...] = ()
    hour: float | None = None
    overhead: Share = 0.0
    margin: Share = 0.0
    tax: Share = 0.0
    offcut_share: Share = 0.5
    valid_days: int = 30
    terms: str = ""
    is_example: bool = False

    @cached_property
    def _rows(self) -> dict[str, PriceRow]:
        return {row.key: row for row in reversed(self.rows)}

    @cached_property
    def _minutes(self) -> dict[str, float]:
        return {row.key: row.minutes for row in reversed(self.rates)}

    def row(self, key: str) -> PriceRow | None:
        """The row of a thing, or None."""
        return self._rows.get(key)

    def minutes(self, key: str) -> float | None:
        """How long one unit of an operation takes, or None."""
        return self._minutes.get(key)


NO_PRICES = Prices()
