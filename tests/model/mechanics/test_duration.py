"""The longer a load lies, the less wood bears of it."""

from __future__ import annotations

import pytest

from model.mechanics.duration import LASTINGS, SOURCES, curve_factor, duration_factor


@pytest.mark.parametrize("product", ["solid", "plywood", "fibreboard"])
def test_shorter_loads_may_be_heavier(product: str) -> None:
    factors = [getattr(row, product) for row in LASTINGS]

    assert factors == sorted(factors)
    assert factors[0] < 1.0 < factors[-1]


def test_ten_years_is_what_all_else_is_measured_by() -> None:
    for product in SOURCES:
        assert duration_factor("ten years", product) == 1.0


def test_the_curve_lies_near_the_factors_of_the_table() -> None:
    """NDS rounds the curve to its factors, and lies below it for a permanent load."""
    for row in LASTINGS:
        if row.seconds and row.time != "permanent":
            assert row.solid == pytest.approx(curve_factor(row.seconds), abs=0.02), row.time


def test_fibreboard_gives_way_sooner_than_plywood() -> None:
    """From short-term to permanent it loses more of its strength."""
    ply = duration_factor("permanent", "plywood") / duration_factor("seven days", "plywood")
    board = duration_factor("permanent", "fibreboard") / duration_factor("seven days", "fibreboard")

    assert board < ply
