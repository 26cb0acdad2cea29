"""What stands between the two rails of an end: panels and stiles, planks, or open slats."""

from __future__ import annotations

from model.frame import Frame
from model.joints.end_joint import EndJoint, on_end
from model.joints.groove import middle_groove
from model.joints.work import Work
from model.materials import Material
from model.part import Face, Hold, Made, Part, Point
from model.parts.places import along_u
from model.rules import rule
from model.units import Count, Mm, Places

RAILS = ((Face.NEAR, "end_rail"), (Face.FAR, "upper_rail"))


def _to_rails(joint: EndJoint, size: Point, shoulder: Mm, face: Face = Face.FACE) -> Work:
    ends = [
        on_end(joint, size, end, lower=shoulder, upper=shoulder, face=face, into=rail)
        for end, rail in RAILS
    ]
    return ends[0] + ends[1]


@rule
def panels(
    panel_places: Places,
    frame: Frame,
    end_assembly: str,
    filling_height: Mm,
    panel_width: Mm,
    panel_thickness: Mm,
    panel_plane: Mm,
    filling_bottom: Mm,
    panel_material: Material,
    panel_layers: Count,
    panel_layer_thickness: Mm,
) -> Made:
    """Panels float in the grooves of rails, posts and stiles: let in with room on all sides."""
    if not panel_places:
        return ()
    return (
        Part(
            name="panel",
            assembly=end_assembly,
            length=filling_height,
            width=panel_width,
            thickness=panel_thickness,
            lies="zuv",
            at=(panel_places[0], panel_plane, filling_bottom),
            places=along_u(panel_places),
            frame=frame,
            material=panel_material.key,
            layers=panel_layers,
            layer_thickness=panel_layer_thickness,
            held=tuple(Hold(rail, "groove") for _, rail in RAILS),
        ),
    )


@rule
def panel_stiles(
    end_stile_places: Places,
    frame: Frame,
    end_assembly: str,
    end_stile_length: Mm,
    mid_stile_width: Mm,
    frame_thickness: Mm,
    end_rail_set_back: Mm,
    end_stile_bottom: Mm,
    frame_wood: Material,
    end_joinery: EndJoint,
    hidden_face: Face,
    panel_thickness: Mm,
    panel_groove_depth: Mm,
) -> Made:
    """Stiles between panels are grooved in both edges, and jointed as the rails to the posts."""
    if not end_stile_places:
        return ()
    size = (float(end_stile_length), float(mid_stile_width), float(frame_thickness))
    work = _to_rails(end_joinery, size, panel_groove_depth, hidden_face)
    grooves = tuple(
        middle_groove(size, edge, width=panel_thickness, depth=panel_groove_depth)
        for edge in (Face.LOWER, Face.UPPER)
    )
    return (
        Part(
            name="panel stile",
            assembly=end_assembly,
            length=end_stile_length,
            width=mid_stile_width,
            thickness=frame_thickness,
            lies="zuv",
            at=(end_stile_places[0], end_rail_set_back, end_stile_bottom),
            places=along_u(end_stile_places),
            frame=frame,
            material=frame_wood.key,
            cuts=work.cuts + grooves,
            holes=work.holes,
            screws=work.screws,
            held=tuple(Hold(rail, end_joinery.kind, glued=True) for _, rail in RAILS),
        ),
    )


@rule
def spindle_pieces(
    spindle_places: Places,
    frame: Frame,
    end_assembly: str,
    spindle_length: Mm,
    spindle_width: Mm,
    frame_thickness: Mm,
    end_rail_set_back: Mm,
    spindle_bottom: Mm,
    frame_wood: Material,
    spindle_joinery: EndJoint,
    spindle_shoulder: Mm,
) -> Made:
    """Open slats stand between the rails, all cut at one stop."""
    if not spindle_places:
        return ()
    size = (float(spindle_length), float(spindle_width), float(frame_thickness))
    return (
        Part(
            name="open slat",
            assembly=end_assembly,
            length=spindle_length,
            width=spindle_width,
            thickness=frame_thickness,
            lies="zuv",
            at=(spindle_places[0], end_rail_set_back, spindle_bottom),
            places=along_u(spindle_places),
            frame=frame,
            material=frame_wood.key,
            cuts=_to_rails(spindle_joinery, size, spindle_shoulder).cuts,
            held=tuple(Hold(rail, "stub tenon", glued=True) for _, rail in RAILS),
        ),
    )
