"""A price list as a table: everything that a bed needs a price or a rate for, a row each.

The same rows serve a spreadsheet, a paste and the window's own table. Keys of kinds of work begin
with `work/`, charges beyond the bed with `extra/`, what holds for the whole list with `general/`.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace

from model.cost.buy import Need, pack_of_need
from model.cost.costing import Taken
from model.cost.general_prices import GENERAL, general_text
from model.cost.price_cells import figure_text
from model.cost.price_keys import EXTRA, WHOLE, WORK, Column
from model.cost.work import Work, rate_of
from model.stock.prices import Prices


@dataclass(frozen=True, kw_only=True)
class PriceLine:
    """A row of the table: a thing with pack and price, a kind of work with minutes, a charge with
    its price, or a value of the whole list. Cells that are not known are empty; `open` names those
    that are to be filled in.
    """

    key: str
    name: str
    unit: str = ""
    pack: str = ""
    price: str = ""
    minutes: str = ""
    value: str = ""
    open: tuple[Column, ...] = ()

    @property
    def is_extra(self) -> bool:
        """Whether it is a charge of the maker's own, beyond the bed."""
        return self.key.startswith(EXTRA)

    @property
    def cells(self) -> tuple[str, ...]:
        """The texts of the row, column by column."""
        return (
            self.key, self.name, self.unit, self.pack, self.price, self.minutes, self.value,
        )  # fmt: skip


def price_lines(taken: Taken, prices: Prices) -> tuple[PriceLine, ...]:
    """Every row that a bed needs, with what is known of it: things, work, charges, the list."""
    things = [_thing(need, prices) for need in taken.needs if not need.on_hand]
    return (
        *things,
        *(_work(each, prices) for each in taken.work),
        *_extras(prices),
        *_general(prices),
    )


def _thing(need: Need, prices: Prices) -> PriceLine:
    row = prices.row(need.key)
    listed = row.price if row is not None else None
    return PriceLine(
        key=need.key,
        name=f"{need.name}, {need.size}" if _is_named_by_size(need) else need.name,
        unit=need.unit,
        pack=figure_text(pack_of_need(need, row)),
        price=figure_text(listed if need.price is None else need.price),
        open=_open(need),
    )


def _open(need: Need) -> tuple[Column, ...]:
    """Lumber is sold by its measure; a price that the stock itself has is changed there."""
    if need.price is not None:
        return ()
    return ("price",) if need.measured else ("pack", "price")


def _is_named_by_size(need: Need) -> bool:
    """Whether the size tells one thing from another; of paint it only tells what it covers."""
    return bool(need.size) and need.group not in ("glue", "abrasives", "finish")


def _work(work: Work, prices: Prices) -> PriceLine:
    kept = prices.minutes(work.key)
    return PriceLine(
        key=f"{WORK}{work.key}",
        name=work.name,
        unit=work.unit,
        minutes=figure_text(None if kept is None else rate_of(work, kept)),
        open=("minutes",),
    )


def _extras(prices: Prices) -> Iterator[PriceLine]:
    for row in prices.extras:
        yield PriceLine(
            key=f"{EXTRA}{row.name}", name=row.name, price=figure_text(row.price), open=("price",)
        )


def _general(prices: Prices) -> Iterator[PriceLine]:
    for name, each in GENERAL.items():
        yield PriceLine(
            key=f"{WHOLE}{name}",
            name=each.name,
            unit=each.unit,
            value=general_text(name, prices),
            open=("value",),
        )


def without_figures(lines: Iterable[PriceLine]) -> tuple[PriceLine, ...]:
    """The rows of things and work with their cells for prices and minutes empty."""
    return tuple(replace(line, price="", minutes="") for line in lines)
