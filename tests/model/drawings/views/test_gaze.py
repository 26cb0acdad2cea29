"""Where the eye stands, and what it sees to the right and up."""

import math

import numpy as np
import pytest

from model.drawings.views import gaze as gazes
from model.drawings.views.gaze import Gaze

ALL = {name: each for name, each in vars(gazes).items() if isinstance(each, Gaze)}


@pytest.mark.parametrize("gaze", ALL.values(), ids=ALL)
def test_the_axes_of_a_gaze_are_a_mere_turn(gaze: Gaze) -> None:
    """Anything else would show a mirror image of the bed."""
    assert gaze.axes @ gaze.axes.T == pytest.approx(np.eye(3), abs=1e-12)
    assert np.linalg.det(gaze.axes) == pytest.approx(1.0)


def test_each_elevation_is_seen_from_where_it_says() -> None:
    """Foot at y = 0, head at +y, left side at -x."""
    toward = {
        name: ALL[name].toward.tolist() for name in ("FRONT", "BACK", "LEFT", "RIGHT", "PLAN")
    }

    assert toward == {
        "FRONT": [0, -1, 0], "BACK": [0, 1, 0], "LEFT": [-1, 0, 0], "RIGHT": [1, 0, 0],
        "PLAN": [0, 0, 1],
    }  # fmt: skip


def test_who_stands_on_the_left_has_the_foot_at_his_right() -> None:
    foot, head = np.array([0.0, 0.0, 500.0]), np.array([0.0, 2000.0, 500.0])

    assert gazes.LEFT.flat(foot)[0] > gazes.LEFT.flat(head)[0]
    assert gazes.RIGHT.flat(foot)[0] < gazes.RIGHT.flat(head)[0]


def test_isometric_axes_are_drawn_alike_and_120_degrees_apart() -> None:
    """ISO 5456-3, isometric projection, from memory."""
    axes = gazes.FOOT_LEFT.flat(np.eye(3))

    assert np.linalg.norm(axes, axis=1) == pytest.approx(math.sqrt(2 / 3))
    assert np.abs(axes[2]) == pytest.approx([0.0, math.sqrt(2 / 3)])
    slopes = np.degrees(np.arctan2(axes[:2, 1], np.abs(axes[:2, 0])))
    assert np.abs(slopes) == pytest.approx(30.0)


def test_dimetric_axes_are_drawn_at_7_and_42_degrees_the_far_one_half_as_long() -> None:
    """ISO 5456-3, dimetric projection, from memory."""
    axes = gazes.DIMETRIC_FOOT_LEFT.flat(np.eye(3))
    long = np.linalg.norm(axes, axis=1)

    assert long[0] == pytest.approx(long[2])
    assert long[1] == pytest.approx(long[0] / 2)
    slopes = np.abs(np.degrees(np.arctan2(axes[:2, 1], np.abs(axes[:2, 0]))))
    assert slopes == pytest.approx([7.0, 42.0], abs=0.7)  # the standard rounds both


def test_an_eye_straight_above_has_no_way_that_is_up() -> None:
    with pytest.raises(ValueError, match="straight above"):
        Gaze.down_from((0.0, 0.0, 1.0))
