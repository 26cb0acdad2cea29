"""A row against the other side: who owns the bearers, how far the boxes reach."""

import pytest

from model.dimensions.side_row import (
    lands_far,
    owns_bearers,
    rail_takes_bearers,
    reaches_far,
    same_layout,
    shares_bearers,
    zone_limit,
)
from model.errors import CannotBuild
from model.materials import slide

FULL = slide("side_mount_full")


def test_shared_bearers_belong_to_the_left() -> None:
    assert owns_bearers(3, True, "left")
    assert not owns_bearers(3, True, "right")
    assert owns_bearers(3, False, "right")


def test_rows_share_bearers_only_where_their_openings_lie_opposite() -> None:
    assert shares_bearers(2, 2, same_layout((1.0, 2.0), (1.0, 2.0)))
    assert not shares_bearers(2, 3, same_layout((1.0, 2.0), (1.0, 1.5, 2.0)))


def test_bearers_do_not_land_on_another_rows_frame_with_other_openings() -> None:
    assert not lands_far(False, False, True, 3, False)
    assert lands_far(False, True, True, 0, False)


def test_a_solid_rail_takes_bearers_within_its_width() -> None:
    assert rail_takes_bearers(False, 39.0, 40.0)
    assert not rail_takes_bearers(False, 216.0, 40.0)
    assert not rail_takes_bearers(True, 39.0, 40.0)


def test_two_rows_across_the_whole_bed_are_refused_with_the_depths_that_work() -> None:
    with pytest.raises(CannotBuild) as refusal:
        reaches_far("full", FULL, 3, 2, 0.0)

    assert refusal.value.field == "depth"


def test_by_slide_a_row_stops_at_a_beam_in_the_middle() -> None:
    assert reaches_far("slide", FULL, 3, 0, 0.0)
    assert not reaches_far("slide", FULL, 3, 0, 19.0)
    assert zone_limit(False, 1580.0, 800.0, 19.0) == 781.0


def test_a_runner_cut_to_its_box_is_half_deep_by_slide() -> None:
    assert not reaches_far("slide", slide("wooden_runner"), 3, 0, 0.0)
