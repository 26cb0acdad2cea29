"""Toe screws as they are made and as they are set out."""

from __future__ import annotations

import math

import pytest

from model.dimensions.fasteners import Fastener
from model.dimensions.toes import Toe
from model.joints.toe import set_out, toed
from model.materials import wood_screw
from model.part import Face, Screw

SIZE = (120.0, 38.0, 19.0)
TOE = Toe(Fastener(wood_screw("6"), 25.4), 8.5, 30.0)


@pytest.mark.parametrize("end", [Face.NEAR, Face.FAR])
def test_one_screw_from_each_edge_leaves_by_the_end_in_the_middle_of_the_thickness(
    end: Face,
) -> None:
    low, high = toed(SIZE, end, TOE, "bearers")

    assert (low.at[1], high.at[1]) == (0.0, 38.0)
    for screw in (low, high):
        tip = [a + w * screw.length for a, w in zip(screw.at, screw.toward, strict=True)]
        assert math.hypot(*screw.toward) == pytest.approx(1.0)
        assert tip[0] > SIZE[0] if end is Face.FAR else tip[0] < 0.0
        assert 0.0 < tip[1] < 38.0
        assert tip[2] == 9.5


@pytest.mark.parametrize("end", [Face.NEAR, Face.FAR])
def test_what_is_set_out_is_what_was_derived(end: Face) -> None:
    told = [set_out(SIZE, each) for each in toed(SIZE, end, TOE, "bearers")]

    assert [each.face for each in told if each] == [Face.LOWER, Face.UPPER]
    for each in told:
        assert each is not None
        assert each.end is end
        assert (each.start, each.beside) == (pytest.approx(8.5), 9.5)
        assert each.lean == pytest.approx(30.0)


def test_straight_screws_are_not_set_out_at_a_slant() -> None:
    straight = Screw("wood screw 8", (10.0, 0.0, 9.5), (0.0, 1.0, 0.0), 50.0, 4.2, "rail")
    twice = Screw("wood screw 8", (10.0, 0.0, 9.5), (0.6, 0.6, 0.5), 50.0, 4.2, "rail")

    assert set_out(SIZE, straight) is None
    assert set_out(SIZE, twice) is None


def test_no_toe_is_no_screw() -> None:
    assert toed(SIZE, Face.FAR, None, "bearers") == ()
