"""Dowels in the corners of an end, where dowels are its joint. Read for head and foot."""

from __future__ import annotations

from dataclasses import replace

from model.dimensions.end_members import Members
from model.frame import Frame
from model.joints.dowel import half_way
from model.joints.end_joint import EndJoint, member_dowels
from model.part import Hold, Made, Part
from model.parts.rows import in_rows
from model.rules import rule
from model.units import Mm, Places, Spans


@rule
def rail_dowel_heights(end_joinery: EndJoint, end_members: Members, dowel_diameter: Mm) -> Places:
    """Where dowels between rails and posts lie above the floor: their lowest lines."""
    return tuple(
        half_way(each.bottom + offset, dowel_diameter)
        for each in end_members
        for offset in member_dowels(
            end_joinery, each.top - each.bottom, lower=each.lower, upper=each.upper
        )
    )


@rule
def rail_dowel_joints(post_inner_x: Mm, dowel_length: Mm) -> Places:
    """Where dowels between rails and posts begin: half in either."""
    return (half_way(-post_inner_x, dowel_length), half_way(post_inner_x, dowel_length))


@rule
def stile_dowel_places(
    end_joinery: EndJoint, end_stile_spans: Spans, panel_groove_depth: Mm, dowel_diameter: Mm
) -> Places:
    """Where across the bed dowels between stiles and rails stand: their left sides."""
    return tuple(
        half_way(low + offset, dowel_diameter)
        for low, high in end_stile_spans
        for offset in member_dowels(
            end_joinery, high - low, lower=panel_groove_depth, upper=panel_groove_depth
        )
    )


@rule
def stile_dowel_joints(end_rail_top: Mm, upper_rail_bottom: Mm, dowel_length: Mm) -> Places:
    """Where dowels between stiles and rails begin: half in either."""
    return (half_way(end_rail_top, dowel_length), half_way(upper_rail_bottom, dowel_length))


@rule
def dowel_plane(end_rail_set_back: Mm, end_rail_back_plane: Mm, dowel_diameter: Mm) -> Mm:
    """Dowels lie in the middle of the rails' thickness."""
    return half_way((end_rail_set_back + end_rail_back_plane) / 2, dowel_diameter)


@rule
def dowel_blank(
    frame: Frame, end_assembly: str, dowel_length: Mm, dowel_diameter: Mm, dowel_plane: Mm
) -> Part:
    """All dowels of an end are alike."""
    return Part(
        name="dowel",
        assembly=end_assembly,
        length=dowel_length,
        width=dowel_diameter,
        thickness=dowel_diameter,
        lies="uvz",
        at=(0.0, dowel_plane, 0.0),
        frame=frame,
        material="hardwood",
        hardware=f"DOWEL-{dowel_diameter:g}X{dowel_length:g}",
        is_round=True,
    )


@rule
def rail_dowels(
    dowel_blank: Part, rail_dowel_heights: Places, rail_dowel_joints: Places, dowel_plane: Mm
) -> Made:
    """Dowels tie each rail to both posts."""
    if not rail_dowel_heights:
        return ()
    return (
        replace(
            dowel_blank,
            lies="uvz",
            at=(rail_dowel_joints[0], dowel_plane, rail_dowel_heights[0]),
            places=in_rows(rail_dowel_joints, rail_dowel_heights),
            held=(
                Hold("post_left|post_right", "dowel", glued=True),
                Hold("end_rail|upper_rail|bottom_rail|skirting", "dowel", glued=True),
            ),
        ),
    )


@rule
def stile_dowels(
    dowel_blank: Part, stile_dowel_places: Places, stile_dowel_joints: Places, dowel_plane: Mm
) -> Made:
    """Dowels tie each stile to both rails."""
    if not stile_dowel_places:
        return ()
    return (
        replace(
            dowel_blank,
            lies="zvu",
            at=(stile_dowel_places[0], dowel_plane, stile_dowel_joints[0]),
            places=in_rows(stile_dowel_places, stile_dowel_joints),
            held=(
                Hold("panel_stiles", "dowel", glued=True),
                Hold("end_rail|upper_rail", "dowel", glued=True),
            ),
        ),
    )
