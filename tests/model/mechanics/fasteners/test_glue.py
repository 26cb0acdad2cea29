"""Glue lines and dowels hold what their weaker wood bears in shear."""

from __future__ import annotations

from math import pi

import pytest

from model.errors import BadInput
from model.mechanics.fasteners.glue import (
    cheek_shear,
    design_dowel_withdrawal,
    design_glue_shear,
    hole_across,
)
from model.mechanics.fasteners.strengths import DesignStress

WEAKER = DesignStress(1.2)


def test_a_glue_line_is_its_area_times_the_wood() -> None:
    assert design_glue_shear(WEAKER, 12 * 150) == pytest.approx(2160)


def test_glued_end_grain_is_not_counted() -> None:
    assert design_glue_shear(WEAKER, 12 * 150, in_end_grain=True) == 0


def test_a_dowel_holds_by_its_skin() -> None:
    assert design_dowel_withdrawal(WEAKER, 8, 20) == pytest.approx(1.2 * pi * 8 * 20)


def test_crossed_cheeks_bear_what_wood_bears_across_its_grain() -> None:
    """Wood Handbook 2021, chapter 5, from memory: rolling shear was 18 to 28 % of the other."""
    assert 0.18 <= cheek_shear(WEAKER, is_solid=True) / WEAKER <= 0.28


def test_a_sheets_figure_is_that_of_its_crossed_layers_already() -> None:
    assert cheek_shear(WEAKER, is_solid=False) == WEAKER


def test_a_hole_across_the_grain_lies_between_both() -> None:
    assert cheek_shear(WEAKER, is_solid=True) < hole_across(WEAKER) < WEAKER


@pytest.mark.parametrize("shear", [0.0, -1.0, float("nan")])
def test_wood_without_a_shear_strength_is_refused(shear: float) -> None:
    with pytest.raises(BadInput):
        cheek_shear(DesignStress(shear), is_solid=True)
    with pytest.raises(BadInput):
        hole_across(DesignStress(shear))
