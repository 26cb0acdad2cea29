"""Allowable stresses by hand, as ASTM D245 goes about it.

Averages: Wood Handbook 2021 (FPL-GTR-282), table 5-3a, yellow-poplar at 12 %: bending 70 MPa, shear
8.2, compression across the grain 3.4. Spread: table 5-6, bending 16 %, shear 14 % (from memory).
Divisors of ASTM D245: hardwood 2.3, across the grain 1.67 (from memory).
"""

from __future__ import annotations

import pytest

from model.materials import allowed


@pytest.mark.parametrize(
    ("figure", "values"),
    [
        ("bending_mpa", (70.0, 51.6, 22.4)),
        ("shear_mpa", (8.2, 6.3, 2.7)),
        ("across_mpa", (3.4, 2.0)),
    ],
)
def test_yellow_poplar_from_its_average_to_what_clear_straight_stock_may_bear(
    figure: str, values: tuple[float, ...]
) -> None:
    steps = allowed("yellow_poplar", "straight").steps[figure]

    # Each line is printed to one decimal.
    assert [step.value_mpa for step in steps] == pytest.approx(list(values), abs=0.05)


def test_softwood_is_divided_by_less() -> None:
    """Ponderosa pine, table 5-3a: 65 x (1 - 1.645 x 0.16) / 2.1 = 22.8 MPa."""
    assert allowed("ponderosa_pine", "straight").bending_mpa == pytest.approx(22.8, abs=0.05)
