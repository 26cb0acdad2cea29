"""A line of the buying list: what the bed takes of a thing, how it is sold, and what that costs."""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass
from typing import Literal

from model.cost.measures import converted
from model.cost.money import NOTHING, Money, added, exact, line, padded, rounded
from model.stock.prices import PriceRow, Prices

Group = Literal[
    "boards", "sheets", "on hand", "hardware", "screws", "glue", "abrasives", "finish"
]  # fmt: skip
MATERIALS: tuple[Group, ...] = ("boards", "sheets", "on hand")
HARDWARE: tuple[Group, ...] = ("hardware", "screws")
CONSUMABLES: tuple[Group, ...] = ("glue", "abrasives", "finish")

_DUST = 1e-9  # of a pack: what floating point leaves over is nothing to buy another pack for


@dataclass(frozen=True, kw_only=True)
class Need:
    """What the bed takes of a thing: `quantity` in `unit`, sold `pack` at a time.

    `key` is its name in price lists. What is `measured` out (lumber) is paid by its quantity, all
    else by whole packs. `price` is that of a pack where the maker's stock tells it. What is
    `on_hand` costs nothing. `holds` is how much of the measure that the price list keeps packs by
    is in one `unit`: litres in a quart.
    """

    key: str
    group: Group
    name: str
    quantity: float
    unit: str
    size: str = ""
    pack: float = 1.0
    measured: bool = False
    holds: float = 1.0
    price: float | None = None
    on_hand: bool = False
    note: str = ""


@dataclass(frozen=True, kw_only=True)
class Buy:
    """A need with its price. `packs` of `pack` each are bought; `price` is that of one, `total`
    that of all, in the maker's currency; None is what nobody has priced.
    """

    key: str
    group: Group
    name: str
    quantity: float
    unit: str
    size: str
    pack: float
    packs: float
    price: Money | None
    total: Money | None
    on_hand: bool
    note: str

    @property
    def is_priced(self) -> bool:
        """Whether its cost is known."""
        return self.total is not None


def priced(need: Need, prices: Prices) -> Buy:
    """The line of a need; what stands beside the stock itself goes before the price list."""
    row = prices.row(need.key)
    pack = pack_of_need(need, row)
    packs = need.quantity / pack if need.measured else math.ceil(need.quantity / pack - _DUST)
    each = rounded(NOTHING, prices.decimals) if need.on_hand else _price(need, row, prices)
    return Buy(
        key=need.key, group=need.group, name=need.name, quantity=need.quantity, unit=need.unit,
        size=need.size, pack=pack, packs=packs, price=each,
        total=None if each is None else line(each, packs, prices.decimals),
        on_hand=need.on_hand, note=need.note,
    )  # fmt: skip


def pack_of_need(need: Need, row: PriceRow | None) -> float:
    """How much is sold together, in the unit of a need: as the maker's row says, or as usual."""
    if row is None or not row.pack:
        return need.pack
    return row.pack if need.holds == 1 else converted(row.pack, 1 / need.holds)


def _price(need: Need, row: PriceRow | None, prices: Prices) -> Money | None:
    listed = row.price if row is not None else None
    price = need.price if need.price is not None else listed
    return None if price is None else padded(exact(price), prices.decimals)


def total(buys: Iterable[Buy], groups: tuple[Group, ...], decimals: int) -> Money:
    """What is known of the cost of some groups."""
    return added((buy.total for buy in buys if buy.group in groups), decimals)
