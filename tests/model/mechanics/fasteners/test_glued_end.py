"""A glued tenon and glued dowels at a member's end, by hand and by summing small pieces."""

from __future__ import annotations

from dataclasses import replace
from math import pi, sqrt

import numpy as np
import pytest

from model.errors import BadInput
from model.mechanics.fasteners.dowel_bearing import dowel_bearing_across
from model.mechanics.fasteners.glued_end import GLUED_WIDTH, DowelEnd, TenonEnd
from model.mechanics.fasteners.strengths import DesignStress, UltimateStress

TENON = TenonEnd(
    width=50, stock=24, lower=5, upper=5, length=20, thickness=8, cheek=DesignStress(1.0),
    shear=DesignStress(2.0), tension=DesignStress(10.0),
)  # fmt: skip
DOWELS = DowelEnd(
    width=50, stock=24, spots=(10.0, 40.0), diameter=10, depth=25, gravity=0.42,
    shear=DesignStress(2.0), breaks=UltimateStress(110.0), tension=DesignStress(25.0),
)  # fmt: skip


def moment_of_glue(tenon: TenonEnd, edge: float) -> float:
    """What both cheeks hold about a corner of the end, summed piece by piece, where the farthest
    piece slips at 1 MPa and the others less by their way from the corner.
    """
    x = (np.arange(400) + 0.5) / 400 * tenon.length
    y = edge + (np.arange(400) + 0.5) / 400 * tenon.glued
    way = np.hypot(*np.meshgrid(x, y))
    farthest = float(np.hypot(tenon.length, edge + tenon.glued))
    piece = tenon.length * tenon.glued / 400**2
    return float(2 * (way / farthest * way * piece).sum())


def test_glue_slips_about_the_edge_that_presses() -> None:
    """2 x (20 (45^3 - 5^3) / 3 + 40 x 20^3 / 3) = 1 426 667 mm4, 49.2 mm to the far corner."""
    glue, _, _ = TENON.shares()

    assert glue.opens == pytest.approx(49.244 / 1_426_667, rel=1e-4)
    assert 1 / glue.opens == pytest.approx(moment_of_glue(TENON, 5), rel=1e-4)


@pytest.mark.parametrize(("lower", "upper"), [(5, 15), (15, 5)])
def test_the_worse_of_two_edges_counts(lower: float, upper: float) -> None:
    tenon = replace(TENON, lower=lower, upper=upper)

    least = min(moment_of_glue(tenon, edge) for edge in (lower, upper))

    assert 1 / tenon.shares()[0].opens == pytest.approx(least, rel=1e-4)


def test_a_push_across_is_shared_by_both_cheeks() -> None:
    assert TENON.shares()[0].across == pytest.approx(1 / (2 * 40 * 20))


def test_a_tilted_end_turns_about_the_shoulder_that_presses() -> None:
    """From the middle of the tenon to that of the shoulder: (24 + 8) / 4 = 8 mm."""
    glue, drawn, _ = TENON.shares()

    assert glue.leans == pytest.approx(1 / (8 * 1600))
    assert drawn.leans == pytest.approx(1 / (8 * 40 * 8 * 10))


def test_the_root_of_a_tenon_is_drawn_most_at_its_far_edge() -> None:
    """Stress grows from the pressed edge: s = 3 M y / (t (45^3 - 5^3)), at 45 mm."""
    drawn = TENON.shares()[1]

    assert drawn.opens == pytest.approx(3 * 45 / (8 * (45**3 - 5**3)) / 10)


def test_a_tenon_shears_off_as_a_beam_does() -> None:
    shear = TENON.shares()[2]

    assert shear.across == shear.sideways == pytest.approx(1.5 / (40 * 8) / 2)


def test_of_a_wide_tenon_no_more_than_4_in_are_glued() -> None:
    """Over more wood moves too far: common practice."""
    wide = replace(TENON, width=200)
    wider = replace(TENON, width=300)

    assert wide.glued == wider.glued == GLUED_WIDTH == 101.6
    assert wide.shares()[0] == wider.shares()[0]


def test_a_longer_tenon_holds_more_by_its_glue() -> None:
    assert replace(TENON, length=30).shares()[0].opens < TENON.shares()[0].opens


@pytest.mark.parametrize("size", ["length", "thickness", "cheek"])
def test_a_tenon_without_a_size_is_refused(size: str) -> None:
    with pytest.raises(BadInput):
        replace(TENON, **{size: 0.0})


def test_shoulders_that_leave_no_tenon_are_refused() -> None:
    with pytest.raises(BadInput):
        replace(TENON, lower=30, upper=25)


def test_a_dowel_is_drawn_out_by_its_skin() -> None:
    """Round the hole from 2 MPa along the grain to 23 % of it across: 1.23 on average."""
    assert DOWELS.withdrawal() == pytest.approx(1.23 * pi * 10 * 25)


def test_a_long_dowel_tears_before_it_comes_out() -> None:
    assert replace(DOWELS, depth=100).withdrawal() == pytest.approx(25 * pi * 100 / 4)


def test_a_short_thick_dowel_turns_in_both_parts() -> None:
    """Mode II with both sides alike, (sqrt 2 - 1) D l Fe; over 3.6 x 1.25; two thirds of it in end
    grain: NDS 2018, tables 12.3.1A and B and 12.5.2.2.
    """
    turns = (sqrt(2) - 1) * 10 * 25 * dowel_bearing_across(0.42, 10)

    assert DOWELS.lateral() == pytest.approx(0.67 * turns / (3.6 * 1.25))


def test_a_brittle_dowel_bears_less() -> None:
    assert replace(DOWELS, breaks=UltimateStress(20.0)).lateral() < DOWELS.lateral()


def test_dowels_balance_the_moment_about_the_edge_that_presses() -> None:
    worst = DOWELS.draws().opens

    assert worst * 40 + worst * 10 / 40 * 10 == pytest.approx(1.0)


def test_all_dowels_hold_an_end_that_is_tilted() -> None:
    assert DOWELS.draws().leans == pytest.approx(1 / (2 * 12))


def test_of_a_wide_member_only_dowels_within_4_in_are_glued() -> None:
    three = replace(DOWELS, width=160, spots=(10.0, 80.0, 150.0))

    draws = three.draws()

    assert draws.opens == pytest.approx(80 / (10**2 + 80**2))
    assert draws.leans == pytest.approx(1 / (2 * 12))
