"""Bearers: where they stand, on what they end, and what carries them."""

import pytest

from model.dimensions.bearers import (
    bearer_leg_count,
    bearer_leg_planes,
    bearer_length,
    bearer_places,
    bearers_behind_stiles,
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


def test_a_bearer_that_lands_runs_from_frame_to_frame() -> None:
    assert bearer_length(True, 1580.0, 30.0, 700.0, 0.0, MM) == 1550.0


def test_a_bearer_that_lands_nowhere_ends_behind_its_boxes() -> None:
    length = bearer_length(False, 1580.0, 30.0, 700.5, 6.5, MM)

    assert length == 677.0
    assert zone_back(True, 30.0 + length, 19.0, 700.5, 6.5) == 726.0


def test_no_stretch_of_a_bearer_is_longer_than_the_span() -> None:
    legs = bearer_leg_count(1550.0, 500.0, True, 60.0)
    planes = bearer_leg_planes(legs, 1550.0, 30.0, 64.0, MM)

    ends = [30.0, *(plane + 32.0 for plane in planes), 1580.0]
    assert legs == 3
    assert max(b - a for a, b in zip(ends, ends[1:], strict=False)) <= 500.0
