"""Carrying through a house, against closed forms and the building code.

Sources: the ladder round a corner, a textbook exercise: (a^(2/3) + b^(2/3))^(3/2); Carver 1957
(American Mathematical Monthly 64, problem E 1225): a rectangle askew in another; IRC 2018 R311.2
(door), R311.7 (stairs).
"""

from __future__ import annotations

import numpy as np
import pytest

from model.brief import all_choices
from model.mechanics.carry import longest_round_corner, through_opening

INCH = 25.4


@pytest.mark.parametrize(("a", "b"), [(36, 36), (36, 32), (32, 32), (36, 27), (27, 96), (40, 18)])
def test_the_ladder_round_a_corner(a: float, b: float) -> None:
    (longest,) = longest_round_corner(a, b, np.array([0.0])).tolist()

    assert longest == pytest.approx((a ** (2 / 3) + b ** (2 / 3)) ** 1.5, rel=1e-6)


@pytest.mark.parametrize(
    ("a", "b", "by_thickness"),
    [
        (36, 36, {2: 97.8, 4: 93.8, 8: 85.8, 12: 77.8}),
        (36, 32, {2: 92.1, 4: 88.1, 8: 80.1, 12: 72.1}),
        (32, 32, {2: 86.5, 4: 82.5, 8: 74.5, 12: 66.5}),
        (36, 27, {2: 84.8, 4: 80.7, 8: 72.7, 12: 64.6}),
    ],
)
def test_a_thick_thing_round_a_corner(a: float, b: float, by_thickness: dict[int, float]) -> None:
    """Inches, each minimum found by hand to a tenth: a/sin + b/cos - t/(sin cos)."""
    found = longest_round_corner(a, b, np.array(list(by_thickness), float))

    assert found == pytest.approx(list(by_thickness.values()), abs=0.06)


def test_a_rail_of_82_inches_goes_round_bare_and_not_with_its_bearers_on() -> None:
    """8 in deep it clears 36 x 36 in and not 36 x 32; under 2 in it clears both."""
    deep, bare = np.array([8.0]), np.array([2.0])

    assert longest_round_corner(36, 36, deep)[0] > 82
    assert longest_round_corner(36, 32, deep)[0] < 82
    assert longest_round_corner(36, 32, bare)[0] > 82


@pytest.mark.parametrize("short", [10.0, 200.0, 500.0])
def test_a_rectangle_askew_touches_all_four_sides(short: float) -> None:
    """Carver's width is the one for which the turned corners lie on all sides of the opening."""
    long, tall = 2000.0, 1900.0
    wide = float(through_opening(np.array([short]), np.array([long]), 1899.0, tall).size[0])

    turn = np.arccos(tall / np.hypot(long, short)) + np.arctan2(short, long)  # touches top and foot
    assert long * np.cos(turn) + short * np.sin(turn) == pytest.approx(tall)
    assert wide == pytest.approx(long * np.sin(turn) + short * np.cos(turn), abs=0.01)


@pytest.mark.parametrize(
    ("name", "inches"),
    [
        pytest.param("door_width", 32, id="R311.2: 32 in clear"),
        pytest.param("door_height", 78, id="R311.2: 78 in"),
        pytest.param("stair_width", 31.5, id="R311.7.1: 31.5 in with one handrail"),
        pytest.param("stair_headroom", 80, id="R311.7.2: 6 ft 8 in"),
        pytest.param("stair_riser", 7.75, id="R311.7.5: riser at most 7 3/4 in"),
        pytest.param("stair_tread", 10, id="R311.7.5: tread at least 10 in"),
        pytest.param("corridor_before", 36, id="R311.6: 3 ft, from memory"),
        pytest.param("landing_depth", 36, id="R311.7.6: as wide as the stairs, 36 in"),
        pytest.param("ceiling", 84, id="R305.1: 7 ft, from memory"),
    ],
)
def test_the_way_in_starts_at_the_least_of_the_code(name: str, inches: float) -> None:
    assert all_choices()[name].default == pytest.approx(inches * INCH, abs=0.2)
