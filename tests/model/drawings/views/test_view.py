"""What is seen of a few blocks, reckoned by hand."""

import math

import numpy as np
import pytest

from model.drawings.views.gaze import (
    BACK,
    BELOW,
    DIMETRIC_FOOT_LEFT,
    FOOT_LEFT,
    FRONT,
    LEFT,
    PLAN,
)
from model.drawings.views.hiding import hidden
from model.drawings.views.section import Plane
from model.drawings.views.view import seen
from model.part import Face
from tests.model.drawings.views.blocks import block, blocks, bore, cut, scene_of, total

# Where an edge dips behind a face it counts as lying on it for so long.
AT_AN_END = 0.07
CUBE = ((0.0, 0.0, 0.0), (100.0, 100.0, 100.0))


def test_a_cube_is_a_square_from_each_side() -> None:
    """Its far edges lie under its near ones, and are not drawn twice."""
    for gaze in (FRONT, BACK, LEFT, PLAN):
        view = seen(blocks(CUBE), gaze)

        assert len(view.visible) == 4
        assert total(view.visible) == pytest.approx(400.0)
        assert len(view.hidden) == 0
        assert view.outline.all()


def test_a_cube_at_a_slant_shows_nine_edges_and_hides_three() -> None:
    """Each edge is as long as its axis is drawn: 2√2/3, √2/3 and 2√2/3 of its length."""
    view = seen(blocks(CUBE), DIMETRIC_FOOT_LEFT)

    once = 100 * (2 + 1 + 2) * math.sqrt(2) / 3
    assert total(view.visible) == pytest.approx(3 * once, abs=0.05)
    assert total(view.hidden) == pytest.approx(once, abs=3 * AT_AN_END)
    assert total(view.visible[view.outline]) == pytest.approx(2 * once, abs=0.05)


def test_in_isometric_view_the_hidden_edges_of_a_cube_go_on_where_visible_ones_end() -> None:
    """Its near and its far corner are one point, from which six edges run out."""
    view = seen(blocks(CUBE), FOOT_LEFT)

    assert total(view.visible) == pytest.approx(900 * math.sqrt(2 / 3), abs=0.05)
    assert total(view.hidden) == pytest.approx(300 * math.sqrt(2 / 3), abs=3 * AT_AN_END)
    middle = view.hidden[np.abs(view.hidden - [0.0, 100 * math.sqrt(2 / 3)]).max(axis=2) < 0.01]
    assert len(middle) == 3


def test_a_cube_hides_what_lies_behind_it() -> None:
    """A cube half behind another one, to its right and up: two half edges are hidden."""
    view = seen(blocks(CUBE, ((50.0, 200.0, 50.0), (150.0, 300.0, 150.0))), FRONT)

    by_piece = [total(view.visible[view.visible_piece == k]) for k in (0, 1)]
    assert by_piece == pytest.approx([400.0, 300.0])
    assert total(view.hidden) == pytest.approx(100.0)
    assert set(view.hidden_piece.tolist()) == {1}


def test_from_behind_the_other_cube_is_the_whole_one() -> None:
    view = seen(blocks(CUBE, ((50.0, 200.0, 50.0), (150.0, 300.0, 150.0))), BACK)

    by_piece = [total(view.visible[view.visible_piece == k]) for k in (0, 1)]
    assert by_piece == pytest.approx([300.0, 400.0])


def test_an_edge_just_behind_a_seam_is_hidden() -> None:
    """Two flush boards hide what lies behind the line where they meet."""
    scene = blocks(((0.0, 0.0, 0.0), (50.0, 20.0, 100.0)), ((50.0, 0.0, 0.0), (100.0, 20.0, 100.0)))
    edge = np.array([[[50.0, 60.0, 10.0], [50.0, 60.0, 90.0]]])

    dark = hidden(edge, FRONT, scene.bodies.lo, scene.bodies.hi, scene.bodies.facets)

    assert (dark.begin.tolist(), dark.end.tolist()) == ([0.0], [1.0])


def test_an_edge_behind_a_gap_of_a_millimetre_is_seen_through_it() -> None:
    scene = blocks(((0.0, 0.0, 0.0), (49.5, 20.0, 100.0)), ((50.5, 0.0, 0.0), (100.0, 20.0, 100.0)))
    edge = np.array([[[50.0, 60.0, 10.0], [50.0, 60.0, 90.0]]])

    assert len(hidden(edge, FRONT, scene.bodies.lo, scene.bodies.hi, scene.bodies.facets).line) == 0


def test_the_seam_of_two_flush_boards_is_drawn_once() -> None:
    view = seen(
        blocks(((0.0, 0.0, 0.0), (50.0, 20.0, 100.0)), ((50.0, 0.0, 0.0), (100.0, 20.0, 100.0))),
        FRONT,
    )

    assert total(view.visible) == pytest.approx(500.0)


def test_a_groove_is_seen_from_the_end_and_hidden_from_the_side() -> None:
    """A groove 10 wide and 8 deep along the middle of a bar of 100 x 40 x 20."""
    bar = block((100.0, 40.0, 20.0), cuts=(cut((0.0, 15.0, 12.0), (100.0, 25.0, 20.0)),))

    end = seen(scene_of((bar, (0.0, 0.0, 0.0))), LEFT)
    side = seen(scene_of((bar, (0.0, 0.0, 0.0))), FRONT)
    above = seen(scene_of((bar, (0.0, 0.0, 0.0))), PLAN)

    assert total(end.visible) == pytest.approx(2 * (40 + 20) + 2 * 8)
    assert total(side.visible) == pytest.approx(2 * (100 + 20))
    assert side.hidden.tolist() == [[[0.0, 12.0], [100.0, 12.0]]]
    assert total(above.visible) == pytest.approx(2 * (100 + 40) + 2 * 100)


def test_a_tongue_in_its_groove_is_hidden_and_the_joint_shows() -> None:
    """A board of 20 with a tongue of 8 x 10 in a post with a groove of the same size."""
    post = block((40.0, 40.0, 200.0), cuts=(cut((32.0, 15.0, 0.0), (40.0, 25.0, 200.0)),))
    board = block(
        (108.0, 20.0, 200.0),
        cuts=(cut((0.0, 0.0, 0.0), (8.0, 5.0, 200.0)), cut((0.0, 15.0, 0.0), (8.0, 20.0, 200.0))),
    )

    view = seen(scene_of((post, (0.0, 0.0, 0.0)), (board, (32.0, 10.0, 0.0))), FRONT)

    assert total(view.visible) == pytest.approx(2 * (140 + 200) + 200)
    assert view.hidden.tolist() == [[[32.0, 0.0], [32.0, 200.0]]]


@pytest.mark.parametrize("exact", [False, True])
def test_a_bore_is_round_from_its_mouth_and_a_dashed_box_from_its_side(exact: bool) -> None:
    """A bore 20 wide and 15 deep in the top of a block of 100 x 60 x 40, at 30 and 25."""
    part = block(
        (100.0, 60.0, 40.0), holes=(bore((30.0, 25.0, 40.0), (0.0, 0.0, -1.0), 20.0, 15.0),)
    )
    scene = scene_of((part, (0.0, 0.0, 0.0)), exact=exact)

    above, below, front = (
        seen(scene, PLAN),
        seen(scene, BELOW),
        seen(scene, FRONT),
    )

    if exact:
        around = total(above.visible) - 320
        assert around == pytest.approx(2 * math.pi * 10, rel=0.003)  # 48 sides
        assert total(below.hidden) == pytest.approx(around, abs=0.01)
    else:
        assert (above.ring_at.tolist(), above.ring_radius.tolist()) == ([[30.0, 25.0]], [10.0])
        assert (above.ring_hidden.tolist(), below.ring_hidden.tolist()) == ([False], [True])
        assert below.ring_at.tolist() == [[30.0, -25.0]]
    assert total(front.visible) == pytest.approx(280.0)
    assert total(front.hidden) == pytest.approx(15 + 20 + 15, abs=0.1)
    xs = front.hidden[:, :, 0]
    assert (xs.min(), xs.max()) == pytest.approx((20.0, 40.0), abs=0.05)


def test_a_ring_half_behind_a_rail_is_drawn_as_far_as_it_is_seen() -> None:
    part = block(
        (100.0, 60.0, 40.0), holes=(bore((30.0, 25.0, 40.0), (0.0, 0.0, -1.0), 20.0, 15.0),)
    )
    rail = block((100.0, 25.0, 10.0))

    view = seen(scene_of((part, (0.0, 0.0, 0.0)), (rail, (0.0, 0.0, 60.0))), PLAN)

    assert len(view.ring_at) == 0
    curve = view.visible[(np.abs(view.visible - [30.0, 25.0]) < 10.1).all(axis=(1, 2))]
    assert total(curve) == pytest.approx(math.pi * 10, rel=0.01)
    assert curve[..., 1].min() == pytest.approx(25.0, abs=0.01)


def test_a_bore_right_through_is_seen_from_both_sides() -> None:
    """One that ends in the wood is hidden from behind."""
    holes = (
        bore((30.0, 25.0, 40.0), (0.0, 0.0, -1.0), 20.0, 40.0),
        bore((70.0, 25.0, 40.0), (0.0, 0.0, -1.0), 20.0, 39.0),
    )

    view = seen(scene_of((block((100.0, 60.0, 40.0), holes=holes), (0.0, 0.0, 0.0))), BELOW)

    assert sorted(zip(view.ring_at[:, 0].tolist(), view.ring_hidden.tolist(), strict=True)) == [
        (30.0, False), (70.0, True),
    ]  # fmt: skip


def test_a_slanted_bore_has_an_oval_mouth() -> None:
    """At 30° to the face its mouth is twice as long as it is wide."""
    way = (math.cos(math.radians(30)), 0.0, -0.5)
    part = block((200.0, 60.0, 40.0), holes=(bore((60.0, 30.0, 40.0), way, 10.0, 50.0),))

    view = seen(scene_of((part, (0.0, 0.0, 0.0))), PLAN, hidden=False)

    mouth = view.visible[
        (view.visible[..., 0] > 1).all(axis=1) & (view.visible[..., 0] < 199).all(axis=1)
    ]
    mouth = mouth[(mouth[..., 1] > 1).all(axis=1) & (mouth[..., 1] < 59).all(axis=1)]
    span = mouth.max(axis=(0, 1)) - mouth.min(axis=(0, 1))
    assert span == pytest.approx([20.0, 10.0], abs=0.02)


def test_a_dowel_is_a_box_from_its_side_and_a_round_from_its_end() -> None:
    dowel = block((60.0, 10.0, 10.0), is_round=True)

    side = seen(scene_of((dowel, (0.0, 0.0, 0.0))), FRONT)
    end = seen(scene_of((dowel, (0.0, 0.0, 0.0))), LEFT)

    assert side.visible.min(axis=(0, 1)) == pytest.approx([0.0, 0.0], abs=0.2)
    assert side.visible.max(axis=(0, 1)) == pytest.approx([60.0, 10.0], abs=0.2)
    assert len(side.visible) == 4
    assert total(end.visible) == pytest.approx(math.pi * 10, rel=0.02)  # 12 sides
    assert len(end.hidden) == 0


def test_hidden_edges_are_told_of_the_pieces_that_are_asked_for() -> None:
    wall = ((-10.0, -50.0, -10.0), (200.0, -40.0, 200.0))
    scene = blocks(wall, CUBE, ((110.0, 0.0, 0.0), (150.0, 40.0, 40.0)))

    assert set(seen(scene, FRONT).hidden_piece.tolist()) == {1, 2}
    assert set(seen(scene, FRONT, hidden=[2]).hidden_piece.tolist()) == {2}
    assert len(seen(scene, FRONT, hidden=False).hidden) == 0


def test_a_window_is_no_outline() -> None:
    """A frame of four bars, seen through in the middle: only its outside is drawn wide."""
    frame = blocks(
        ((0.0, 0.0, 0.0), (20.0, 10.0, 100.0)), ((80.0, 0.0, 0.0), (100.0, 10.0, 100.0)),
        ((20.0, 0.0, 0.0), (80.0, 10.0, 20.0)), ((20.0, 0.0, 80.0), (80.0, 10.0, 100.0)),
    )  # fmt: skip

    view = seen(frame, FRONT)

    assert total(view.visible[view.outline]) == pytest.approx(400.0)
    assert total(view.visible[~view.outline]) == pytest.approx(4 * 60 + 4 * 20)


def test_the_edges_of_a_turned_scene_turn_with_it() -> None:
    """A headboard laid face down on the bench shows from above what it shows from behind."""
    scene = blocks(CUBE, ((50.0, 200.0, 50.0), (150.0, 300.0, 150.0)))
    over = np.eye(4)
    over[:3, :3] = [[1, 0, 0], [0, 0, -1], [0, 1, 0]]

    lying, standing = seen(scene.turned(over), PLAN), seen(scene, FRONT)

    assert total(lying.visible) == pytest.approx(total(standing.visible))
    assert total(lying.hidden) == pytest.approx(total(standing.hidden))


def test_the_box_of_a_view_holds_it() -> None:
    view = seen(blocks(CUBE, ((50.0, 200.0, 50.0), (150.0, 300.0, 150.0))), FRONT)

    assert tuple(view.box) == pytest.approx((0.0, 0.0, 150.0, 150.0))


def test_nothing_to_see_is_an_empty_view() -> None:
    view = seen(blocks(CUBE), FRONT, Plane(point=(0.0, 200.0, 0.0), normal=(0.0, -1.0, 0.0)))

    assert len(view.visible) == len(view.hidden) == len(view.sections) == 0


def test_all_faces_of_the_stock_carry_holes() -> None:
    """A hole in each of the six faces is a ring from its own side, and hidden from the other."""
    size = (100.0, 60.0, 40.0)
    ways = {
        Face.NEAR: (1, 0, 0), Face.FAR: (-1, 0, 0), Face.LOWER: (0, 1, 0), Face.UPPER: (0, -1, 0),
        Face.BACK: (0, 0, 1), Face.FACE: (0, 0, -1),
    }  # fmt: skip
    for face, way in ways.items():
        middle = [side / 2 for side in size]
        middle[face.axis] = size[face.axis] if face.is_high else 0.0
        toward = (float(way[0]), float(way[1]), float(way[2]))
        part = block(
            size, holes=(bore((middle[0], middle[1], middle[2]), toward, 8.0, 10.0, face),)
        )
        eye = {0: LEFT, 1: FRONT, 2: PLAN}[face.axis]
        own = eye if eye.toward @ np.array(toward) < 0 else None
        view = seen(scene_of((part, (0.0, 0.0, 0.0))), eye)

        assert view.ring_hidden.tolist() == [own is None], face
