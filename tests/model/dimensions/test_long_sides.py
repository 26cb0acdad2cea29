"""What stands between the posts of a long side, and how much of it the drawers may take."""

from __future__ import annotations

import pytest

from model.brief.sides import SideKind
from model.dimensions import foot_end, long_sides
from model.dimensions.left_side import frame as left_frame
from model.dimensions.long_sides import (
    bays,
    blind_bay,
    drawer_count,
    far_plane,
    is_framed,
    row_from,
    side_rail_bottom,
)
from model.dimensions.right_side import frame as right_frame
from model.errors import CannotBuild


@pytest.mark.parametrize(
    ("side", "drawers", "framed"),
    [
        ("drawer", 3, True), ("drawer", 0, False), ("plain", 3, False), ("plain", 0, False),
        ("closed frame", 0, True), ("closed frame", 2, True), ("dummy", 0, True),
    ],
)  # fmt: skip
def test_a_drawer_side_without_drawers_is_a_plain_side(
    side: SideKind, drawers: int, framed: bool
) -> None:
    assert is_framed(side, drawers) is framed


def test_only_a_drawer_side_has_drawers() -> None:
    assert drawer_count("drawer", 4) == 4
    for side in ("plain", "closed frame", "dummy"):
        assert drawer_count(side, 4) == 0


def test_a_frame_has_a_bay_for_each_drawer_and_at_least_one() -> None:
    assert bays(True, 4) == 4
    assert bays(True, 0) == 1
    assert bays(False, 4) == 0


def test_a_row_begins_at_the_foot_post_unless_drawers_come_out_at_the_foot() -> None:
    assert row_from(0, 566, 66) == 66
    assert row_from(2, 566, 66) == 566


def test_corner_stile_and_blind_bay_fill_what_the_foot_drawers_take() -> None:
    bay = blind_bay(2, 566, 66, 50)

    assert 66 + 50 + bay == row_from(2, 566, 66)
    assert blind_bay(0, 566, 66, 50) == 0


def test_a_side_rail_hangs_from_the_rail_height() -> None:
    assert side_rail_bottom(400, 184, False) == 400 - 184


def test_a_side_rail_below_the_floor_is_refused_by_its_width() -> None:
    assert side_rail_bottom(200, 200, False) == 0
    with pytest.raises(CannotBuild, match="below the floor") as refusal:
        side_rail_bottom(199, 200, False)

    assert refusal.value.field == "rail_width"


def test_a_framed_side_has_no_solid_rail_to_refuse() -> None:
    side_rail_bottom(199, 200, True)


def test_both_sides_are_laid_out_inwards_from_their_posts() -> None:
    """The same place in either frame is the same distance from its own posts, mirrored."""
    place = (100.0, 28.0, 300.0, 1.0)

    left, right = left_frame(790).matrix @ place, right_frame(790).matrix @ place

    assert list(left[:3]) == [-790 + 28, 100, 300]
    assert list(right[:3]) == [790 - 28, 100, 300]


def test_the_far_side_lies_a_bed_less_its_own_rail_away() -> None:
    assert far_plane(1580, 28) == 1580 - 28
    assert long_sides.middle_plane(790) == 1580 / 2


def test_the_foot_frame_runs_from_post_to_post_and_has_no_blind_bay() -> None:
    assert (foot_end.run_from(733), foot_end.run_to(733)) == (-733, 733)
    assert foot_end.blind_bay(2) == 0
    assert foot_end.row_from(-733) == -733


def test_the_foot_has_a_frame_only_with_drawers() -> None:
    assert not foot_end.is_framed(0)
    assert foot_end.is_framed(1)
