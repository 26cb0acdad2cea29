"""Stiles fill the opening's height, and their joints leave wood in the rails."""

from __future__ import annotations

import pytest

from model.dimensions.side_frames import frame_shoulder, rail_wall, stile_bottom, stile_length
from model.errors import CannotBuild


def test_a_stile_is_as_long_as_the_opening_is_high_and_its_tenons() -> None:
    assert stile_length(233, 0) == 233
    assert stile_length(233, 25) == 233 + 2 * 25


def test_a_stiles_shoulders_stand_on_both_rails() -> None:
    bottom, length = stile_bottom(65, 25), stile_length(233, 25)

    assert bottom + 25 == 65
    assert bottom + length - 25 == 65 + 233


@pytest.mark.parametrize("bays", [((116.0,), ()), ((), (116.0,)), ((116.0,), (785.0,))])
def test_beside_a_panel_a_tenon_keeps_out_of_the_groove(
    bays: tuple[tuple[float, ...], tuple[float, ...]],
) -> None:
    assert frame_shoulder(6, 10, *bays) == 10
    assert frame_shoulder(12, 10, *bays) == 12


def test_without_a_panel_a_tenon_has_its_usual_shoulder() -> None:
    assert frame_shoulder(6, 10, (), ()) == 6


def test_without_a_panel_dowels_and_pockets_have_the_whole_width() -> None:
    assert frame_shoulder(0, 10, (), ()) == 0


def test_a_tenon_that_leaves_too_little_bottom_rail_is_refused_by_its_width() -> None:
    """6 mm (1/4 in): common practice, no source."""
    assert rail_wall(True, 31, 25, 200) == 6
    with pytest.raises(CannotBuild, match=r"leave 5\.0 mm of the bottom rail") as refusal:
        rail_wall(True, 30, 25, 200)

    assert refusal.value.field == "bottom_rail_width"


def test_rails_that_leave_no_opening_are_refused_by_the_rail_height() -> None:
    assert rail_wall(True, 45, 0, 40) == 45
    with pytest.raises(CannotBuild, match="Between the rails 39 mm would be left") as refusal:
        rail_wall(True, 45, 0, 39)

    assert refusal.value.field == "rail_height"


def test_a_plain_side_has_no_frame_to_refuse() -> None:
    assert rail_wall(False, 30, 25, -100) == 5
