"""Heights, rails, caps and posts of headboard and footboard."""

import pytest

from model.dimensions.end_cap import is_skirted, rail_lift_room, skirting_width, stands_in
from model.dimensions.end_members import end_members, low_members, post_grooves
from model.dimensions.ends import (
    clear_height,
    end_height_built,
    end_rail_bottom,
    end_rail_clear,
    end_rail_length,
    end_rail_wall,
    grooved_shoulder,
    height_least,
    lower_rail_width,
    post_wall,
    rail_edge_reach,
    stile_clear,
    upper_rail_wall,
)
from model.errors import CannotBuild
from model.units import GRIDS

GRID = GRIDS["1 mm"]


def test_with_drawers_the_end_rail_is_the_face_frames_top_rail() -> None:
    assert lower_rail_width(True, 102, 140) == 102
    assert lower_rail_width(False, 102, 140) == 140


def test_the_end_rail_is_level_with_the_side_rails() -> None:
    assert end_rail_bottom(400, 140, 20) == 260


def test_an_end_rail_down_in_the_floor_gap_is_refused_with_the_width_that_works() -> None:
    with pytest.raises(CannotBuild) as refusal:
        end_rail_bottom(200, 190, 20)

    assert refusal.value.field == "end_rail_width"


def test_an_end_without_a_style_ends_level_with_the_rails() -> None:
    assert end_height_built("none", 1200, 400, 400, 150, GRID) == 400


def test_a_low_rail_rises_above_the_side_rails_whatever_height_is_wished() -> None:
    assert end_height_built("low rail", 1200, 400, 400, 150, GRID) == 550


def test_an_end_is_as_high_as_wished_on_the_grid() -> None:
    assert end_height_built("panel", 1200.4, 530, 400, 150, GRID) == 1200


def test_an_end_lower_than_its_rails_is_refused() -> None:
    least = height_least(True, 400, 90)

    with pytest.raises(CannotBuild, match="lower than its rails"):
        end_height_built("panel", least - 10, least, 400, 150, GRID)


def test_what_shows_between_the_rails_is_what_they_leave() -> None:
    assert clear_height(True, 1110, 400) == 710
    assert clear_height(False, 1110, 400) == 0


def test_a_rail_is_cut_as_long_as_the_posts_stand_apart_and_its_tenons() -> None:
    assert end_rail_length(1400, 25) == 1400 + 2 * 25


def test_a_tenon_beside_a_groove_stands_back_by_the_grooves_depth() -> None:
    """The panel's corner lies there."""
    assert grooved_shoulder(True, 10, 6) == 10
    assert grooved_shoulder(False, 10, 6) == 6


def test_dowels_keep_clear_of_the_face_frames_stiles_but_tenons_need_not() -> None:
    assert stile_clear(True, "dowel", 6, 26.6) == 26.6
    assert stile_clear(True, "mortise and tenon", 6, 26.6) == 6
    assert stile_clear(False, "dowel", 6, 26.6) == 6


def test_a_rail_without_room_for_its_dowel_is_refused() -> None:
    with pytest.raises(CannotBuild) as refusal:
        end_rail_clear(True, "dowel", 60, 40, 10, 12)

    assert refusal.value.field == "top_rail_width"  # with drawers at the foot it is that rail


def test_stiles_go_deeper_into_the_rails_than_grooves() -> None:
    assert rail_edge_reach("panel", 2, 10, 26.6, 1.6) == 26.6
    assert rail_edge_reach("panel", 0, 10, 26.6, 1.6) == 10
    assert rail_edge_reach("slats", 2, 10, 26.6, 1.6) == 11.6
    assert rail_edge_reach("low rail", 2, 10, 26.6, 1.6) == 0


@pytest.mark.parametrize("wood", [5.9, 6.0])
def test_rails_keep_a_quarter_inch_of_wood(wood: float) -> None:
    walls = [
        lambda: upper_rail_wall(True, 26.6 + wood, 26.6),
        lambda: end_rail_wall(26.6 + 20 + wood, 26.6, True, 20),
        lambda: post_wall(26.6 + wood, 26.6),
    ]
    for wall in walls:
        if wood < 6:
            with pytest.raises(CannotBuild):
                wall()
        else:
            assert wall() == pytest.approx(wood)


def test_a_bottom_rail_is_a_member_only_of_a_face_frame() -> None:
    members = low_members(True, 20, 65, False, 0, 260, 6, 26.6)

    assert [(m.bottom, m.top, m.lower, m.upper) for m in members] == [(20, 65, 6, 26.6)]
    assert low_members(False, 20, 65, False, 0, 260, 6, 6) == ()


def test_members_stand_in_order_from_the_floor() -> None:
    low = low_members(False, 20, 65, True, 20, 260, 6, 6)

    assert end_members(low, (), ()) == low
    assert low[0].top == 260  # the skirting closes up to the end rail


def test_a_posts_groove_reaches_the_floors_of_the_rails_grooves() -> None:
    assert post_grooves(True, 400, 1110, 10) == ((390, 1120),)
    assert post_grooves(False, 400, 1110, 10) == ()


def test_only_a_cap_at_the_bedding_stands_in_over_the_mattress() -> None:
    assert stands_in(True, 12, 600, 610) == 12
    assert stands_in(True, 12, 1200, 610) == 0
    assert stands_in(False, 12, 600, 610) == 0


def test_a_cap_limits_how_far_a_side_rail_is_lifted() -> None:
    assert rail_lift_room(True, 12, 560, 400) == 160
    assert rail_lift_room(True, 0, 400, 400) > 500


def test_a_skirting_closes_the_headboard_only() -> None:
    width = skirting_width(260, 20.4, GRID)

    assert width == 239
    assert is_skirted(True, True, width)
    assert not is_skirted(True, False, width)
    assert not is_skirted(True, True, 10)
