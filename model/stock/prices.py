"""What the maker pays and asks: a price list and rates, in the maker's own currency.

Nothing is priced by the program: rows come from the maker, or from a demo, which says so.
"""

from __future__ import annotations

from dataclasses import dataclass

from model.units import Share


@dataclass(frozen=True, kw_only=True)
class PriceRow:
    """What one pack of a thing costs; `pack` is how many (or how much) is in it, in the unit of the
    buying list.
    """

    key: str
    price: float | None = None
    pack: float = 1.0


@dataclass(frozen=True, kw_only=True)
class RateRow:
    """Minutes that an operation takes for one of its units."""

    key: str
    minutes: float


@dataclass(frozen=True, kw_only=True)
class Prices:
    """The maker's price list and rates; `hour` is what an hour of the shop costs.

    `overhead` is a share of the cost, `margin` a share of the quote, `tax` a share on top of it.
    `is_example` heads the list `example prices`.
    """

    currency: str = ""
    rows: tuple[PriceRow, ...] = ()
    rates: tuple[RateRow, ...] = ()
    hour: float | None = None
    overhead: Share = 0.0
    margin: Share = 0.0
    tax: Share = 0.0
    is_example: bool = False

    def row(self, key: str) -> PriceRow | None:
        """The row of a thing, or None."""
        return next((row for row in self.rows if row.key == key), None)


NO_PRICES = Prices()
