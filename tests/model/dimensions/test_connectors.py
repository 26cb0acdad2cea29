"""Where the connectors are, and that wood is left round them."""

from dataclasses import replace

import pytest

from model.dimensions.connector_sizes import (
    bolt_in_rail,
    bolt_in_rail_least,
    bolt_past_tenons,
    counterbore_depth,
    end_stile_ground,
    nut_length,
    plate_screw_length,
    plate_width,
    post_behind_pocket,
    post_ground,
    slanted_bearer_ground,
)
from model.dimensions.connectors import (
    bolt_heights,
    bolt_in_bottom_rail,
    connector_in_post,
    connector_in_rail,
    connector_in_stile,
    connector_up,
    lift_spare,
    nut_places,
    plate_middle,
    plate_room,
)
from model.errors import CannotBuild
from model.materials import connector

PLATE = connector("hook_plate_150")
BOLT = replace(
    connector("cross_bolt_m6"), bolt_length_mm=100, nut_from_end_mm=35, nut_diameter_mm=10,
    nut_length_mm=16, counterbore_depth_mm=22,
)  # fmt: skip


def test_a_plate_sits_in_the_middle_of_its_rail_or_end_stile() -> None:
    assert plate_middle(False, 65, 233, 216, 184) == 216 + 92
    assert plate_middle(True, 65, 200, 216, 184) == 65 + 100


def test_post_and_rail_agree_on_the_height_of_a_plate() -> None:
    (up,) = connector_up(PLATE, 308, ())

    (in_post,) = connector_in_post((up,), 4)
    (in_rail,) = connector_in_rail(False, (up,), 216)

    assert in_post + 4 == in_rail + 216 == 308
    assert connector_in_stile(PLATE, True, 165, 40) == (125,)


def test_a_plate_longer_than_its_place_is_refused() -> None:
    length = PLATE.plate_length_mm

    assert plate_room(PLATE, False, 0, length + 30, length) == 30
    with pytest.raises(CannotBuild):
        plate_room(PLATE, True, length + 20, 400, length)


def test_a_rail_too_thin_for_plate_or_nut_is_refused() -> None:
    with pytest.raises(CannotBuild):
        plate_width(PLATE, PLATE.plate_width_mm + 2)
    with pytest.raises(CannotBuild) as refusal:
        nut_length(BOLT, 20)

    assert refusal.value.field == "frame_stock"


def test_a_pocket_leaves_half_an_inch_of_post() -> None:
    deep = PLATE.plate_thickness_mm + PLATE.pocket_depth_mm

    assert post_behind_pocket(deep + 13, PLATE) == pytest.approx(13)
    with pytest.raises(CannotBuild):
        post_behind_pocket(deep + 12, PLATE)


def test_two_bolts_keep_a_plain_rail_from_turning() -> None:
    assert bolt_heights(BOLT, False, 400, 200, 200, 0, 0) == (250, 350)


def test_each_rail_of_a_face_frame_takes_a_bolt_clear_of_the_stile() -> None:
    up = bolt_in_bottom_rail(BOLT, True, 20, 60, 26, ())

    assert up == 20 + (60 - 26) / 2
    with pytest.raises(CannotBuild):
        bolt_in_bottom_rail(BOLT, True, 20, 45, 26, ())


def test_the_lower_bolt_keeps_its_nut_clear_of_the_screws_of_brackets() -> None:
    """No. 8 screws are 4.17 mm thick, the nut's hole is 10 mm: under a screw at 42.92 mm, half of
    it, its whole thickness of wood and half of the hole stay above the bolt.
    """
    up = bolt_in_bottom_rail(BOLT, True, 20, 57, 18.4, (42.918, 55.999))

    assert up == pytest.approx(42.918 - 4.17 / 2 - 4.17 - 10 / 2)


def test_a_bolt_goes_no_lower_than_its_nut_has_wood_under_it() -> None:
    up = bolt_in_bottom_rail(BOLT, True, 20, 57, 18.4, (30.0, 43.0))

    assert up == 20 + 6 + 10 / 2  # the check of fasteners then speaks up


def test_a_bolt_reaches_through_its_nut() -> None:
    least = bolt_in_rail_least(BOLT)
    depth = counterbore_depth(BOLT, 100, 66, least)

    assert least == 35 + 5 + 3
    assert depth == 22  # 100 is long enough for 66 - 22 of post and 43 of rail
    assert bolt_in_rail(100, 66, depth) == 56 >= least


def test_a_deep_post_gets_a_deeper_counterbore() -> None:
    depth = counterbore_depth(BOLT, 100, 90, 43)

    assert depth == 33
    assert bolt_in_rail(100, 90, depth) == 43


def test_bolts_pass_beside_the_end_rails_tenons() -> None:
    with pytest.raises(CannotBuild) as refusal:
        bolt_past_tenons(BOLT, 100, 40, 26.6, 9.5, 6, 22)

    assert refusal.value.field == "post_width"


def test_nuts_are_as_far_from_both_ends_of_the_rail() -> None:
    first, last = nut_places(66, 2066, BOLT, 10)

    assert (first + 5) - 66 == 35 == 2066 - (last + 5)


def test_plate_screws_stop_short_of_the_end_rails_joints() -> None:
    narrow = post_ground(66, 38, 26.6, 6, 22, 28)

    assert narrow == 66 - 28
    assert post_ground(66, 70, 26.6, 6, 22, 28) == 66
    assert plate_screw_length(PLATE, False, False, 50, narrow) <= narrow - 3


def test_plate_screws_stay_inside_the_end_stile() -> None:
    assert plate_screw_length(PLATE, True, False, 30, 66) <= 27
    with pytest.raises(CannotBuild) as refusal:
        plate_screw_length(PLATE, True, False, 12, 66)
    assert refusal.value.field == "end_stile_least"


def test_a_cap_in_the_way_of_lifting_is_refused_for_hooks_only() -> None:
    assert lift_spare(0, 5, 1000) == 5
    with pytest.raises(CannotBuild, match="lifted"):
        lift_spare(19, 5, 1000)


def test_screws_of_a_plate_end_before_those_that_slant_through_a_bearer() -> None:
    """A bearer of 19 at the stile's inner edge: its screws come in 9.5 off it; half a No. 10 and
    a diameter of it, 4.83, stay between, of which 3 are before any point.
    """
    lost = slanted_bearer_ground("screws", True, False, 19.0)

    assert lost == pytest.approx(9.5 + 1.5 * 4.83 - 3.0)
    assert slanted_bearer_ground("brackets", True, False, 19.0) == 0.0
    assert slanted_bearer_ground("screws", False, False, 19.0) == 0.0
    assert end_stile_ground(50.0, 10.0, (), (), (), (), lost) == 50.0 - lost
    assert end_stile_ground(50.0, 15.0, (100.0,), (), (), (), lost) == 35.0
