"""How boxes are made: heights, joints and grooves."""

import pytest

from model.dimensions.box_make import (
    bottom_groove_depth,
    box_back_height,
    box_height,
    box_joint_depth,
    box_pocket_screw,
    finger_spans,
)
from model.errors import CannotBuild
from model.units import GRIDS, ShopGrid

MM = GRIDS["1 mm"]


@pytest.mark.parametrize("thickness", [9.0, 12.0, 15.0, 18.0, 22.0])
@pytest.mark.parametrize("grid", GRIDS.values(), ids=GRIDS)
def test_a_groove_is_a_third_to_half_of_the_side(thickness: float, grid: ShopGrid) -> None:
    depth = bottom_groove_depth(thickness, 0.5, True, grid)

    assert thickness / 3 - 1e-6 <= depth <= thickness / 2 + 1e-6


def test_a_groove_in_12_mm_leaves_6_mm_of_wall() -> None:
    assert bottom_groove_depth(12.0, 0.8, True, MM) == 6.0


def test_a_bottom_that_would_drop_out_is_refused_by_its_room() -> None:
    with pytest.raises(CannotBuild) as refusal:
        bottom_groove_depth(9.0, 4.0, True, MM)

    assert refusal.value.field == "bottom_room"


def test_a_box_is_as_high_as_the_opening_less_its_rooms() -> None:
    assert box_height(200.0, 6.0, 16.0, True, MM) == 178.0


def test_a_low_box_is_refused_by_the_opening() -> None:
    with pytest.raises(CannotBuild) as refusal:
        box_height(60.0, 6.0, 16.0, True, MM)

    assert refusal.value.field == "opening_height"


def test_a_bed_without_drawers_is_never_refused_for_its_boxes() -> None:
    assert box_height(10.0, 6.0, 16.0, False, MM) == 0.0


def test_a_joint_goes_as_deep_as_its_kind() -> None:
    assert box_joint_depth("butt", 12.0, MM) == 0.0
    assert box_joint_depth("rabbet", 12.0, MM) == 6.0
    assert box_joint_depth("dovetail", 12.0, MM) == 12.0


def test_a_back_is_cut_down_by_what_lies_below_the_bottom() -> None:
    assert box_back_height("under back", 178.0, 161.5) == 161.5
    assert box_back_height("groove", 178.0, 161.5) == 178.0


def test_fingers_fill_the_corner_without_a_gap() -> None:
    spans = finger_spans("dovetail", 178.0, 25.0)

    assert spans[0][0] == 0.0
    assert spans[-1][1] == 178.0
    assert all(low[1] == high[0] for low, high in zip(spans, spans[1:], strict=False))
    assert len(spans) % 2 == 1  # front and back keep both outer turns


def test_pocket_screws_end_inside_the_box_side() -> None:
    screw = box_pocket_screw("butt", 12.0, True)

    assert screw is not None
    assert (screw.length_mm - screw.seat_mm) * 0.9659 <= 12.0 - 3.0 + 0.01  # cos 15 degrees
