"""The two corner joints that the maker chose, ready for the parts that meet in them."""

from __future__ import annotations

from model.brief.posts import FrameJoint
from model.joints.end_joint import EndJoint
from model.joints.pocket import screw_for
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
