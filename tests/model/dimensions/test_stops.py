"""Stops hold drawers that their slide does not."""

import pytest

from model.dimensions.runner_places import has_rear_stop, runs_on_wood
from model.dimensions.stops import button_places, has_stop, side_stop_places, stop_travel
from model.errors import CannotBuild
from model.materials import slide
from model.units import GRIDS

MM = GRIDS["1 mm"]
FULL, WOOD = slide("side_mount_full"), slide("wooden_runner")


def test_a_drawer_that_its_slide_holds_needs_no_stop() -> None:
    assert not has_stop(FULL, 3)
    assert has_stop(WOOD, 3)
    assert not has_stop(WOOD, 0)


def test_three_quarters_of_a_box_come_out_of_a_runner() -> None:
    assert stop_travel(True, WOOD, 600.0, 540.0, MM) == 450.0


def test_a_stop_sits_before_the_box_back() -> None:
    assert stop_travel(True, WOOD, 200.0, 120.0, MM) == 120.0


def test_a_box_too_shallow_for_its_stop_is_refused() -> None:
    with pytest.raises(CannotBuild) as refusal:
        stop_travel(True, WOOD, 160.0, 30.0, MM)

    assert refusal.value.field == "depth"


def test_inset_fronts_close_against_a_stop() -> None:
    assert has_rear_stop("inset", FULL, 1)
    assert has_rear_stop("overlay", WOOD, 1)
    assert not has_rear_stop("overlay", FULL, 1)


def test_a_skid_is_made_only_for_a_box_longer_than_its_slide() -> None:
    assert runs_on_wood(False, True, 700.0, 600.0, 1)
    assert not runs_on_wood(False, True, 600.0, 600.0, 1)


def test_a_drawer_too_narrow_for_runner_and_stops_is_refused() -> None:
    with pytest.raises(CannotBuild):
        side_stop_places(True, True, (0.0,), 12.0, 20.0, 30.0)


def test_inset_fronts_as_thick_as_the_frame_leave_no_room_for_buttons() -> None:
    assert button_places(True, 0.0, (1.0,)) == ()
    assert button_places(True, 22.0, (1.0,)) == (1.0,)
