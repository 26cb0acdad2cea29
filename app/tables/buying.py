"""The buying list: what is bought, how it is sold, what it costs, and whether it is in the shop."""

from __future__ import annotations

from collections.abc import Callable
from typing import NamedTuple

from PySide6.QtGui import QIcon

from app.style import verdict_icon
from app.tables.cells import natural, plain
from app.tables.rows import Column
from model.cost.buy import Buy
from model.cost.money import Money, shown


class BuyRow(NamedTuple):
    """A line of the buying list; `is_bought` once the maker has ticked it."""

    buy: Buy
    currency: str
    is_bought: bool

    @property
    def key(self) -> str:
        """The key of the line in price lists."""
        return self.buy.key


def _word(heading: str, say: Callable[[BuyRow], str]) -> Column:
    return Column(plain(heading), lambda r, _: say(r), lambda r: natural(say(r)))


def _money(heading: str, of: Callable[[BuyRow], Money | None]) -> Column:
    def amount(row: BuyRow) -> float:
        known = of(row)
        return -1.0 if known is None else float(known)

    return Column(plain(heading), lambda r, _: shown(of(r), r.currency), amount, is_number=True)


def _packs(row: BuyRow) -> str:
    buy = row.buy
    if buy.on_hand:
        return "on hand"
    return "" if buy.pack == 1 else f"{buy.packs:.4g} of {buy.pack:.10g}"


def _counted(quantity: float, unit: str) -> str:
    """`1 sheet`, `4 pairs`, `43 board feet`."""
    one = unit if quantity == 1 else f"{unit}s".replace("foots", "feet").replace("m2s", "m²")
    return f"{quantity:.10g} {one}"


def _tick(row: BuyRow) -> QIcon:
    return verdict_icon("holds") if row.is_bought else QIcon()


BUYING_COLUMNS = (
    Column(
        plain("Bought"),
        lambda r, _: "yes" if r.is_bought else "",
        lambda r: (r.is_bought, r.buy.on_hand),
        icon=_tick,
        tip=lambda r, _: "Click, or press Space, once it is in the shop",
    ),
    _word("What", lambda r: r.buy.name),
    _word("Size", lambda r: r.buy.size),
    Column(
        plain("Takes"),
        lambda r, _: _counted(r.buy.quantity, r.buy.unit),
        lambda r: r.buy.quantity,
        is_number=True,
    ),
    Column(plain("Packs"), lambda r, _: _packs(r), lambda r: r.buy.packs, is_number=True),
    _money("Price", lambda r: r.buy.price),
    _money("Total", lambda r: r.buy.total),
    _word("Note", lambda r: r.buy.note),
)
