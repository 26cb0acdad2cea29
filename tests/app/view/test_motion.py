import numpy as np
import pytest

from app.view.motion import offsets
from app.view.scene import Scene


def moved_of(scene: Scene, moved: np.ndarray, **wanted: str) -> np.ndarray:
    keep = [all(getattr(k, n) == v for n, v in wanted.items()) for k in scene.looks]
    return moved[keep]


def test_nothing_moves_unless_asked(scene: Scene) -> None:
    assert not offsets(scene, {}, 0.0).any()


def test_only_the_named_drawer_comes_out_by_its_share_of_the_travel(scene: Scene) -> None:
    moved = offsets(scene, {"right-1": 0.5}, 0.0)

    assert moved_of(scene, moved, drawer="right-1") == pytest.approx(np.tile((250, 0, 0), (7, 1)))
    assert not moved_of(scene, moved, drawer="right-2").any()
    assert not moved_of(scene, moved, drawer="").any()


def test_a_left_drawer_comes_out_to_the_left(scene: Scene) -> None:
    moved = offsets(scene, {"left-2": 1.0}, 0.0)

    assert (moved_of(scene, moved, drawer="left-2")[:, 0] == -500).all()


def test_a_drawer_that_the_bed_lacks_is_left_alone(scene: Scene) -> None:
    assert not offsets(scene, {"foot-1": 1.0}, 0.0).any()


@pytest.mark.parametrize(
    ("assembly", "axis", "sign"),
    [("headboard", 1, 1), ("footboard", 1, -1), ("left side", 0, -1), ("right side", 0, 1),
     ("deck", 2, 1)],
)  # fmt: skip
def test_each_assembly_goes_its_own_way(scene: Scene, assembly: str, axis: int, sign: int) -> None:
    moved = moved_of(scene, offsets(scene, {}, 1.0), assembly=assembly)

    assert (np.sign(moved[:, axis]) == sign).all()
    assert np.count_nonzero(moved) == len(moved)


def test_fronts_come_off_their_boxes_when_the_bed_is_pulled_apart(scene: Scene) -> None:
    moved = offsets(scene, {}, 1.0)

    front = moved_of(scene, moved, drawer="right-1", assembly="fronts")[0, 0]
    box = moved_of(scene, moved, drawer="right-1", assembly="drawers")[0, 0]
    assert front > box > 0
