"""The joints that the maker chose, ready for the parts that meet in them."""

from __future__ import annotations

from model.brief.posts import FrameJoint
from model.dimensions.connector_sizes import BOLT_ROOM
from model.joints.connector import KnockDown
from model.joints.end_joint import EndJoint
from model.joints.pocket import screw_for
from model.materials import Connector, wood_screw
from model.rules import rule
from model.units import Mm


@rule
def end_joinery(
    end_joint: FrameJoint,
    end_joint_adds: Mm,
    end_joint_reach: Mm,
    tenon_thickness: Mm,
    dowel_diameter: Mm,
    dowel_length: Mm,
    frame_thickness: Mm,
) -> EndJoint:
    """Headboard and footboard are glued up with one kind of joint."""
    return EndJoint(
        kind=end_joint, adds=end_joint_adds, reach=end_joint_reach,
        tenon_thickness=tenon_thickness, dowel_diameter=dowel_diameter, dowel_length=dowel_length,
        screw=screw_for(frame_thickness, "frame_stock") if end_joint == "pocket screw" else None,
    )  # fmt: skip


@rule
def frame_joinery(
    frame_joint: FrameJoint,
    frame_joint_adds: Mm,
    frame_joint_reach: Mm,
    tenon_thickness: Mm,
    dowel_diameter: Mm,
    dowel_length: Mm,
    frame_thickness: Mm,
) -> EndJoint:
    """Stiles and rails of face frames meet in one kind of joint."""
    return EndJoint(
        kind=frame_joint, adds=frame_joint_adds, reach=frame_joint_reach,
        tenon_thickness=tenon_thickness, dowel_diameter=dowel_diameter, dowel_length=dowel_length,
        screw=screw_for(frame_thickness, "frame_stock") if frame_joint == "pocket screw" else None,
    )  # fmt: skip


@rule
def spindle_joinery(panel_groove_depth: Mm, joint_relief: Mm, tenon_thickness: Mm) -> EndJoint:
    """Open slats go into their rails by stub tenons."""
    return EndJoint(
        kind="stub tenon", adds=panel_groove_depth, reach=panel_groove_depth + joint_relief,
        tenon_thickness=tenon_thickness,
    )  # fmt: skip


@rule
def knock_down(
    connector: Connector,
    plate_screw_length: Mm,
    counterbore_depth: Mm,
    bolt_diameter: Mm,
    bolt_in_rail: Mm,
) -> KnockDown:
    """All four corners of the bed come apart in the same way."""
    return KnockDown(
        row=connector,
        screw=wood_screw(connector.screw_gauge) if connector.is_plate else None,
        screw_length=plate_screw_length,
        bolt_hole=bolt_diameter + BOLT_ROOM,
        counterbore=counterbore_depth,
        in_rail=bolt_in_rail,
    )
