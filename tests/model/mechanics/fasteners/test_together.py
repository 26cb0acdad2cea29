"""Sideways and outwards at once."""

from __future__ import annotations

from math import sqrt

import pytest

from model.errors import BadInput
from model.mechanics.fasteners.strengths import Design
from model.mechanics.fasteners.together import (
    ScrewForce,
    bracket_screws,
    design_at_angle,
    screws_in_line,
    use_of,
)

LATERAL, WITHDRAWAL = Design(400.0), Design(300.0)


def test_a_force_along_one_way_meets_its_own_value() -> None:
    assert design_at_angle(LATERAL, WITHDRAWAL, ScrewForce(50, 0)) == 400
    assert design_at_angle(LATERAL, WITHDRAWAL, ScrewForce(0, 50)) == pytest.approx(300)


def test_at_45_degrees_it_lies_between() -> None:
    """Two W Z / (W + Z) = 2 x 400 x 300 / 700 = 342.9 N."""
    found = design_at_angle(LATERAL, WITHDRAWAL, ScrewForce(10, 10))

    assert found == pytest.approx(2 * 400 * 300 / 700)
    assert use_of(LATERAL, WITHDRAWAL, ScrewForce(10, 10)) == pytest.approx(10 * sqrt(2) / found)


def test_being_pressed_in_costs_nothing() -> None:
    assert use_of(LATERAL, WITHDRAWAL, ScrewForce(100, 0)) == pytest.approx(0.25)


def test_the_least_pull_fails_a_screw_that_may_not_be_drawn() -> None:
    assert use_of(LATERAL, Design(0.0), ScrewForce(100, 0)) == pytest.approx(0.25)
    assert use_of(LATERAL, Design(0.0), ScrewForce(100, 1)) == float("inf")


def test_no_force_uses_nothing() -> None:
    assert use_of(LATERAL, WITHDRAWAL, ScrewForce(0, 0)) == 0


def test_bracket_screws_balance_load_and_moment() -> None:
    """Moments about the leaf's lower edge: sum of pull x height = load x arm."""
    heights = (10.0, 30.0)

    forces = bracket_screws(200.0, 15.0, heights)

    assert sum(each.lateral for each in forces) == pytest.approx(200)
    turning = sum(f.withdrawal * y for f, y in zip(forces, heights, strict=True))
    assert turning == pytest.approx(200 * 15)
    assert forces[1].withdrawal == pytest.approx(3 * forces[0].withdrawal)


def test_screws_in_a_line_bear_a_couple() -> None:
    """Two screws 60 mm apart: a moment of 6000 N mm is a couple of 100 N."""
    assert screws_in_line(0, 0, 6000, (20, 80)) == pytest.approx((100, 100))


def test_a_force_across_the_line_adds_to_its_moment_at_one_end() -> None:
    assert screws_in_line(60, 0, 6000, (20, 80)) == pytest.approx((70, 130))


def test_a_force_along_the_line_is_square_to_its_moment() -> None:
    assert screws_in_line(0, 150, 0, (20, 50, 80)) == pytest.approx((50, 50, 50))
    assert screws_in_line(0, 150, 6000, (20, 80)) == pytest.approx((125, 125))


def test_one_screw_bears_no_moment() -> None:
    assert screws_in_line(3, 4, 0, (50,)) == (5,)
    assert screws_in_line(0, 0, 1, (50,)) == (float("inf"),)


def test_without_screws_nothing_holds() -> None:
    with pytest.raises(BadInput, match="without screws"):
        bracket_screws(1, 1, ())
    with pytest.raises(BadInput, match="without screws"):
        screws_in_line(1, 1, 1, ())


def test_a_pull_never_makes_a_pushed_screw_bear_more() -> None:
    """By NDS 2018, equation 12.4-1 alone, 500 N sideways would take 1.67 of 300 N, and with 300 N
    drawn at 1200 N beside it only 1.56.
    """
    pushed = use_of(Design(300.0), Design(1200.0), ScrewForce(500.0, 0.0))

    for pull in (1.0, 100.0, 300.0, 1000.0):
        assert use_of(Design(300.0), Design(1200.0), ScrewForce(500.0, pull)) >= pushed
