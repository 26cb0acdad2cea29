"""Glue lines and dowels hold what their weaker wood bears in shear."""

from __future__ import annotations

from math import pi

import pytest

from model.mechanics.fasteners.glue import design_dowel_withdrawal, design_glue_shear
from model.mechanics.fasteners.strengths import DesignStress

WEAKER = DesignStress(1.2)


def test_a_glue_line_is_its_area_times_the_wood() -> None:
    assert design_glue_shear(WEAKER, 12 * 150) == pytest.approx(2160)


def test_glued_end_grain_is_not_counted() -> None:
    assert design_glue_shear(WEAKER, 12 * 150, in_end_grain=True) == 0


def test_a_dowel_holds_by_its_skin() -> None:
    assert design_dowel_withdrawal(WEAKER, 8, 20) == pytest.approx(1.2 * pi * 8 * 20)
