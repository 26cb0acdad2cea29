"""Drawer boxes as parts: whose sizes they take, where they lie, what moves them."""

from model.frame import side_frame_at
from model.joints.work import Work
from model.materials import material
from model.parts.box_corners import BoxMake
from model.parts.boxes import box_bottoms, box_fronts, box_near_sides

FRAME = side_frame_at(-850.0, 1)
PLY, THIN = material("birch_ply_12"), material("birch_ply_6_5")
MAKE = BoxMake(
    joint="rabbet", bottom_fit="groove", thickness=12.0, joint_depth=6.0, set_in=0.0,
    groove=(10.0, 16.5), groove_depth=5.0, back_up=0.0, fingers=(), screw=None,
)  # fmt: skip


def test_each_drawer_has_its_own_side() -> None:
    (side,) = box_near_sides(
        (113.0, 713.0), 6.0, 71.0, 500.0, 180.0, 12.0, MAKE, FRAME, PLY, "left"
    )

    assert [place.drawer for place in side.places] == [1, 2]
    assert [place.u for place in side.places] == [0.0, 600.0]
    assert side.at == (113.0, 6.0, 71.0)
    assert side.row == "left"


def test_a_row_without_drawers_has_no_boxes() -> None:
    assert box_near_sides((), 6.0, 71.0, 0.0, 0.0, 12.0, MAKE, FRAME, PLY, "left") == ()
    assert box_fronts((), 6.0, 71.0, 0.0, 0.0, 12.0, MAKE, Work(), FRAME, PLY, "left") == ()


def test_a_bottom_is_held_with_the_room_in_its_grooves() -> None:
    (bottom,) = box_bottoms((120.0,), 15.0, 81.0, 408.0, 488.0, 6.5, 1.1, 0.9, FRAME, THIN, "left")

    assert {hold.within for hold in bottom.held} == {1.1, 0.9}
    assert bottom.lies == "uvz"
