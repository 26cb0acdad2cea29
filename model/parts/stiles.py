"""Stiles of a face frame, between its rails. Read for left, right and foot."""

import math

from model.dimensions.fasteners import BRACKET_GAUGE
from model.dimensions.side_frames import Shoulders
from model.frame import Frame
from model.joints.dowel import dowels_clear_of
from model.joints.end_joint import EndJoint, on_end
from model.joints.groove import middle_groove
from model.joints.pocket import cuts_clear_of
from model.joints.work import Work
from model.materials import Material, wood_screw
from model.mechanics.fasteners.spacing import wood_between
from model.part import Face, Hold, Made, Part, Point
from model.parts.places import along_u
from model.parts.stile_kinds import StileKind, StileKinds
from model.rules import rule
from model.units import Mm, Places, ShopGrid

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
    stile_shoulders: Shoulders,
    panel_thickness: Mm,
    panel_groove_depth: Mm,
) -> Made:
    """One stile at each end and one between openings, from rail to rail."""
    made = []
    for kind in stile_kinds:
        size = (stile_length, kind.width, frame_thickness)
        shoulders = stile_shoulders[kind.at[0]]
        work = _to_rails(size, frame_joinery, shoulders) + kind.connector_work
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


def _to_rails(size: Point, joint: EndJoint, shoulders: tuple[Mm, Mm]) -> Work:
    """Both ends of a stile alike, so that it may be turned."""
    lower, upper = shoulders
    ends = ((Face.NEAR, BOTTOM), (Face.FAR, TOP))
    halves = [on_end(joint, size, end, lower=lower, upper=upper, into=rail) for end, rail in ends]
    return halves[0] + halves[1]


@rule
def stile_shoulders(
    stile_kinds: StileKinds,
    frame_joinery: EndJoint,
    frame_shoulder: Mm,
    stile_joints_shun: Places,
    grid: ShopGrid,
) -> Shoulders:
    """Joints of a stile keep out of its grooves, and pockets and dowels clear of bracket screws."""
    return {
        float(at): _shoulders(kind, frame_joinery, frame_shoulder, stile_joints_shun, grid)
        for kind in stile_kinds
        for at in kind.at
    }


def _shoulders(
    kind: StileKind, joint: EndJoint, shoulder: Mm, spots: Places, grid: ShopGrid
) -> tuple[Mm, Mm]:
    shun = _beside(kind, spots)
    shank = wood_screw(BRACKET_GAUGE).shank_mm
    if joint.kind == "dowel":
        bore = joint.dowel_diameter
        clear = (bore + shank) / 2 + wood_between(shank, shank)
        return dowels_clear_of(kind.width, shoulder, shoulder, bore, shun, clear, grid)
    if joint.screw is None or not shun:
        return (shoulder, shoulder)
    clear = joint.screw.shank_mm + wood_between(joint.screw.shank_mm, joint.screw.shank_mm)
    bore = joint.screw.pocket_diameter_mm
    inside = max(cuts_clear_of(kind.width, shoulder, shoulder, bore, shun, clear))
    return (inside, inside)


def _beside(kind: StileKind, spots: Places) -> Places:
    """Those of the places along the run that lie behind a stile of this kind, from its own edge."""
    found = {round(at - start, 6) for start in kind.at for at in spots}
    return tuple(sorted(each for each in found if 0 < each < kind.width))


@rule
def stile_joints_shun(
    frame_bracket_spots: Places,
    frame_bracket_heights: Places,
    opening_bottom: Mm,
    frame_joint_reach: Mm,
) -> Places:
    """Where along the run screws of brackets go into the frame as high as the dowels or pocket
    screws in the lower ends of the stiles, which then stand clear of them.
    """
    shank = wood_screw(BRACKET_GAUGE).shank_mm
    highest = max(frame_bracket_heights, default=-math.inf) + shank + wood_between(shank, shank)
    return frame_bracket_spots if highest > opening_bottom - frame_joint_reach else ()
