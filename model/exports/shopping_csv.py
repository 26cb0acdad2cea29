"""`shopping.csv`: what to buy, a line for each thing, with its price where there is one."""

from __future__ import annotations

from pathlib import Path

from model.bed import Bed
from model.cost.buy import Buy
from model.cost.costing import Costing, costing_of
from model.cost.money import Money
from model.exports.csv_text import Cell, csv_bytes
from model.exports.plain import number

COLUMNS = (
    "key", "group", "name", "quantity", "unit", "size", "packs", "pack", "price", "total",
    "currency", "prices", "note",
)  # fmt: skip
NOT_PRICED = "not priced"
EXAMPLE = "example prices"


def write(bed: Bed, path: Path) -> None:
    """Write the buying list. `quantity` is what the bed takes, in `unit`; `packs` of `pack` each
    are bought at `price` each.
    """
    path.write_bytes(content(costing_of(bed)))


def content(costing: Costing) -> bytes:
    """The bytes of the file."""
    return csv_bytes(COLUMNS, (_row(buy, costing) for buy in costing.buys))


def _row(buy: Buy, costing: Costing) -> tuple[Cell, ...]:
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
        _money(buy.price),
        _money(buy.total),
        prices.currency,
        EXAMPLE if prices.is_example else "",
        buy.note,
    )


def _money(amount: Money | None) -> str:
    return NOT_PRICED if amount is None else f"{amount:f}"
