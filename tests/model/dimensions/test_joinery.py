"""Sizes that joints share."""

import pytest

from model.brief.posts import FrameJoint
from model.dimensions.joinery import (
    dowel_diameter,
    dowel_length,
    end_joint_adds,
    frame_joint_shoulder,
    tenon_shoulder,
    tenon_thickness,
)
from model.units import GRIDS

GRID = GRIDS["1 mm"]


def test_only_tenons_are_cut_from_the_members_length() -> None:
    assert end_joint_adds("mortise and tenon", 25, 10) == 25
    assert end_joint_adds("stub tenon", 25, 10) == 10
    assert end_joint_adds("dowel", 25, 10) == 0
    assert end_joint_adds("pocket screw", 25, 10) == 0


def test_a_tenon_is_the_middle_third_on_the_grid() -> None:
    assert tenon_thickness(22, GRID) == 7
    assert tenon_shoulder(GRID) == 6


def test_a_dowel_is_no_thicker_than_half_of_its_stock() -> None:
    for stock in (15, 19, 22, 30):
        assert stock / 4 <= dowel_diameter(stock) <= stock * 0.54


def test_a_dowel_is_five_times_as_long_as_thick() -> None:
    assert dowel_length(8) == 40


@pytest.mark.parametrize(
    ("joint", "back"),
    [("mortise and tenon", 6), ("stub tenon", 6), ("dowel", 0), ("pocket screw", 0)],
)
def test_only_a_tenon_stands_back_from_its_stiles_edges(joint: FrameJoint, back: float) -> None:
    assert frame_joint_shoulder(joint, 6) == back
