"""The two halves of a knock-down joint stand where they meet."""

import pytest

from model.joints.connector import (
    KnockDown,
    in_post,
    in_rail_end,
    in_stile_edge,
    plate_screws,
    through_nut,
)
from model.materials import connector, wood_screw
from model.part import Face

HOOK = connector("hook_plate_150")
PLATES = KnockDown(
    row=HOOK, screw=wood_screw(HOOK.screw_gauge), screw_length=38, bolt_hole=0, counterbore=0,
    in_rail=0,
)  # fmt: skip
BOLT = connector("cross_bolt_m6")
BOLTS = KnockDown(row=BOLT, screw=None, screw_length=0, bolt_hole=7, counterbore=22, in_rail=50)
RAIL = (2000.0, 184.0, 22.0)
POST = (900.0, 70.0, 66.0)


def test_both_recesses_are_as_large_as_the_plate() -> None:
    (rail,) = in_rail_end(PLATES, RAIL, Face.NEAR, (92,)).cuts
    post = in_post(PLATES, POST, (6, 28), (300,)).cuts[0]

    long, wide = pytest.approx(HOOK.plate_length_mm), pytest.approx(HOOK.plate_width_mm)
    assert rail.high[1] - rail.low[1] == long and post.high[0] - post.low[0] == long
    assert rail.high[2] - rail.low[2] == wide and post.high[1] - post.low[1] == wide
    assert rail.high[0] == HOOK.plate_thickness_mm
    assert post.low[2] == 66 - HOOK.plate_thickness_mm


def test_the_plate_lies_in_the_middle_of_the_rails_thickness() -> None:
    (rail,) = in_rail_end(PLATES, RAIL, Face.FAR, (92,)).cuts
    post = in_post(PLATES, POST, (6, 28), (300,)).cuts[0]

    assert (rail.low[2] + rail.high[2]) / 2 == 11
    assert (post.low[1] + post.high[1]) / 2 == 17  # the rail stands back by 6
    assert rail.high[0] == 2000


def test_hooks_have_their_pocket_inside_the_posts_recess() -> None:
    recess, pocket = in_post(PLATES, POST, (6, 28), (300,)).cuts

    assert all(recess.low[k] < pocket.low[k] for k in (0, 1))
    assert all(pocket.high[k] < recess.high[k] for k in (0, 1))
    assert 66 - pocket.low[2] == HOOK.plate_thickness_mm + HOOK.pocket_depth_mm


def test_plate_screws_stay_clear_of_the_pocket() -> None:
    for count in (2, 3, 4):
        spots = plate_screws(100, count)

        assert len(spots) == count
        assert all(0 < at < 25 or 75 < at < 100 for at in spots)


def test_an_end_stile_takes_plates_but_no_bolts() -> None:
    stile = (200.0, 50.0, 22.0)

    assert in_stile_edge(PLATES, stile, Face.UPPER, (100,)).cuts[0].high[1] == 50
    assert in_stile_edge(BOLTS, stile, Face.UPPER, (100,)).cuts == ()


def test_a_bolts_holes_lie_on_one_line_through_post_and_rail() -> None:
    head, through = in_post(BOLTS, POST, (6, 28), (300,)).holes
    bolt, nut = in_rail_end(BOLTS, RAIL, Face.FAR, (92,)).holes

    assert head.at[:2] == through.at[:2] == (300, 17)
    assert head.depth + through.depth == 66
    assert bolt.at == (2000, 92, 11) and bolt.toward == (-1, 0, 0)
    assert nut.at == (2000 - BOLT.nut_from_end_mm, 92, 22)


def test_a_nuts_hole_ends_where_the_nut_is_centred() -> None:
    nut = in_rail_end(BOLTS, RAIL, Face.NEAR, (92,)).holes[1]

    assert nut.depth - BOLT.nut_length_mm / 2 == 11


def test_a_nut_is_drilled_across_its_middle() -> None:
    hole = through_nut(16, 10, 6)

    assert hole.at == pytest.approx((8, 0, 5))
    assert hole.depth == 10
