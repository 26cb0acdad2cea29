"""Stiles of a face frame, between its rails. Read for left, right and foot."""

from model.frame import Frame
from model.joints.end_joint import EndJoint, on_end
from model.joints.groove import middle_groove
from model.joints.work import Work
from model.materials import Material
from model.part import Face, Hold, Made, Part, Point
from model.parts.places import along_u
from model.parts.stile_kinds import StileKinds
from model.rules import rule
from model.units import Mm

TOP, BOTTOM = "top_rail|end_rail", "bottom_rail"


@rule
def stiles(
    stile_kinds: StileKinds,
    frame: Frame,
    front_plane: Mm,
    stile_bottom: Mm,
    stile_length: Mm,
    frame_thickness: Mm,
    frame_wood: Material,
    frame_assembly: str,
    frame_joinery: EndJoint,
    frame_shoulder: Mm,
    panel_thickness: Mm,
    panel_groove_depth: Mm,
) -> Made:
    """One stile at each end and one between openings, from rail to rail."""
    made = []
    for kind in stile_kinds:
        size = (stile_length, kind.width, frame_thickness)
        work = _to_rails(size, frame_joinery, frame_shoulder) + kind.connector_work
        along = (frame_joinery.adds, stile_length - frame_joinery.adds)
        grooves = tuple(
            middle_groove(size, edge, width=panel_thickness, depth=panel_groove_depth, along=along)
            for edge in kind.grooved
        )
        made.append(
            Part(
                name=kind.name,
                assembly=frame_assembly,
                length=stile_length,
                width=kind.width,
                thickness=frame_thickness,
                lies="zuv",
                at=(kind.at[0], front_plane, stile_bottom),
                places=along_u(kind.at),
                frame=frame,
                material=frame_wood.key,
                cuts=work.cuts + grooves,
                holes=work.holes,
                screws=work.screws,
                held=tuple(Hold(by, frame_joinery.kind, glued=True) for by in (BOTTOM, TOP)),
            )
        )
    return tuple(made)


def _to_rails(size: Point, joint: EndJoint, shoulder: float) -> Work:
    ends = ((Face.NEAR, BOTTOM), (Face.FAR, TOP))
    halves = [
        on_end(joint, size, end, lower=shoulder, upper=shoulder, into=rail) for end, rail in ends
    ]
    return halves[0] + halves[1]
