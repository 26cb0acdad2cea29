"""Change of width against the Wood Handbook, 2010 (FPL-GTR-190), chapters 4 and 13."""

from __future__ import annotations

from dataclasses import replace

import pytest

from model.materials import species, wood
from model.materials.movement import (
    change,
    change_beyond,
    change_of,
    coefficient_of,
    shrinkage_of,
    shrinkage_to,
)


@pytest.mark.parametrize(
    ("size", "coefficient", "start", "end", "expected", "give"),
    [
        pytest.param(300, 0.00289, 6, 10, 3.468, 5e-4, id="yellow-poplar, tangential"),
        pytest.param(300, 0.00158, 6, 10, 1.896, 5e-4, id="yellow-poplar, radial"),
        pytest.param(11.25, 0.00369, 8, 12, 0.166, 5e-4, id="red oak, a public note, inches"),
        pytest.param(5, 0.00129, 6, 9, 0.019, 5e-4, id="mesquite floor, a flooring page, inches"),
        pytest.param(9.15, 0.00245, 8, 11, 0.06725, 1e-5, id="white fir, the handbook, inches"),
    ],
)
def test_equation_13_2(
    size: float, coefficient: float, start: float, end: float, expected: float, give: float
) -> None:
    assert change(size, coefficient, start, end) == pytest.approx(expected, abs=give)


def test_an_eighth_of_an_inch_at_each_side_serves_an_oak_panel_of_a_foot_and_an_eighth() -> None:
    """A woodworkers' forum asks 1/8 in; white oak, flat-sawn, over 5 % of moisture: 348 mm."""
    assert change(348, 0.00365, 6, 11) == pytest.approx(2 * 25.4 / 8, abs=0.01)


def test_equation_13_3_outside_6_to_14_percent() -> None:
    """300 mm, shrinkage 8.2 %, from 4 to 16 %: 10.593 mm, where equation 13-2 gives 10.404."""
    assert change_beyond(300, 8.2, 4, 16, 30) == pytest.approx(10.593, abs=0.001)
    assert change(300, 0.00289, 4, 16) == pytest.approx(10.404, abs=0.001)


def test_equation_4_9_shrinkage_from_green_to_8_percent() -> None:
    assert shrinkage_to(8.2, 8, 30) == pytest.approx(6.013, abs=0.001)


@pytest.mark.parametrize(
    ("shrinkage", "saturation", "expected"), [(8.2, 30, 0.00289), (2.2, 22, 0.00101)]
)
def test_table_13_5_follows_from_table_4_3(
    shrinkage: float, saturation: float, expected: float
) -> None:
    """Redwood and the cedars begin to shrink at 22 %."""
    assert coefficient_of(shrinkage, saturation) == pytest.approx(expected, abs=5e-6)
    assert shrinkage_of(coefficient_of(shrinkage, saturation), saturation) == pytest.approx(
        shrinkage
    )


def test_a_board_of_poplar_by_its_own_row() -> None:
    poplar = wood("yellow_poplar")

    assert change_of(300, poplar, "tangential", 6, 10) == pytest.approx(3.468, abs=5e-4)
    assert change_of(300, poplar, "radial", 6, 10) == pytest.approx(1.896, abs=5e-4)
    # Beyond 14 %: its coefficient, printed to five decimals, stands for 8.20 % of shrinkage.
    assert change_of(300, poplar, "tangential", 4, 16) == pytest.approx(10.593, abs=0.02)


@pytest.mark.parametrize("key", species())
def test_a_swing_into_the_damp_moves_a_board_more_than_one_inside_it(key: str) -> None:
    """No wood, the oaks of the trade included, may seem to move less for a wider swing.

    The swing is 2.5 % wider and starts drier; white oak's own shrinkage promises up to 8 % more
    movement than the coefficient of the oaks of the trade.
    """
    row = wood(key)

    for way in ("tangential", "radial"):
        inside = change_of(300, row, way, 6, 14)
        assert inside < change_of(300, row, way, 5.9, 14.1) < inside * 1.12, way


def test_moisture_that_stays_the_same_moves_nothing_and_the_way_back_is_the_other_way() -> None:
    poplar = wood("yellow_poplar")

    assert change_of(300, poplar, "tangential", 8, 8) == 0
    assert change_of(300, poplar, "tangential", 6, 10) == -change_of(
        300, poplar, "tangential", 10, 6
    )


def test_wood_that_is_wet_through_swells_no_more() -> None:
    poplar = replace(wood("yellow_poplar"), key="mine")

    wet = change_of(300, poplar, "tangential", 8, 30)

    assert change_of(300, poplar, "tangential", 8, 60) == wet
