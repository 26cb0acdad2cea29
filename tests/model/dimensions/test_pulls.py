"""Pulls and front screws."""

import pytest

from model.dimensions.box_make import box_pocket_reach
from model.dimensions.pulls import (
    front_screw_heights,
    front_screw_in,
    grip_width,
    pull_grip,
    pull_holes,
    pull_in,
    pull_packer_length,
    pull_packer_thickness,
    pull_packer_width,
    pull_screw,
    second_pull_places,
)
from model.errors import CannotBuild
from model.materials import pocket_screw, pull
from model.units import GRIDS

MM = GRIDS["1 mm"]
BAR = pull("bar_128")


def test_a_single_pull_is_centred() -> None:
    assert pull_in(600.0, "centred", 168.0, MM) == 216.0


def test_a_pair_is_alike_from_both_ends() -> None:
    first = pull_in(800.0, "pair", 168.0, MM)
    second = second_pull_places((first,), "pair", 800.0, first, 168.0)

    assert first + 84.0 == 160.0  # a fifth of the width, to the pull's middle
    assert second == (800.0 - first - 168.0,)


def test_pull_screws_pass_front_and_box_and_bite() -> None:
    grip = pull_grip(19.05, 0.0, 12.0, 3)
    screw = pull_screw(grip, BAR, True)

    assert screw is not None
    assert screw.length_mm >= grip + BAR.least_thread_mm


def test_a_fixed_front_has_no_box_behind_it() -> None:
    assert pull_grip(19.05, 0.0, 12.0, 0) == 19.05


def test_a_bars_holes_stand_apart_by_its_spacing() -> None:
    first, second = pull_holes(BAR)

    assert second - first == BAR.hole_spacing_mm
    assert pull_holes(pull("none")) == ()


def test_a_pull_longer_than_its_front_is_refused() -> None:
    with pytest.raises(CannotBuild) as refusal:
        grip_width("slab", 150.0, 40.0, 168.0, "centred", 1)

    assert refusal.value.field == "pull"


def test_front_screws_find_the_rails_of_a_framed_front() -> None:
    low, high = front_screw_heights(
        "frame and panel", 87.0, 282.0, 52.0, 311.0, 55.0, 10.0, 3, 70.0, MM
    )

    assert 52.0 < low <= 52.0 + 45.0 - 3.1  # the panel's groove begins 45 mm up the rail
    assert 311.0 - 45.0 < high < 282.0


def test_lower_front_screws_stand_an_inch_above_the_bottom_where_there_is_wood() -> None:
    """A low slab, and a framed front whose rail is solid up to 52 + 80 - 10 = 122 mm."""
    slab = front_screw_heights("slab", 87.0, 157.0, 52.0, 311.0, 55.0, 10.0, 3, 70.0, MM)
    framed = front_screw_heights(
        "frame and panel", 87.0, 282.0, 52.0, 311.0, 80.0, 10.0, 3, 70.0, MM
    )

    assert slab == (87.0 + 25.0, 139.0)  # a quarter of 70 below 157, on the mm from the box's edge
    assert framed[0] == 87.0 + 25.0


def test_in_a_box_too_low_for_that_the_rows_keep_apart() -> None:
    low, high = front_screw_heights("slab", 87.0, 127.0, 52.0, 311.0, 55.0, 10.0, 3, 70.0, MM)

    assert (low, high) == (97.0, 117.0)


def test_rails_that_front_screws_would_miss_are_refused() -> None:
    with pytest.raises(CannotBuild) as refusal:
        front_screw_heights("frame and panel", 87.0, 282.0, 52.0, 311.0, 40.0, 10.0, 3, 70.0, MM)

    assert refusal.value.field == "front_stile_width"


def test_a_packer_fills_the_air_between_a_panel_and_the_box_front() -> None:
    """Of a frame 19 mm thick, a panel of 9 set 6.35 behind its face leaves 3.7."""
    screw = pull_screw(24.0, BAR, True)

    assert pull_packer_thickness("frame and panel", 19.05, 6.35, 9.0, screw, 2) == pytest.approx(
        3.7
    )
    assert pull_packer_thickness("slab", 19.05, 0.0, 9.0, screw, 2) == 0.0
    assert pull_packer_thickness("frame and panel", 19.05, 6.35, 9.0, None, 2) == 0.0
    assert pull_packer_thickness("frame and panel", 19.05, 6.35, 9.0, screw, 0) == 0.0


def test_a_packer_lies_behind_both_screws_of_its_pull_and_within_the_panel() -> None:
    width = pull_packer_width(120.0, MM)

    assert width == 38.0
    assert pull_packer_length(BAR, width, MM) == BAR.hole_spacing_mm + width
    assert pull_packer_width(30.0, MM) == 30.0


def test_screws_of_a_narrow_front_stand_clear_of_the_pockets_of_its_box() -> None:
    """Pockets at 15 degrees in a sheet of 12: 6 / tan 15 is 22.4, and the half bore, 4.76, comes
    out 4.76 / sin 15 = 18.4 farther.
    """
    reach = box_pocket_reach(pocket_screw(12.0), 12.0)

    assert reach == pytest.approx(22.4 + 18.4, abs=0.1)
    assert front_screw_in(200.0, (), 55.0, (0.0,), reach, MM) == 49.0
    assert front_screw_in(600.0, (), 55.0, (0.0,), reach, MM) == 100.0
    assert front_screw_in(200.0, (), 55.0, (0.0,), 0.0, MM) == 33.0
