"""Heights of what carries the boxes."""

import pytest

from model.dimensions.brackets import bracket_bottom
from model.dimensions.dividers import divider_bottom, divider_height, divider_leg_places
from model.dimensions.runners import (
    bearer_bottom,
    bearer_screw_up,
    bearer_top,
    kicker_height,
    kicker_height_most,
    slide_bearer_bottom,
)
from model.dimensions.stop_heights import guide_drop, stop_bottom, stop_height
from model.errors import CannotBuild
from model.units import GRIDS

MM = GRIDS["1 mm"]


def test_a_slides_bearer_stands_level_with_the_opening_where_it_can() -> None:
    """Its brackets then find the bottom rail; 8.8 mm of wood stay above the slide's screws."""
    assert slide_bearer_bottom(65.0, 93.5, 64.0, 25.4, MM) == 65.0
    assert slide_bearer_bottom(65.0, 121.0, 64.0, 25.4, MM) == 65.0 + 1.0  # 121 + 8.8 - 64, up
    assert slide_bearer_bottom(65.0, 120.0, 64.0, 25.4, MM) == 65.0


def test_a_higher_bearer_keeps_its_brackets_screws_off_the_joint_of_rail_and_stile() -> None:
    """They go in 8.0 and 21.1 mm below it: 8 mm higher, the upper one would be on the joint."""
    assert slide_bearer_bottom(65.0, 127.0, 64.0, 25.4, MM) == 65.0 + 15.0  # 8.0 + 6, up
    assert slide_bearer_bottom(65.0, 127.0, 64.0, 0.0, MM) == 65.0 + 7.0  # 6.8, up


def test_bearers_begin_where_what_they_carry_begins() -> None:
    assert bearer_bottom(True, False, False, 71.0, 19.0, 52.0, 65.0) == 52.0
    assert bearer_bottom(False, True, False, 71.0, 19.0, 50.0, 65.0) == 50.0
    assert bearer_bottom(False, False, False, 71.0, 19.0, 52.0, 65.0) == 65.0


def test_a_bearer_too_low_for_its_screws_is_refused_with_the_height_that_works() -> None:
    with pytest.raises(CannotBuild) as refusal:
        bearer_top(52.0, 50.0, 298.0, True, 109.0, True)

    assert refusal.value.field == "bearer_height"


def test_a_bearer_higher_than_the_opening_is_refused() -> None:
    with pytest.raises(CannotBuild):
        bearer_top(65.0, 200.0, 250.0, True, 93.5, True)


def test_brackets_need_the_frame_behind_them() -> None:
    with pytest.raises(CannotBuild) as refusal:
        bracket_bottom(45.0, 25.4, 20.0, True)

    assert refusal.value.field == "bearer_fixing"


def test_kickers_end_below_the_beam_that_they_cross() -> None:
    assert kicker_height_most(20.0, 3.0, True, 290.0, 280.0) == 10.0
    assert kicker_height_most(20.0, 3.0, False, 290.0, 280.0) == 17.0


def test_a_kicker_without_room_is_refused_by_the_room_above_the_box() -> None:
    with pytest.raises(CannotBuild) as refusal:
        kicker_height(2.0, True, True, MM)

    assert refusal.value.field == "box_top_room"


def test_a_flat_runner_that_misses_the_rail_is_refused() -> None:
    with pytest.raises(CannotBuild) as refusal:
        bearer_screw_up(True, 65.0, 64.0, 19.0, "brackets", True)

    assert refusal.value.field == "box_bottom_room"


def test_a_flat_runner_that_meets_too_little_rail_is_not_screwed() -> None:
    """No. 6 in the middle of what meets: 2 x 2.5 x 3.51 = 17.55 mm."""
    with pytest.raises(CannotBuild, match=r"meet 17\.0 mm of the bottom rail") as refusal:
        bearer_screw_up(True, 65.0, 48.0, 19.0, "screws", True)

    assert refusal.value.field == "bearer_fixing"
    assert bearer_screw_up(True, 65.0, 47.0, 19.0, "screws", True) == 9.0
    assert bearer_screw_up(True, 65.0, 48.0, 19.0, "brackets", True) == 8.5


def test_a_divider_and_its_legs_reach_from_floor_to_bearer_top() -> None:
    height = divider_height(64.0, 25.4, 129.0, MM)

    assert height + divider_bottom(129.0, height) == 129.0


def test_a_low_divider_stands_on_the_floor_itself() -> None:
    assert divider_leg_places(True, 0.0, 0.0, 1500.0, 64.0, 1000.0) == ()
    assert len(divider_leg_places(True, 40.0, 0.0, 1500.0, 64.0, 1000.0)) == 3


def test_a_stop_catches_behind_the_bottom_rail() -> None:
    height = stop_height(10.0, 6.0, MM)

    assert stop_bottom(81.0, height) == 57.0  # 8 below an opening that begins at 65


def test_guide_strips_pass_over_the_bottom_rail() -> None:
    assert 0 < guide_drop(6.0, True, True, MM) < 6.0
