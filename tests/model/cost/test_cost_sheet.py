"""Cost sheet and quote: what is known adds up, what is not is said, and the client sees no rate."""

from __future__ import annotations

from dataclasses import replace
from decimal import ROUND_HALF_UP, Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from model.cost.cost_sheet import cost_sheet
from model.cost.costing import Costing, at_prices
from model.cost.quote import quote
from model.stock.prices import ExtraRow, PriceRow, Prices, RateRow
from tests.model.cost.beds import taken_of

TAKEN = replace(
    taken_of("painted_storage_queen"),
    plans=(),  # of pieces that no plan could hold there is a test of its own
)


def all_priced(**more: object) -> Prices:
    """Every thing at 10, every unit of work at a minute, an hour at 60."""
    base = Prices(
        currency="EUR",
        rows=tuple(PriceRow(key=need.key, price=10.0) for need in TAKEN.needs),
        rates=tuple(RateRow(key=each.key, minutes=1.0) for each in TAKEN.work),
        hour=60.0,
    )
    return replace(base, **more)  # type: ignore[arg-type]


def costed(prices: Prices) -> Costing:
    return at_prices(TAKEN, prices)


def test_a_whole_cost_is_the_sum_of_its_lines() -> None:
    costing = costed(all_priced(extras=(ExtraRow(name="Delivery", price=80.0),)))
    sheet = cost_sheet(costing)

    lines = sum((buy.total or Decimal(0) for buy in costing.buys), Decimal(0))
    # One minute for each of what rates are kept by: m2 and metres, told by the foot here.
    minutes = sum(Decimal(str(each.quantity * each.holds)) for each in TAKEN.work)

    assert sheet.is_complete
    assert sheet.materials + sheet.hardware + sheet.consumables == lines
    assert sheet.labour == pytest.approx(minutes, abs=Decimal("0.15"))  # 26 lines, each rounded
    assert sheet.total == lines + sheet.labour + 80


def test_overhead_is_a_share_of_all_of_it() -> None:
    plain, burdened = (cost_sheet(costed(all_priced(overhead=share))) for share in (0.0, 0.15))

    assert burdened.direct == plain.total
    assert burdened.overhead == (plain.total * Decimal("0.15")).quantize(
        Decimal("0.01"), ROUND_HALF_UP
    )
    assert burdened.total == burdened.direct + burdened.overhead


def test_one_missing_price_makes_the_total_incomplete() -> None:
    prices = all_priced()
    costing = costed(replace(prices, rows=prices.rows[1:]))
    sheet = cost_sheet(costing)

    assert not sheet.is_complete
    assert sheet.missing == (f"1 of {len(costing.buys)} lines of the buying list is not priced.",)
    assert quote(sheet, costing).is_draft


def test_one_missing_rate_makes_the_total_incomplete() -> None:
    prices = all_priced()
    costing = costed(replace(prices, rates=prices.rates[2:]))

    assert cost_sheet(costing).missing == (f"2 of {len(TAKEN.work)} kinds of work are not timed.",)


def test_an_hour_without_a_price_and_a_charge_without_one_are_missed() -> None:
    prices = all_priced(hour=None, extras=(ExtraRow(name="Delivery"),))

    missing = cost_sheet(costed(prices)).missing

    assert missing == (
        "What an hour of the shop costs is not told.",
        "1 of the charges beyond the bed is not priced.",
    )


def test_pieces_that_no_plan_holds_keep_the_cost_from_being_whole() -> None:
    costing = replace(costed(all_priced()), without_stock=2)

    assert cost_sheet(costing).missing == (
        "2 pieces have nothing to be cut from: see the cutting plans.",
    )
    assert not costing.is_whole


def test_offcuts_are_shown_and_taken_off_nothing() -> None:
    costing = at_prices(taken_of("painted_storage_queen"), all_priced())
    without = replace(costing, offcuts=())

    assert cost_sheet(costing).offcuts > 0
    assert cost_sheet(costing).total == cost_sheet(without).total


def test_the_margin_is_a_share_of_what_is_asked() -> None:
    """Cost 600 and a margin of 25 % of the quote: 800, of which 200 are margin."""
    prices = Prices(currency="EUR", extras=(ExtraRow(name="All of it", price=600.0),), margin=0.25)
    costing = Costing(prices=prices, buys=(), work=(), offcuts=(), waste=(), without_stock=0)

    asked = quote(cost_sheet(costing), costing)

    assert (asked.net, asked.total) == (Decimal("800.00"), Decimal("800.00"))


def test_tax_comes_on_top() -> None:
    prices = Prices(extras=(ExtraRow(name="All of it", price=100.0),), tax=0.2)
    costing = Costing(prices=prices, buys=(), work=(), offcuts=(), waste=(), without_stock=0)

    asked = quote(cost_sheet(costing), costing)

    assert (asked.net, asked.tax, asked.total) == (Decimal(100), Decimal(20), Decimal(120))


@given(
    st.floats(0, 0.9), st.floats(0, 1), st.floats(0, 0.3), st.integers(0, 3),
)  # fmt: skip
def test_a_quote_adds_up_line_by_line(
    margin: float, overhead: float, tax: float, decimals: int
) -> None:
    prices = all_priced(margin=margin, overhead=overhead, tax=tax, decimals=decimals)
    costing = costed(prices)
    sheet = cost_sheet(costing)

    asked = quote(sheet, costing)

    assert asked.net == sum((line.amount or Decimal(0) for line in asked.lines), Decimal(0))
    assert asked.total == asked.net + asked.tax
    coin = Decimal(1).scaleb(-decimals)
    assert all(line.amount == line.amount.quantize(coin) for line in asked.lines if line.amount)
    # One rounding a line, and one of the overhead: the margin leaves at least the cost.
    assert asked.net >= sheet.total - 5 * coin


def test_the_client_sees_no_rate_and_no_margin() -> None:
    costing = costed(all_priced(margin=0.3, overhead=0.1))

    names = [line.name for line in quote(cost_sheet(costing), costing).lines]

    assert names == [
        "Wood and sheet goods",
        "Fittings and screws",
        "Finish, glue and abrasives",
        "Making and finishing the bed",
    ]
