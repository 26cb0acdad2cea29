"""Drawers from the foot push the side rows back."""

from model.dimensions.foot_row import divider_from, divider_length, row_behind, zone_limit
from model.materials import slide
from model.units import GRIDS

MM = GRIDS["1 mm"]
FULL = slide("side_mount_full")


def test_side_rows_begin_on_the_grid_behind_the_foot_row() -> None:
    behind = row_behind(2, 700.3, 66.675, MM)

    assert behind >= 700.3
    assert MM.holds(behind - 66.675)


def test_without_foot_drawers_the_side_rows_begin_at_the_post() -> None:
    assert row_behind(0, 700.3, 66.675, MM) == 66.675


def test_the_cross_member_has_room_at_both_ends() -> None:
    length = divider_length(1550.0, 2.0, MM)

    assert length == 1546.0
    assert divider_from(length) == -773.0


def test_foot_drawers_stop_before_the_head_posts() -> None:
    assert zone_limit("full", FULL, 2160.0, 2125.0, 1096.0) == 2125.0
    assert zone_limit("half", FULL, 2160.0, 2125.0, 1096.0) == 1096.0
