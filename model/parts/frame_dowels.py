"""Dowels between stiles and rails of a face frame, where dowels are its joint. Read for left,
right and foot.
"""

from __future__ import annotations

from model.dimensions.side_frames import Shoulders
from model.frame import Frame
from model.joints.dowel import half_way
from model.joints.end_joint import EndJoint, member_dowels
from model.part import Hold, Made, Part
from model.parts.rows import in_rows
from model.rules import rule
from model.units import Mm, Places, Spans


@rule
def frame_dowel_places(
    frame_joinery: EndJoint, stile_spans: Spans, stile_shoulders: Shoulders, dowel_diameter: Mm
) -> Places:
    """Where along the run the dowels of the stiles stand: their near sides."""
    return tuple(
        half_way(low + offset, dowel_diameter)
        for low, high in stile_spans
        for lower, upper in (stile_shoulders[low],)
        for offset in member_dowels(frame_joinery, high - low, lower=lower, upper=upper)
    )


@rule
def frame_dowel_joints(opening_bottom: Mm, opening_top: Mm, dowel_length: Mm) -> Places:
    """Where dowels between stiles and rails begin: half in either."""
    return (half_way(opening_bottom, dowel_length), half_way(opening_top, dowel_length))


@rule
def frame_dowel_plane(front_plane: Mm, back_plane: Mm, dowel_diameter: Mm) -> Mm:
    """Dowels lie in the middle of the frame's thickness."""
    return half_way((front_plane + back_plane) / 2, dowel_diameter)


@rule
def frame_dowels(
    frame_dowel_places: Places,
    frame_dowel_joints: Places,
    frame_dowel_plane: Mm,
    dowel_length: Mm,
    dowel_diameter: Mm,
    frame: Frame,
    frame_assembly: str,
) -> Made:
    """Dowels tie each stile to both rails."""
    if not frame_dowel_places:
        return ()
    return (
        Part(
            name="dowel",
            assembly=frame_assembly,
            length=dowel_length,
            width=dowel_diameter,
            thickness=dowel_diameter,
            lies="zvu",
            at=(frame_dowel_places[0], frame_dowel_plane, frame_dowel_joints[0]),
            places=in_rows(frame_dowel_places, frame_dowel_joints),
            frame=frame,
            material="hardwood",
            hardware=f"DOWEL-{dowel_diameter:g}X{dowel_length:g}",
            is_round=True,
            held=(
                Hold("stiles", "dowel", glued=True),
                Hold("top_rail|bottom_rail|end_rail", "dowel", glued=True),
            ),
        ),
    )
