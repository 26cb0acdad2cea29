"""The corners of a box: what the front fills, the side has lost, and nothing else."""

from __future__ import annotations

from itertools import pairwise

import numpy as np
import pytest

from model.brief.drawers import BottomFit, BoxJoint
from model.part import Cut, Face
from model.parts.box_corners import BoxMake
from model.parts.wood import wood_boxes

T, D, H, INSIDE = 12.0, 500.0, 180.0, 400.0
JOINTS: dict[BoxJoint, tuple[float, float]] = {
    "butt": (0.0, 0.0),
    "rabbet": (6.0, 0.0),
    "dado": (6.0, 13.0),
    "dovetail": (T, 0.0),
}
FINGERS = tuple(pairwise((0.0, 36.0, 72.0, 108.0, 144.0, H)))


def make(joint: BoxJoint, fit: BottomFit) -> BoxMake:
    depth, set_in = JOINTS[joint]
    return BoxMake(
        joint=joint, bottom_fit=fit, thickness=T, joint_depth=depth, set_in=set_in,
        groove=(10.0, 16.5), groove_depth=5.0, back_up=16.5 if fit == "under back" else 0.0,
        fingers=FINGERS if joint == "dovetail" else (), screw=None,
    )  # fmt: skip


def wood(size: tuple[float, float, float], cuts: tuple[Cut, ...]) -> np.ndarray:
    return wood_boxes(size, cuts)


def shared(one: np.ndarray, other: np.ndarray) -> float:
    """Volume that two heaps of boxes share, mm3."""
    low = np.maximum(one[:, None, 0], other[None, :, 0])
    high = np.minimum(one[:, None, 1], other[None, :, 1])
    return float(np.clip(high - low, 0, None).prod(axis=2).sum())


def placed(boxes: np.ndarray, axes: tuple[int, ...], at: tuple[float, ...]) -> np.ndarray:
    """Boxes in a part's own axes, laid along the row's: u, v, z."""
    return boxes[:, :, axes] + np.array(at)


@pytest.mark.parametrize("joint", JOINTS)
@pytest.mark.parametrize("fit", ["groove", "under back"])
def test_side_front_back_and_bottom_share_no_space(joint: BoxJoint, fit: BottomFit) -> None:
    box, (depth, set_in) = make(joint, fit), JOINTS[joint]
    length = INSIDE + 2 * depth
    side = placed(wood((D, H, T), box.side((D, H, T), Face.FACE)), (2, 0, 1), (0.0, 0.0, 0.0))
    front_size = (length, H, T)
    front = placed(
        wood(front_size, box.front(front_size, Face.FACE).cuts), (0, 2, 1), (T - depth, 0.0, 0.0)
    )
    back_size = (length, H - box.back_up, T)
    back = placed(
        wood(back_size, box.back(back_size, Face.BACK).cuts), (0, 2, 1),
        (T - depth, D - T - set_in, box.back_up),
    )  # fmt: skip
    rear = D - set_in if fit == "under back" else D - T - set_in + 4.0
    bottom = np.array([[[T - 4.0, T - 4.0, 10.0], [T + INSIDE + 4.0, rear, 16.5]]])

    for one, other in (
        (side, front),
        (side, back),
        (front, bottom),
        (back, bottom),
        (side, bottom),
    ):
        assert shared(one, other) == pytest.approx(0.0, abs=1e-3)


@pytest.mark.parametrize("joint", ["rabbet", "dado"])
def test_a_side_keeps_its_outer_wall(joint: BoxJoint) -> None:
    side = wood((D, H, T), make(joint, "groove").side((D, H, T), Face.FACE))

    outer = side[side[:, 0, 2] < 6.0]
    assert outer[:, 1, 2].min() >= 6.0


def test_a_dovetailed_groove_does_not_show_at_the_corner() -> None:
    cuts = make("dovetail", "groove").side((D, H, T), Face.FACE)

    grooves = [cut for cut in cuts if cut.kind == "groove"]
    assert all(cut.low[0] > 0 and cut.high[0] < D for cut in grooves)
