"""What goes through a door, round a corner and up a stair, against plain geometry."""

from __future__ import annotations

import numpy as np
import pytest

from model.mechanics.carry import (
    longest_round_corner,
    round_corner,
    through_door,
    through_opening,
    tipped_length,
    up_stair,
)

HAIR = 0.05  # mm: far below what a tape reads


def one(*sizes: float) -> np.ndarray:
    return np.array([sorted(sizes)], float)


def covers_inner_corner(
    length: float, thick: float, before: float, after: float, theta: float
) -> bool:
    """Whether a bar whose outer face ends on both outer walls lies over the inner corner.

    The outer walls are the axes; the inner corner stands at (after, before).
    """
    foot = np.array([length * np.cos(theta), 0.0])
    along = np.array([-np.cos(theta), np.sin(theta)])
    inward = np.array([np.sin(theta), np.cos(theta)])
    corner = np.array([after, before]) - foot
    return bool(0 < corner @ along < length and corner @ inward < thick)


@pytest.mark.parametrize("thick", [0.0, 60.0, 200.0, 500.0])
@pytest.mark.parametrize(("before", "after"), [(914.0, 914.0), (914.0, 690.0), (600.0, 1500.0)])
def test_the_longest_bar_slides_past_the_corner_and_a_longer_one_does_not(
    before: float, after: float, thick: float
) -> None:
    (longest,) = longest_round_corner(before, after, np.array([thick])).tolist()

    angles = np.linspace(0.001, np.pi / 2 - 0.001, 4001)
    meets = {
        length: any(covers_inner_corner(length, thick, before, after, t) for t in angles)
        for length in (longest - 1.0, longest + 1.0)
    }

    assert meets == {longest - 1.0: False, longest + 1.0: True}


@pytest.mark.parametrize("thick", [0.0, 100.0, 300.0])
def test_between_two_equal_widths_the_middle_of_the_turn_decides(thick: float) -> None:
    """At 45 degrees: L = 2 sqrt(2) a - 2 t."""
    (longest,) = longest_round_corner(900.0, 900.0, np.array([thick])).tolist()

    assert longest == pytest.approx(2 * np.sqrt(2) * 900 - 2 * thick, abs=HAIR)


def test_both_ways_through_a_corner_are_alike() -> None:
    thick = np.array([0.0, 50.0, 400.0])

    assert longest_round_corner(700, 1100, thick) == pytest.approx(
        longest_round_corner(1100, 700, thick), abs=HAIR
    )


def test_what_is_thicker_than_a_width_does_not_go_round() -> None:
    assert longest_round_corner(900, 700, np.array([701.0])).tolist() == [0.0]


def test_a_block_goes_round_without_turning() -> None:
    """Nearly as thick as the corridor, it goes lengthwise before and sideways after."""
    (longest,) = longest_round_corner(900, 900, np.array([890.0])).tolist()

    assert longest == 900.0


# ---------------------------------------------------------------- tipping under a ceiling


@pytest.mark.parametrize(("length", "height"), [(2400.0, 100.0), (2100.0, 1300.0), (3000.0, 40.0)])
def test_a_tipped_thing_is_as_short_as_the_ceiling_lets_it(length: float, height: float) -> None:
    """Against every angle from level to upright, a tenth of a degree apart."""
    ceiling = 2200.0
    lean = np.radians(np.arange(0, 90, 0.1))
    high = length * np.sin(lean) + height * np.cos(lean)
    long = length * np.cos(lean) + height * np.sin(lean)
    # Only angles that are reached from level without meeting the ceiling.
    reached = np.logical_and.accumulate(high <= ceiling)

    (found,) = tipped_length(np.array([length]), np.array([height]), ceiling).tolist()

    assert found == pytest.approx(long[reached].min(), abs=6.0)  # 0.1 degrees of 3 m are 5 mm


def test_what_is_shorter_than_the_ceiling_stands_on_end() -> None:
    assert tipped_length(np.array([2000.0]), np.array([60.0]), 2100.0).tolist() == [60.0]


def test_a_long_rail_goes_round_a_tight_corner_tipped_up() -> None:
    """Level it is too long by 2057 - (2 sqrt(2) 690 - 120) = 225 mm; under a slope it stays so."""
    rail = one(2057, 230, 60)

    assert round_corner(rail, 690, 690, 2134).room > 0
    assert round_corner(rail, 690, 690, 1900).room > 0
    assert round_corner(rail, 690, 690, 300).room.item() == pytest.approx(-225, abs=20)


def test_a_headboard_is_turned_on_its_edge() -> None:
    """1650 x 1270 x 100 mm between 914 mm: on edge it has 2585 - 200 mm to turn in."""
    found = round_corner(one(1650, 1270, 100), 914, 914, 2134)

    assert found.room > 2585 - 200 - 1650 - HAIR


def test_what_stands_higher_than_the_ceiling_says_so() -> None:
    cube = one(2200, 2200, 2200)
    found = round_corner(cube, 5000, 5000, 2134)

    assert (found.size.item(), found.limit.item()) == (2200.0, 2134.0)


# ---------------------------------------------------------------- doors and stairs


def test_a_door_is_passed_flat_on_edge_or_not_at_all() -> None:
    assert through_door(one(2070, 1219, 60), 813, 1981).room.item() == pytest.approx(753)
    assert through_door(one(2000, 900, 850), 813, 1981).room.item() == pytest.approx(813 - 850)


@pytest.mark.parametrize(("low", "high"), [(60.0, 2050.0), (300.0, 2020.0), (700.0, 2000.0)])
def test_a_face_longer_than_the_door_is_high_is_turned_askew(low: float, high: float) -> None:
    """The narrowest upright box round it that is no higher than the door, by every angle."""
    height = 1981.0
    turn = np.radians(np.arange(0, 90, 0.01))
    up = high * np.cos(turn) + low * np.sin(turn)
    across = high * np.sin(turn) + low * np.cos(turn)
    needed = across[up <= height].min()

    found = through_opening(np.array([low]), np.array([high]), 1900.0, height)

    assert found.size.item() == pytest.approx(needed, abs=0.5)  # 0.01 degrees of 2 m are 0.4 mm


def test_what_is_wider_than_both_sides_of_an_opening_never_passes() -> None:
    assert through_opening(np.array([900.0]), np.array([900.0]), 800.0, 800.0).room < 0


def test_a_stair_leaves_less_square_to_its_slope_than_upright() -> None:
    """7 3/4 in by 10 in: 2032 mm of headroom are 2032 x 10 / 12.651 = 1606 mm."""
    mattress = one(2032, 1524, 254)

    assert up_stair(mattress, 800, 2032, 196.85, 254).limit.item() == pytest.approx(1606.2, abs=0.2)
    assert up_stair(mattress, 800, 2032, 196.85, 254).room > 0
    assert up_stair(one(2032, 1930, 254), 800, 2032, 196.85, 254).room < 0


def test_many_things_are_asked_at_once_and_each_gets_its_own_answer() -> None:
    rng = np.random.default_rng(7)
    sizes = np.sort(rng.uniform(20, 2300, (40, 3)), axis=1)

    together = round_corner(sizes, 914, 813, 2134)
    alone = [round_corner(sizes[k : k + 1], 914, 813, 2134).room.item() for k in range(40)]

    assert together.room == pytest.approx(alone)
