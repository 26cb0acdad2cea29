"""Cut faces against areas and volumes that are known otherwise."""

from __future__ import annotations

import math
from pathlib import Path

import numpy as np
import pytest
from manifold3d import Manifold

from model.bed import Bed, solve
from model.designs import read
from model.drawings.views.gaze import BACK, FOOT_LEFT, FRONT, LEFT, PLAN, RIGHT, Gaze
from model.drawings.views.scene import Scene, bed_scene
from model.drawings.views.section import Plane, Section, placed, plane_across
from model.drawings.views.view import View, seen
from model.parts.pieces import Floats
from tests.model.drawings.views.blocks import block, blocks, bore, cut, scene_of, total


@pytest.fixture(scope="module")
def queen() -> Bed:
    return solve(read(Path("resources/demos/painted_storage_queen.bedwright")))


def area(loop: Floats) -> float:
    x, y = loop.T
    return float(x @ np.roll(y, -1) - y @ np.roll(x, -1)) / 2


def net_area(face: Section) -> float:
    return area(face.outline) + sum(area(hole) for hole in face.holes)


def is_met(body: Manifold, gaze: Gaze, low: float, high: float) -> bool:
    """Whether a body reaches into the space between two planes."""
    off = np.asarray(body.to_mesh64().vert_properties)[:, :3] @ gaze.toward
    return bool(off.min() < high and off.max() > low)


def cut_at(scene: Scene, gaze: Gaze, at: float) -> View:
    """Cut square to a gaze, so far along it from the origin towards the eye."""
    x, y, z = (at * gaze.toward).tolist()
    return seen(scene, gaze, plane_across(gaze, (x, y, z)), hidden=False)


def test_a_block_cut_in_two_shows_its_section() -> None:
    scene = blocks(((0.0, 0.0, 0.0), (100.0, 60.0, 40.0)))

    view = cut_at(scene, LEFT, -30.0)

    assert [net_area(face) for face in view.sections] == pytest.approx([60.0 * 40.0])
    assert len(view.visible) == 0  # the edges around the cut face are its outline


def test_what_begins_in_the_plane_is_seen_whole_and_not_cut() -> None:
    scene = blocks(((0.0, 0.0, 0.0), (10.0, 100.0, 10.0)), ((0.0, 100.0, 0.0), (10.0, 150.0, 10.0)))

    view = cut_at(scene, FRONT, -100.0)

    assert len(view.sections) == 0
    assert set(view.visible_piece.tolist()) == {1}
    assert total(view.visible) == pytest.approx(40.0)
    slanted = seen(scene, FOOT_LEFT, Plane(point=(0.0, 100.0, 0.0), normal=(0.0, -1.0, 0.0)))
    assert total(slanted.visible) == pytest.approx(3 * (10 + 50 + 10) * math.sqrt(2 / 3), abs=0.1)


def test_a_groove_and_a_bore_show_in_the_cut_face() -> None:
    """A bar of 40 x 20 with a groove of 10 x 8 and a cross bore of 6, cut through both."""
    bar = block(
        (100.0, 40.0, 20.0),
        cuts=(cut((0.0, 30.0, 12.0), (100.0, 40.0, 20.0)),),
        holes=(bore((50.0, 15.0, 20.0), (0.0, 0.0, -1.0), 6.0, 12.0),),
    )

    face = cut_at(scene_of((bar, (0.0, 0.0, 0.0))), LEFT, -50.0).sections[0]

    assert net_area(face) == pytest.approx(40 * 20 - 10 * 8 - 6 * 12, abs=0.1)


def test_a_bore_along_the_bar_is_a_hole_in_its_cut_face() -> None:
    bar = block((100.0, 40.0, 20.0), holes=(bore((0.0, 20.0, 10.0), (1.0, 0.0, 0.0), 8.0, 60.0),))

    face = cut_at(scene_of((bar, (0.0, 0.0, 0.0))), LEFT, -50.0).sections[0]

    assert [area(hole) for hole in face.holes] == pytest.approx(
        [-math.pi * 16], rel=0.004
    )  # 48 sides
    assert net_area(face) == pytest.approx(40 * 20 - math.pi * 16, rel=0.001)


@pytest.mark.parametrize("gaze", [FRONT, RIGHT, PLAN, FOOT_LEFT])
def test_a_cut_face_is_as_large_as_the_wood_that_a_thin_saw_takes(queen: Bed, gaze: Gaze) -> None:
    """The volumes of exact solids before and behind a saw 0.1 mm thick, weighed by their kernel."""
    scene, saw = bed_scene(queen), 0.1
    low, high = queen.pieces.bounds
    along = np.concatenate([low, high]) @ gaze.toward
    for share in (0.113, 0.317, 0.709):
        at = along.min() + share * (along.max() - along.min())
        found = dict.fromkeys(range(len(scene)), 0.0)
        for face in cut_at(scene, gaze, at).sections:
            found[face.piece] += net_area(face)
        for k, (form, matrix) in enumerate(zip(scene.forms, scene.matrices, strict=True)):
            body = placed(form, matrix)
            if not is_met(body, gaze, at - saw / 2, at + saw / 2):
                assert found[k] == 0
                continue
            near, far = (
                body.trim_by_plane(gaze.toward, at + half).volume() for half in (-saw / 2, saw / 2)
            )
            # A bore or an edge that begins within the saw's width counts in part.
            assert found[k] == pytest.approx((near - far) / saw, rel=2e-3, abs=2.0), form.name


def test_cut_from_both_sides_the_faces_are_mirror_images(queen: Bed) -> None:
    scene, at = bed_scene(queen), 700.0

    one, other = cut_at(scene, FRONT, -at), cut_at(scene, BACK, at)

    assert len(one.sections) > 5
    assert [net_area(face) for face in one.sections] == pytest.approx(
        [net_area(face) for face in other.sections], rel=1e-5
    )  # each lies a hair within the wood that is left


def test_a_cut_askew_is_longer_by_its_slope() -> None:
    """A bar of 20 x 10 cut at 60° to its axis, seen square to the cut and seen along the bar."""
    scene = blocks(((0.0, 0.0, 0.0), (20.0, 200.0, 10.0)))
    slanted = Gaze.down_from((math.sqrt(3) / 2, -0.5, 0.0))
    plane = plane_across(slanted, (10.0, 100.0, 5.0))

    square, along = seen(scene, slanted, plane), seen(scene, FRONT, plane)

    assert net_area(square.sections[0]) == pytest.approx(20 * 10 / 0.5)
    assert net_area(along.sections[0]) == pytest.approx(20 * 10)


def test_a_cut_face_cannot_be_seen_from_behind() -> None:
    scene = blocks(((0.0, 0.0, 0.0), (20.0, 200.0, 10.0)))

    with pytest.raises(ValueError, match="its own side"):
        seen(scene, FRONT, Plane(point=(0.0, 100.0, 0.0), normal=(0.0, 1.0, 0.0)))


def test_end_grain_and_long_grain_and_sheets_are_told_apart() -> None:
    """Length runs along the fibres."""
    rail, panel = block((200.0, 60.0, 20.0)), block((200.0, 60.0, 6.0))
    scene = scene_of((rail, (0.0, 0.0, 0.0)), (panel, (0.0, 0.0, 40.0)))
    scene = Scene(
        forms=scene.forms, matrices=scene.matrices, names=scene.names, pieces=scene.pieces,
        is_sheet=(False, True),
    )  # fmt: skip

    across, along = cut_at(scene, LEFT, -50.0), cut_at(scene, FRONT, -30.0)

    assert [face.shows for face in across.sections] == ["end grain", "sheet"]
    assert [face.shows for face in along.sections] == ["long grain", "sheet"]
    assert along.sections[0].grain == pytest.approx((1.0, 0.0))


def test_a_dowel_in_the_plane_is_left_whole_and_one_across_it_is_cut() -> None:
    """ISO 128-3, parts that are not cut lengthwise, from memory."""
    dowel = block((60.0, 10.0, 10.0), is_round=True)
    scene = scene_of((dowel, (0.0, 0.0, 0.0)))

    assert len(cut_at(scene, FRONT, -5.0).sections) == 0
    assert total(cut_at(scene, FRONT, -5.0).visible) == pytest.approx(140.0, abs=1.0)
    assert net_area(cut_at(scene, LEFT, -30.0).sections[0]) == pytest.approx(math.pi * 25, rel=0.01)
