"""How drawer boxes are made: what all boxes of the bed share."""

from dataclasses import replace
from math import cos, radians, sin, tan

from model.brief.drawers import BottomFit, BoxJoint
from model.dimensions.fasteners import COVER
from model.errors import CannotBuild
from model.materials import PocketScrew, pocket_screw
from model.rules import rule
from model.units import Mm, ShopGrid, Spans

LEAST_BOX: Mm = 50.0  # a lower box holds nothing; common practice, no source
LEAST_WALL: Mm = 6.0  # 1/4 in left beside a groove, where the sheet is thick enough
LEAST_HOLD: Mm = 2.0  # of the bottom in its groove
LEAST_INSIDE: Mm = 20.0


def deepest(low: Mm, high: Mm, grid: ShopGrid) -> Mm:
    """The deepest size on the coarsest step that lies between two depths."""
    for step in grid.finer():
        if step.down(high) >= low - 1e-6:
            return step.down(high)
    return low


@rule
def box_bottom(opening_bottom: Mm, box_bottom_room: Mm) -> Mm:
    """The box runs clear of the bottom rail."""
    return opening_bottom + box_bottom_room


@rule
def box_height(
    opening_height: Mm, box_bottom_room: Mm, box_top_room: Mm, has_drawers: bool, grid: ShopGrid
) -> Mm:
    """The box is as high as the opening, less room to run below and to tilt it out above."""
    height = grid.down(opening_height - box_bottom_room - box_top_room)
    if has_drawers and height < LEAST_BOX:
        raise CannotBuild(
            "opening_height",
            f"The boxes would be {max(height, 0):.0f} mm high; {LEAST_BOX:.0f} mm is the least.",
        )
    return height if has_drawers else 0.0


@rule
def box_top(box_bottom: Mm, box_height: Mm) -> Mm:
    """The upper edge of the boxes, from the floor."""
    return box_bottom + box_height


@rule
def box_top_room_built(opening_top: Mm, box_top: Mm) -> Mm:
    """Room above the box, with what the grid left over."""
    return opening_top - box_top


@rule
def box_joint_depth(box_joint: BoxJoint, box_thickness: Mm, grid: ShopGrid) -> Mm:
    """Front and back go half into the sides in a rabbet or dado, all through in a dovetail.

    Source: common practice, no source
    """
    if box_joint == "butt":
        return 0.0
    if box_joint == "dovetail":
        return box_thickness
    return deepest(box_thickness / 3, box_thickness / 2, grid)


@rule
def dado_set_in(box_joint: BoxJoint, grid: ShopGrid) -> Mm:
    """A back in dadoes stands in from the rear ends of the sides, so that the wood there holds.

    Source: common practice, no source (1/2 in)
    """
    return grid.near(12.7) if box_joint == "dado" else 0.0


@rule
def box_pocket_screw(
    box_joint: BoxJoint, box_thickness: Mm, has_drawers: bool
) -> PocketScrew | None:
    """Butted corners are pulled together by pocket screws, whose points stay in the sheet."""
    if box_joint != "butt" or not has_drawers:
        return None
    try:
        screw = pocket_screw(float(box_thickness))
    except CannotBuild:
        raise CannotBuild("box_thickness", "The box sheet is too thin for pocket screws.") from None
    bite = (box_thickness - COVER) / cos(radians(screw.angle_degrees))
    return replace(screw, seat_mm=max(screw.seat_mm, screw.length_mm - bite))


@rule
def box_pocket_reach(box_pocket_screw: PocketScrew | None, box_thickness: Mm) -> Mm:
    """How far from the ends of a box front the mouths of its pockets reach: the bore comes out of
    the face at its slant.
    """
    if box_pocket_screw is None:
        return 0.0
    slope = radians(box_pocket_screw.angle_degrees)
    return box_thickness / 2 / tan(slope) + box_pocket_screw.pocket_diameter_mm / 2 / sin(slope)


@rule
def bottom_groove_depth(
    box_thickness: Mm, bottom_room: Mm, has_drawers: bool, grid: ShopGrid
) -> Mm:
    """A groove takes a third to half of the side, and leaves 6 mm of wall where it can.

    Source: a router teacher's page (half), a router forum's guide (a third)
    """
    third, half = box_thickness / 3, box_thickness / 2
    depth = deepest(third, min(half, max(box_thickness - LEAST_WALL, third + 0.5)), grid)
    if has_drawers and depth - bottom_room < LEAST_HOLD:
        raise CannotBuild(
            "bottom_room", "With that much room the bottom would drop out of its groove.",
        )  # fmt: skip
    return depth


@rule
def box_floor(box_bottom: Mm, bottom_up: Mm, bottom_thickness: Mm) -> Mm:
    """The bottom's upper side, from the floor of the room."""
    return box_bottom + bottom_up + bottom_thickness


@rule
def bottom_under(box_bottom: Mm, bottom_up: Mm) -> Mm:
    """The bottom's lower side, from the floor of the room."""
    return box_bottom + bottom_up


@rule
def drawer_inside_height(
    box_height: Mm, bottom_up: Mm, bottom_thickness: Mm, has_drawers: bool
) -> Mm:
    """What can be put into a drawer is no higher than its sides above the bottom."""
    inside = box_height - bottom_up - bottom_thickness
    if has_drawers and inside < LEAST_INSIDE:
        raise CannotBuild(
            "bottom_up", f"Above the bottom {max(inside, 0):.0f} mm of drawer would be left."
        )
    return inside


@rule
def box_back_height(bottom_fit: BottomFit, box_height: Mm, drawer_inside_height: Mm) -> Mm:
    """The back is as high as the sides, or cut down so that the bottom slides in under it."""
    return drawer_inside_height if bottom_fit == "under back" else box_height


@rule
def box_back_bottom(box_top: Mm, box_back_height: Mm) -> Mm:
    """The back's lower edge, from the floor."""
    return box_top - box_back_height


@rule
def finger_height(box_height: Mm, box_thickness: Mm, grid: ShopGrid) -> Mm:
    """An odd number of dovetails, each about twice as high as the sheet is thick.

    Source: common practice, no source
    """
    pairs = max(1, round(box_height / (4 * box_thickness)))
    return grid.down(box_height / (2 * pairs + 1))


@rule
def finger_spans(box_joint: BoxJoint, box_height: Mm, finger_height: Mm) -> Spans:
    """Front and side take turns at a dovetailed corner; the uppermost turn has the rest."""
    if box_joint != "dovetail" or not finger_height:
        return ()
    count = int((box_height + 1e-6) // finger_height)
    count -= 1 - count % 2
    edges = [i * finger_height for i in range(count)] + [box_height]
    return tuple(zip(edges[:-1], edges[1:], strict=True))


@rule
def front_screw_most(box_thickness: Mm, front_thickness: Mm) -> Mm:
    """A screw from inside the box must end short of the front's face."""
    return box_thickness + front_thickness - COVER
