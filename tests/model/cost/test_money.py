"""Money adds up to the coin."""

from __future__ import annotations

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from model.cost.money import added, exact, line, padded, rounded, shown


def test_a_tenth_is_a_tenth() -> None:
    assert exact(0.1) * 3 == Decimal("0.3")


@pytest.mark.parametrize(
    ("amount", "decimals", "coins"),
    [("2.345", 2, "2.35"), ("2.344999", 2, "2.34"), ("1499.5", 0, "1500"), ("0.0005", 3, "0.001")],
)
def test_halves_are_rounded_up_on_the_smallest_coin(amount: str, decimals: int, coins: str) -> None:
    assert str(rounded(Decimal(amount), decimals)) == coins


def test_a_line_is_rounded_once() -> None:
    # 3 x 0.335 is 1.005, which is 1.01; rounded each, it would be 1.02.
    assert line(exact(0.335), 3, 2) == Decimal("1.01")


@given(st.lists(st.decimals("0", "99999", places=2), max_size=30))
def test_a_column_adds_up_whatever_its_order(amounts: list[Decimal]) -> None:
    assert added(amounts, 2) == added(list(reversed(amounts)), 2) == sum(amounts, Decimal("0.00"))


def test_what_is_not_priced_is_said_to_be() -> None:
    assert shown(None, "EUR") == "not priced"
    assert shown(Decimal("12.50"), "EUR") == "12.50 EUR"
    assert shown(Decimal("1500"), "") == "1500"


def test_a_price_shows_all_its_places_and_loses_none() -> None:
    assert str(padded(Decimal("24"), 2)) == "24.00"
    assert str(padded(Decimal("24.0"), 2)) == "24.00"
    assert str(padded(Decimal("0.035"), 2)) == "0.035"
