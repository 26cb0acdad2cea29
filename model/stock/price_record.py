"""The maker's price list and rates, as a design file holds them. What is as usual is left out."""

from __future__ import annotations

from dataclasses import asdict
from typing import Any, cast, get_args

from model.stock.given import DEAREST, Given, spare
from model.stock.prices import NO_PRICES, BoardMeasure, ExtraRow, PriceRow, Prices, RateRow

NAMES = (
    "currency", "decimals", "board_measure", "rows", "rates", "extras", "hour", "overhead",
    "margin", "tax", "offcut_share", "valid_days", "terms", "is_example",
)  # fmt: skip
LONGEST_PRICE_KEY = 200
LONGEST = {"currency": 12, "terms": 4000}  # characters
# The most that each figure of the whole list can be; shares as such.
MOST = {
    "decimals": 4, "valid_days": 3650, "overhead": 10.0, "margin": 0.99, "tax": 2.0,
    "offcut_share": 1.0,
}  # fmt: skip
_MOST_ROWS = 20_000


def record_of(prices: Prices) -> dict[str, Any]:
    """Prices in the form of a design file; empty where nothing is priced."""
    record = asdict(prices) | {
        "rows": [spare(asdict(row), {"price": None, "pack": None}) for row in prices.rows],
        "rates": [asdict(row) for row in prices.rates],
        "extras": [spare(asdict(row), {"price": None}) for row in prices.extras],
    }
    usual = asdict(NO_PRICES) | {"rows": [], "rates": [], "extras": []}
    return spare(record, usual)


def prices_of(record: Any, place: str = "prices") -> Prices:
    """The prices that a design file gives; refused with BadInput: what is no sound price list."""
    given, usual = Given(record, place, NAMES), NO_PRICES
    return Prices(
        currency=given.text("currency", "", LONGEST["currency"]),
        decimals=given.whole("decimals", usual.decimals, 0, int(MOST["decimals"])),
        board_measure=cast(
            BoardMeasure,
            given.word("board_measure", get_args(BoardMeasure), usual.board_measure),
        ),
        rows=tuple(
            _row(each) for each in given.records("rows", ("key", "price", "pack"), _MOST_ROWS)
        ),
        rates=tuple(_rate(each) for each in given.records("rates", ("key", "minutes"), _MOST_ROWS)),
        extras=tuple(
            _extra(each) for each in given.records("extras", ("name", "price"), _MOST_ROWS)
        ),
        hour=given.maybe("hour", 0.0, DEAREST),
        overhead=given.number("overhead", usual.overhead, 0.0, MOST["overhead"]),
        margin=given.number("margin", usual.margin, 0.0, MOST["margin"]),
        tax=given.number("tax", usual.tax, 0.0, MOST["tax"]),
        offcut_share=given.number("offcut_share", usual.offcut_share, 0.0, MOST["offcut_share"]),
        valid_days=given.whole("valid_days", usual.valid_days, 0, int(MOST["valid_days"])),
        terms=given.text("terms", usual.terms, LONGEST["terms"]),
        is_example=given.flag("is_example"),
    )


def _row(given: Given) -> PriceRow:
    return PriceRow(
        key=given.text("key", None, LONGEST_PRICE_KEY),
        price=given.maybe("price", 0.0, DEAREST),
        pack=given.maybe("pack", 1e-12, DEAREST),
    )


def _rate(given: Given) -> RateRow:
    return RateRow(
        key=given.text("key", None, LONGEST_PRICE_KEY),
        minutes=given.number("minutes", None, 0.0, DEAREST),
    )


def _extra(given: Given) -> ExtraRow:
    return ExtraRow(
        name=given.text("name", None, LONGEST_PRICE_KEY), price=given.maybe("price", 0.0, DEAREST)
    )
