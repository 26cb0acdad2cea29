"""A price list as CSV: filled in with a spreadsheet, `designs.read_prices` reads it back."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from model.bed import Bed
from model.cost.costing import taken
from model.cost.price_keys import COLUMNS
from model.cost.price_table import PriceLine, price_lines, without_figures
from model.exports.csv_text import csv_bytes
from model.shop.plans import first_plans


def content(bed: Bed, empty: bool = False) -> bytes:
    """A row for everything that a bed needs a price or a rate for, with what its design knows;
    `empty` leaves all prices and rates to the maker.

    Which things are needed shows in any sound plan; how many of them is not told here.
    """
    prices = bed.design.prices
    if empty:  # what was an example is one no more
        prices = replace(prices, hour=None, is_example=False)
    lines = price_lines(taken(bed, first_plans(bed)), prices)
    return of_lines(without_figures(lines) if empty else lines)


def of_lines(lines: Iterable[PriceLine]) -> bytes:
    """The bytes of a table."""
    return csv_bytes(COLUMNS, (line.cells for line in lines))
