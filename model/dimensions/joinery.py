"""Sizes that joints share all over the bed: tenons, dowels, what a joint adds to a length."""

from __future__ import annotations

import math

from model.brief.posts import FrameJoint
from model.errors import CannotBuild
from model.materials import pocket_screw
from model.rules import rule
from model.units import Mm, ShopGrid

TENONS: tuple[FrameJoint, ...] = ("stub tenon", "mortise and tenon")
LEAST_WALL: Mm = 6.0  # 1/4 in: a groove or a mortise must leave this; common practice, no source


def _adds(joint: FrameJoint, tenon_length: float, panel_groove_depth: float) -> float:
    lengths = {"mortise and tenon": tenon_length, "stub tenon": panel_groove_depth}
    return lengths.get(joint, 0.0)


@rule
def end_joint_adds(end_joint: FrameJoint, tenon_length: Mm, panel_groove_depth: Mm) -> Mm:
    """A tenon is cut from its member's own length; a stub tenon is as long as grooves are deep."""
    return _adds(end_joint, tenon_length, panel_groove_depth)


@rule
def frame_joint_adds(frame_joint: FrameJoint, tenon_length: Mm, panel_groove_depth: Mm) -> Mm:
    """In a face frame, too, tenons are cut from the stile's own length."""
    return _adds(frame_joint, tenon_length, panel_groove_depth)


@rule
def joint_relief() -> Mm:
    """Left free under a tenon or dowel, so that shoulders close and glue has a place to go.

    Source: common practice, no source (1/16 in)
    """
    return 1.6


@rule
def pocket_screw_reach(frame_thickness: Mm, end_joint: FrameJoint, frame_joint: FrameJoint) -> Mm:
    """How deep a pocket screw's point goes into the part that its member meets.

    Source: common practice, no source (15 degrees, length by thickness of stock)
    """
    if "pocket screw" not in (end_joint, frame_joint):
        return 0.0
    try:
        row = pocket_screw(float(frame_thickness))
    except CannotBuild:
        sentence = "No pocket screw is sold for frame stock of this thickness."
        raise CannotBuild("frame_stock", sentence) from None
    return (row.length_mm - row.seat_mm) * math.cos(math.radians(row.angle_degrees))


def _reach(
    joint: FrameJoint, adds: float, dowel_length: float, pocket: float, relief: float
) -> float:
    if joint == "pocket screw":
        return pocket
    return (dowel_length / 2 if joint == "dowel" else adds) + relief


@rule
def end_joint_reach(
    end_joint: FrameJoint,
    end_joint_adds: Mm,
    dowel_length: Mm,
    pocket_screw_reach: Mm,
    joint_relief: Mm,
) -> Mm:
    """How deep joints go into posts, and into the rails of an end where its stiles meet them."""
    return _reach(end_joint, end_joint_adds, dowel_length, pocket_screw_reach, joint_relief)


@rule
def frame_joint_reach(
    frame_joint: FrameJoint,
    frame_joint_adds: Mm,
    dowel_length: Mm,
    pocket_screw_reach: Mm,
    joint_relief: Mm,
) -> Mm:
    """How deep joints go into the rails of a face frame."""
    return _reach(frame_joint, frame_joint_adds, dowel_length, pocket_screw_reach, joint_relief)


@rule
def bottom_rail_wall(
    left_is_framed: bool,
    right_is_framed: bool,
    foot_is_framed: bool,
    bottom_rail_width: Mm,
    frame_joint_reach: Mm,
) -> Mm:
    """Under the joints of its stiles, the bottom rail of a face frame keeps wood."""
    wall = bottom_rail_width - frame_joint_reach
    if wall < LEAST_WALL and (left_is_framed or right_is_framed or foot_is_framed):
        raise CannotBuild(
            "bottom_rail_width", "The stiles' joints would come through the bottom rail.",
        )  # fmt: skip
    return wall


@rule
def tenon_thickness(frame_thickness: Mm, grid: ShopGrid) -> Mm:
    """A tenon takes the middle third of its stock: mortise walls and tenon are alike strong.

    Source: common practice, no source
    """
    return max(grid.near(frame_thickness / 3), grid.step)


@rule
def tenon_shoulder(grid: ShopGrid) -> Mm:
    """The tenon stands back from its member's edges, so that shoulders hide the mortise's ends.

    Source: common practice, no source (1/4 in)
    """
    return grid.near(6.35)


@rule
def frame_joint_shoulder(frame_joint: FrameJoint, tenon_shoulder: Mm) -> Mm:
    """Only a tenon stands back from its stile's edges; dowels and pockets have the whole width."""
    return tenon_shoulder if frame_joint in TENONS else 0.0


@rule
def dowel_diameter(frame_thickness: Mm) -> Mm:
    """A dowel is a third to half as thick as the stock that it joins.

    Source: common practice, no source (6, 8 and 10 mm are sold)
    """
    return 6.0 if frame_thickness < 16 else 8.0 if frame_thickness < 25 else 10.0


@rule
def dowel_length(dowel_diameter: Mm) -> Mm:
    """A dowel holds along five times its diameter, half of it in each part.

    Source: common practice, no source
    """
    return 5 * dowel_diameter
