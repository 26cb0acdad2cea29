"""Runners, kickers, guides, stops and blocks as parts."""

from model.dimensions.fasteners import longest_screw
from model.dimensions.runners import runner_screw
from model.dimensions.side_row import block_bottom
from model.frame import side_frame_at
from model.materials import material
from model.part import Made, Part, Screw
from model.parts.bearer_screwing import runner_screw_places
from model.parts.fixed_fronts import blocks_cut, blocks_screwed, fixed_front_blocks
from model.parts.guides import glide_buttons, guides, shoes
from model.parts.runners import kicker_posts, kickers, runners
from model.parts.stops import dust_backs, rear_stops, stop_blocks
from model.units import Places, ShopGrid

FRAME = side_frame_at(-850.0, 1)
POPLAR, PLY = material("yellow_poplar"), material("birch_ply_12")
GRID = ShopGrid(step=1.0, unit="mm")


def runners_of(*, has_skids: bool, places: Places = (50.0, 650.0)) -> Made:
    """A pair of runners 700 mm long, 28 mm wide and 19 mm thick, from 52 mm above the floor."""
    return runners(
        (100.0,), (622.0,), 28.0, 52.0, 700.0, 28.0, 19.0, has_skids,
        runner_screw(28.0, 19.0, 19.05), places, FRAME, POPLAR,
    )  # fmt: skip


def test_a_runner_is_flush_with_the_boxs_lower_edge() -> None:
    runner, far = runners_of(has_skids=False)

    assert runner.name == far.name == "runner"
    assert runner.at[2] + runner.thickness == 71.0


def test_a_runner_under_a_slide_is_a_skid() -> None:
    assert {each.name for each in runners_of(has_skids=True)} == {"skid"}


def test_runners_are_screwed_towards_their_bearers_through_the_middle_of_their_edge() -> None:
    """The near one's bearer lies before the opening, the far one's behind it."""
    near, far = runners_of(has_skids=True)

    for part, edge, way in ((near, 28.0, -1.0), (far, 0.0, 1.0)):
        assert [hole.at for hole in part.holes] == [(50.0, edge, 9.5), (650.0, edge, 9.5)]
        assert [screw.toward for screw in part.screws] == [(0.0, way, 0.0)] * 2
        assert part.held[0].joint == "glued and screwed"


def test_a_runner_too_thin_for_any_screw_is_glued_alone() -> None:
    """No. 4 wants 2.5 x 2.84 = 7.1 mm on either side: 14.2 mm."""
    screw = runner_screw(28.0, 12.0, 19.05)
    places = runner_screw_places((100.0,), 700.0, 12.0, 52.0, 28.0, screw, (), GRID)
    made = runners_of(has_skids=True, places=places)

    assert places == ()
    assert made[0].screws == made[0].holes == ()
    assert made[0].held[0].joint == "glued"


def test_a_runners_screws_split_neither_its_edges_nor_come_through_the_bearer() -> None:
    """No. 8 wants 10.4 mm on either side, of which 19.05 mm have 9.5; No. 6 wants 8.8. 28 + 19.05
    less 3 mm are 44.05 mm: 1 5/8 in is the longest sold below it.
    """
    thin, thick = runner_screw(28.0, 19.05, 19.05), runner_screw(28.0, 22.0, 19.05)

    assert (thin.screw.key, thin.length) == ("6", 41.275)
    assert (thick.screw.key, thick.length) == ("8", 38.1)


def test_a_runners_screws_stand_clear_of_what_goes_into_its_bearer() -> None:
    """A bracket under the bearer at 300 mm: its screw, up to 90 mm above the floor, crosses the
    line of the runner's screws at 61.5 mm; 3.51 mm of shank at half each and one between make 7 mm.
    """
    up = Screw("wood screw 6", (0.0, 0.0, 0.0), (0.0, 1.0, 0.0), 30.0, 3.51, "bearers")
    bracket = Part(
        name="bracket", assembly="under the bed", length=25.0, width=25.0, thickness=14.0,
        lies="vzu", at=(100.0, 28.0 + 250.0, 60.0), frame=FRAME, material="metal", screws=(up,),
    )  # fmt: skip
    screw = runner_screw(28.0, 19.05, 19.05)
    args = ((100.0,), 500.0, 19.05, 52.0, 28.0, screw)

    assert runner_screw_places(*args, (), GRID) == (50.0, 250.0, 450.0)
    clear = runner_screw_places(*args, (bracket,), GRID)
    assert min(abs(each - 250.0) for each in clear) >= 7.0


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
    (rear,) = rear_stops((100.0,), (622.0,), 770.0, 65.0, 64.0, 28.0, 13.0, False, FRAME, POPLAR)

    assert stop.places[0].drawer == 1
    assert {place.drawer for place in rear.places} == {0}
    assert rear.held[0].joint == "glued"  # 13 mm are too thin for a screw beside a bracket's
    assert stop_blocks((), (), (), 0.0, 0.0, 30.0, 24.0, 19.0, FRAME, POPLAR, "left") == ()


def test_guides_run_beside_their_runner_with_play() -> None:
    (guide,) = guides((330.0,), (407.0,), 28.0, 68.0, 700.0, 13.0, 12.0, 0.3, FRAME, PLY, "left")
    (shoe,) = shoes((343.0,), 28.0, 71.0, 700.0, 64.0, 10.0, FRAME, PLY, "left")

    assert guide.held[1].within == 0.3
    assert shoe.at[2] + shoe.thickness == 81.0  # the bottom's lower side


def test_what_a_row_does_not_need_is_not_made() -> None:
    screw = runner_screw(28.0, 19.0, 19.05)
    assert runners((), (), 28.0, 52.0, 0.0, 28.0, 19.0, False, screw, (), FRAME, POPLAR) == ()
    assert glide_buttons((), (), 6.0, 65.0, 12.0, 6.0, 22.0, FRAME) == ()
    assert dust_backs((), 783.0, 71.0, 550.0, 180.0, 0.0, FRAME, PLY) == ()


def test_blocks_are_rabbeted_towards_their_stiles() -> None:
    cuts = blocks_cut(150.0, 20.0, 22.0, 40.0)
    screwed = blocks_screwed(150.0, 40.0, 35.0, 20.0, longest_screw(50.0), GRID)
    near, far = fixed_front_blocks(
        (80.0,), (630.0,), 6.0, 65.0, 150.0, 40.0, 35.0, cuts, screwed, FRAME, POPLAR
    )

    assert near.cuts[0].high == (150.0, 20.0, 22.0)
    assert far.cuts[0].low == (0.0, 20.0, 0.0)
    assert blocks_cut(150.0, 20.0, 0.0, 40.0) == ()


def test_blocks_have_holes_for_the_screws_of_their_front() -> None:
    """A quarter of 150 mm from each end is 37.5 mm, told as 38 on a grid of whole mm; half of the
    20 mm that stand in the opening is 10 mm from the edge there: the far edge of the near block.
    """
    near, far = blocks_screwed(150.0, 40.0, 35.0, 20.0, longest_screw(50.0), GRID)

    assert [hole.at for hole in near.holes] == [(38.0, 30.0, 35.0), (112.0, 30.0, 35.0)]
    assert [hole.at for hole in far.holes] == [(38.0, 10.0, 35.0), (112.0, 10.0, 35.0)]
    assert {hole.kind for hole in (*near.holes, *far.holes)} == {"shank hole"}
    assert len(near.screws) == len(far.screws) == 2


def test_blocks_stand_clear_of_bearers_that_their_side_comes_past() -> None:
    """1/8 in, 3 mm, over the bearers that end on the same stiles; none where no bearer does."""
    assert block_bottom(3, True, 128.0, 77.0) == 131.0
    assert block_bottom(0, True, 128.0, 77.0) == block_bottom(3, False, 128.0, 77.0) == 77.0
