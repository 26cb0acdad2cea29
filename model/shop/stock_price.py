"""What one piece of stock costs: what its row says, or the maker's price list."""

from __future__ import annotations

from model.bed import Design


def price_of(design: Design, told: float | None, key: str) -> float | None:
    """The price of one, in the maker's currency; None where nobody knows."""
    if told is not None:
        return told
    row = design.prices.row(key)
    return None if row is None or row.price is None else row.price / (row.pack or 1.0)
