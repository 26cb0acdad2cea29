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
    plate_screws,
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


def test_plate_screws_balance_their_moment() -> None:
    """Two screws 60 mm apart: a moment of 6000 N mm is a couple of 100 N."""
    assert plate_screws(0.0, 6000.0, (20.0, 80.0)) == pytest.approx((100, 100))
    assert plate_screws(150.0, 0.0, (20.0, 50.0, 80.0)) == pytest.approx((50, 50, 50))
    assert plate_screws(0.0, 100.0, (50.0,)) == (float("inf"),)


@pytest.mark.parametrize("asked", [bracket_screws, plate_screws])
def test_without_screws_nothing_holds(asked: object) -> None:
    with pytest.raises(BadInput, match="without screws"):
        asked(1.0, 1.0, ())  # type: ignore[operator]
