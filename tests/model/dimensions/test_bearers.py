"""Bearers: where they stand, on what they end, and what carries them."""

import pytest

from model.dimensions.bearers import (
    bearer_end_gap,
    bearer_leg_count,
    bearer_leg_planes,
    bearer_length,
    bearer_places,
    bearer_run,
    bearers_behind_stiles,
    bearers_take_screws,
    bracket_screw_heights,
    bracket_screw_spots,
    near_screw,
    slanting_screw,
    zone_back,
)
from model.errors import CannotBuild
from model.units import GRIDS

MM = GRIDS["1 mm"]


def test_a_bearer_stands_flush_with_each_edge_of_the_opening() -> None:
    places = bearer_places((100.0, 700.0), 550.0, False, 19.0, 2)

    assert places == (81.0, 650.0, 681.0, 1250.0)


def test_a_centre_runner_lies_under_the_middle() -> None:
    assert bearer_places((100.0,), 550.0, True, 64.0, 1) == (343.0,)


def test_two_bearers_that_do_not_share_a_stile_are_refused() -> None:
    with pytest.raises(CannotBuild) as refusal:
        bearers_behind_stiles(2, False, 19.0, 37.0, 50.0)

    assert refusal.value.field == "mid_stile"


def test_a_bearer_wider_than_its_end_stile_is_refused() -> None:
    with pytest.raises(CannotBuild) as refusal:
        bearers_behind_stiles(1, False, 30.0, 60.0, 25.0)

    assert refusal.value.field == "end_stile_least"


def test_a_bearer_that_lands_runs_from_frame_to_frame_but_for_room_to_pass_its_ends() -> None:
    """1.5 mm at each end, on the mm."""
    run = bearer_run(True, 1580.0, 30.0, 700.0, 0.0, MM)

    assert run == 1550.0
    assert bearer_length(run, True, MM) == 1547.0
    assert bearer_end_gap(run, 1547.0) == 1.5


def test_a_bearer_that_lands_nowhere_ends_behind_its_boxes() -> None:
    run = bearer_run(False, 1580.0, 30.0, 700.5, 6.5, MM)
    length = bearer_length(run, False, MM)

    assert length == run == 677.0
    assert zone_back(True, 30.0 + length, 19.0, 700.5, 6.5) == 726.0


def test_no_stretch_of_a_bearer_is_longer_than_the_span() -> None:
    legs = bearer_leg_count(1550.0, 500.0, True, 60.0)
    planes = bearer_leg_planes(legs, 1550.0, 30.0, 64.0, MM)

    ends = [30.0, *(plane + 32.0 for plane in planes), 1580.0]
    assert legs == 3
    assert max(b - a for a, b in zip(ends, ends[1:], strict=False)) <= 500.0


@pytest.mark.parametrize(("away", "gauge"), [(10.5, "8"), (9.525, "6")])
def test_a_thinner_screw_keeps_clear_of_a_nearer_face(away: float, gauge: str) -> None:
    """2.5 diameters: 10.4 mm for No. 8, 8.8 for No. 6."""
    assert slanting_screw(50.0, away, 100.0, 13.5).screw.key == gauge


def test_a_thinner_screw_bites_where_a_thick_one_is_too_short() -> None:
    """63.5 mm between the edges take 38.1 mm; 22.5 of these in the bearer leave 3.7 x 4.17."""
    found = slanting_screw(60.0, 12.7, 63.5, 22.5)

    assert (found.screw.key, found.length) == ("6", 38.1)


def test_a_slanting_screw_keeps_its_point_in_the_frame() -> None:
    """At 45 degrees it goes 1.41 times as far as it is deep."""
    for frame in (19.05, 25.4, 38.1):
        assert near_screw(9.5, 0.0, 12.0, 76.2, frame).length / 2**0.5 <= 9.5 + frame - 3


@pytest.mark.parametrize("height", [50.8, 57.15, 63.5, 76.2])
def test_screws_from_both_edges_stay_clear_of_each_other(height: float) -> None:
    """Each point moves up or down by 0.71 of its screw; two diameters of No. 6 stay between."""
    screw = slanting_screw(45.0, 9.525, height, 13.5)

    assert height - 2 * screw.length / 2**0.5 >= 2 * screw.screw.shank_mm - 1e-6


def test_bearers_too_low_for_two_screws_are_refused() -> None:
    low, high = (slanting_screw(45.0, 9.525, height, 13.5) for height in (40.0, 63.5))
    sizes = ("screws", 2, 9.525, 0.0)

    assert bearers_take_screws(*sizes, 63.5, high, high)
    with pytest.raises(CannotBuild, match=r"bearers 40\.0 mm high") as refusal:
        bearers_take_screws(*sizes, 40.0, low, high)
    assert refusal.value.field == "bearer_fixing"
    assert not bearers_take_screws("brackets", 2, 9.525, 0.0, 40.0, low, low)
    assert not bearers_take_screws("screws", 0, 9.525, 0.0, 40.0, low, low)


def test_screws_that_slant_into_the_frame_have_places_as_those_of_brackets() -> None:
    """Under a bearer at 65: a leaf of 25.4 has its holes at 0.315 and 0.83 of it below; a slanting
    screw goes in as high above the lower edge as it starts from the end.
    """
    brackets = bracket_screw_heights(2, 25.4, 65.0 - 25.4, 25.4, False, 65.0, 9.5)

    assert brackets == pytest.approx((65.0 - 0.83 * 25.4, 65.0 - 0.315 * 25.4))
    assert bracket_screw_heights(2, 0.0, 65.0, 25.4, False, 65.0, 9.5) == (74.5,)
    assert bracket_screw_heights(2, 0.0, 65.0, 25.4, True, 65.0, 9.5) == ()
    assert bracket_screw_heights(0, 25.4, 39.6, 25.4, False, 65.0, 9.5) == ()
    assert bracket_screw_spots((81.0,), 19.0, 0.0, False) == (90.5,)
    assert bracket_screw_spots((81.0,), 64.0, 0.0, True) == ()
