"""`shopping.csv`: what to buy, a line for each thing, with its price where there is one."""

from __future__ import annotations

from collections.abc import Collection
from pathlib import Path

from model.bed import Bed
from model.cost.buy import Buy
from model.cost.costing import Costing, costing_of
from model.cost.money import figure
from model.exports.csv_text import Cell, csv_bytes
from model.exports.plain import number

COLUMNS = (
    "key", "group", "name", "quantity", "unit", "size", "packs", "pack", "price", "total",
    "currency", "prices", "bought", "note",
)  # fmt: skip
EXAMPLE = "example prices"


def write(bed: Bed, path: Path) -> None:
    """Write the buying list. `quantity` is what the bed takes, in `unit`; `packs` of `pack` each
    are bought at `price` each; what is ticked is `bought`.
    """
    path.write_bytes(content(costing_of(bed), bed.design.progress.bought))


def content(costing: Costing, bought: Collection[str] = ()) -> bytes:
    """The bytes of the file; `bought` are the keys of what is in the shop."""
    return csv_bytes(COLUMNS, (_row(buy, costing, buy.key in bought) for buy in costing.buys))


def _row(buy: Buy, costing: Costing, is_bought: bool) -> tuple[Cell, ...]:
    prices = costing.prices
    return (
        buy.key,
        buy.group,
        buy.name,
        number(buy.quantity),
        buy.unit,
        buy.size,
        number(buy.packs),
        number(buy.pack),
        figure(buy.price),
        figure(buy.total),
        prices.currency,
        EXAMPLE if prices.is_example else "",
        "yes" if is_bought else "",
        buy.note,
    )
