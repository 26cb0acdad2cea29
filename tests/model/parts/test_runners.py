"""Runners, kickers, guides, stops and blocks as parts."""

from model.dimensions.fasteners import longest_screw
from model.frame import side_frame_at
from model.materials import material
from model.parts.fixed_fronts import blocks_cut, fixed_front_blocks
from model.parts.guides import glide_buttons, guides, shoes
from model.parts.runners import kicker_posts, kickers, runners
from model.parts.stops import dust_backs, rear_stops, stop_blocks

FRAME = side_frame_at(-850.0, 1)
POPLAR, PLY = material("yellow_poplar"), material("birch_ply_12")


def test_a_runner_is_flush_with_the_boxs_lower_edge() -> None:
    (runner,) = runners((100.0,), (622.0,), 28.0, 52.0, 700.0, 28.0, 19.0, False, FRAME, POPLAR)

    assert runner.name == "runner"
    assert runner.at[2] + runner.thickness == 71.0


def test_a_runner_under_a_slide_is_a_skid() -> None:
    (skid,) = runners((100.0,), (622.0,), 28.0, 52.0, 700.0, 28.0, 19.0, True, FRAME, POPLAR)

    assert skid.name == "skid"


def test_each_kicker_hangs_on_two_posts() -> None:
    (kicker,) = kickers((100.0,), (622.0,), 28.0, 290.0, 700.0, 28.0, 8.0, FRAME, POPLAR)
    (post,) = kicker_posts(
        (81.0,), (650.0,), (28.0, 520.0), 129.0, 169.0, 64.0, 19.0, FRAME, POPLAR
    )

    assert len(kicker.places) == 2
    assert len(post.places) == 4
    assert post.at[0] + post.thickness == kicker.at[0]
    assert post.at[2] + post.length == kicker.at[2] + kicker.thickness


def test_stops_move_with_their_drawer_and_rear_stops_stay() -> None:
    (stop,) = stop_blocks((350.0,), (), (), 500.0, 57.0, 30.0, 24.0, 19.0, FRAME, POPLAR, "left")
    (rear,) = rear_stops((100.0,), (622.0,), 770.0, 65.0, 64.0, 28.0, 13.0, FRAME, POPLAR)

    assert stop.places[0].drawer == 1
    assert {place.drawer for place in rear.places} == {0}
    assert stop_blocks((), (), (), 0.0, 0.0, 30.0, 24.0, 19.0, FRAME, POPLAR, "left") == ()


def test_guides_run_beside_their_runner_with_play() -> None:
    (guide,) = guides((330.0,), (407.0,), 28.0, 68.0, 700.0, 13.0, 12.0, 0.3, FRAME, PLY, "left")
    (shoe,) = shoes((343.0,), 28.0, 71.0, 700.0, 64.0, 10.0, FRAME, PLY, "left")

    assert guide.held[1].within == 0.3
    assert shoe.at[2] + shoe.thickness == 81.0  # the bottom's lower side


def test_what_a_row_does_not_need_is_not_made() -> None:
    assert runners((), (), 28.0, 52.0, 0.0, 28.0, 19.0, False, FRAME, POPLAR) == ()
    assert glide_buttons((), (), 6.0, 65.0, 12.0, 6.0, 22.0, FRAME) == ()
    assert dust_backs((), 783.0, 71.0, 550.0, 180.0, 0.0, FRAME, PLY) == ()


def test_blocks_are_rabbeted_towards_their_stiles() -> None:
    cuts = blocks_cut(150.0, 20.0, 22.0, 40.0)
    near, far = fixed_front_blocks(
        (80.0,), (630.0,), 6.0, 65.0, 150.0, 40.0, 35.0, 20.0, cuts, longest_screw(50.0),
        FRAME, POPLAR,
    )  # fmt: skip

    assert near.cuts[0].high == (150.0, 20.0, 22.0)
    assert far.cuts[0].low == (0.0, 20.0, 0.0)
    assert blocks_cut(150.0, 20.0, 0.0, 40.0) == ()
