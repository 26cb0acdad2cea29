"""Rails, skirting and cap of an end. Read for head and foot."""

from __future__ import annotations

from dataclasses import replace

from model.dimensions.side_frames import Shoulders
from model.frame import Frame
from model.joints.end_joint import EndJoint, on_end
from model.joints.end_rail_work import EndRailWork
from model.joints.rail_work import RailWork
from model.joints.work import Work
from model.materials import Material
from model.part import Face, Hold, Made, Part, Point
from model.rules import rule
from model.units import Mm, Places, Spans

POSTS = ((Face.NEAR, "post_left"), (Face.FAR, "post_right"))


@rule
def hidden_face(is_head: bool) -> Face:
    """Pocket holes are drilled where nobody looks: behind the headboard, inside the footboard."""
    return Face.BACK if is_head else Face.FACE


@rule
def end_rail_work(
    end_joinery: EndJoint,
    spindle_joinery: EndJoint,
    is_grooved: bool,
    panel_spans: Spans,
    end_stile_spans: Spans,
    spindle_places: Places,
    spindle_width: Mm,
    spindle_shoulder: Mm,
    panel_thickness: Mm,
    panel_groove_depth: Mm,
    end_rail_from: Mm,
) -> EndRailWork:
    """The two rails of an end take the same panels, stiles, planks or slats, in facing edges."""
    return EndRailWork(
        joint=end_joinery, stiles=end_stile_spans, spindle_joint=spindle_joinery,
        spindles=spindle_places, spindle_width=spindle_width, spindle_shoulder=spindle_shoulder,
        openings=panel_spans, is_grooved=is_grooved, groove_width=panel_thickness,
        groove_depth=panel_groove_depth, starts_at=end_rail_from,
    )  # fmt: skip


def _to_posts(joint: EndJoint, size: Point, lower: Mm, upper: Mm, face: Face) -> Work:
    ends = [
        on_end(joint, size, end, lower=lower, upper=upper, face=face, into=post)
        for end, post in POSTS
    ]
    return ends[0] + ends[1]


def _held(joint: EndJoint) -> tuple[Hold, ...]:
    return tuple(Hold(post, joint.kind, glued=True) for _, post in POSTS)


@rule
def end_rail_blank(
    frame: Frame,
    end_assembly: str,
    end_rail_length: Mm,
    end_rail_high: Mm,
    frame_thickness: Mm,
    end_rail_from: Mm,
    end_rail_set_back: Mm,
    end_rail_bottom: Mm,
    frame_wood: Material,
    end_joinery: EndJoint,
) -> Part:
    """What all rails between the posts of an end have alike."""
    return Part(
        name="end rail",
        assembly=end_assembly,
        length=end_rail_length,
        width=end_rail_high,
        thickness=frame_thickness,
        lies="uzv",
        at=(end_rail_from, end_rail_set_back, end_rail_bottom),
        frame=frame,
        material=frame_wood.key,
        held=_held(end_joinery),
    )


@rule
def end_frame_work(
    frame_joinery: EndJoint,
    stile_spans: Spans,
    stile_shoulders: Shoulders,
    panel_thickness: Mm,
    panel_groove_depth: Mm,
    end_rail_from: Mm,
) -> RailWork:
    """With drawers at the foot, the stiles of the face frame meet the end rail from below."""
    return RailWork(
        joint=frame_joinery, stiles=stile_spans,
        shoulders=tuple(stile_shoulders[low] for low, _ in stile_spans), grooves=(),
        groove_width=panel_thickness, groove_depth=panel_groove_depth, starts_at=end_rail_from,
    )  # fmt: skip


@rule
def end_rail(
    end_rail_blank: Part,
    end_joinery: EndJoint,
    stile_clear: Mm,
    grooved_shoulder: Mm,
    hidden_face: Face,
    end_rail_work: EndRailWork,
    end_frame_work: RailWork,
) -> Made:
    """An end rail ties the posts at the height of the side rails."""
    size = end_rail_blank.size
    work = _to_posts(end_joinery, size, stile_clear, grooved_shoulder, hidden_face)
    work += end_rail_work.on_edge(size, Face.UPPER) + end_frame_work.on_edge(size, Face.LOWER)
    return (_worked(end_rail_blank, work),)


@rule
def upper_rail(
    has_upper_rail: bool,
    end_rail_blank: Part,
    upper_rail_width: Mm,
    end_rail_from: Mm,
    end_rail_set_back: Mm,
    upper_rail_bottom: Mm,
    end_joinery: EndJoint,
    tenon_shoulder: Mm,
    grooved_shoulder: Mm,
    hidden_face: Face,
    end_rail_work: EndRailWork,
) -> Made:
    """The upper rail closes the end at its top."""
    if not has_upper_rail:
        return ()
    at = (end_rail_from, end_rail_set_back, upper_rail_bottom)
    blank = replace(end_rail_blank, name="upper rail", width=upper_rail_width, at=at)
    work = _to_posts(end_joinery, blank.size, grooved_shoulder, tenon_shoulder, hidden_face)
    return (_worked(blank, work + end_rail_work.on_edge(blank.size, Face.LOWER)),)


@rule
def bottom_rail(
    is_framed: bool,
    end_rail_blank: Part,
    bottom_rail_width: Mm,
    end_rail_from: Mm,
    end_rail_set_back: Mm,
    frame_bottom: Mm,
    end_joinery: EndJoint,
    tenon_shoulder: Mm,
    stile_clear: Mm,
    hidden_face: Face,
    end_frame_work: RailWork,
) -> Made:
    """Under drawers at the foot the face frame ends in a bottom rail between the posts."""
    if not is_framed:
        return ()
    at = (end_rail_from, end_rail_set_back, frame_bottom)
    blank = replace(end_rail_blank, name="bottom rail", width=bottom_rail_width, at=at)
    work = _to_posts(end_joinery, blank.size, tenon_shoulder, stile_clear, hidden_face)
    return (_worked(blank, work + end_frame_work.on_edge(blank.size, Face.UPPER)),)


@rule
def skirting(
    is_skirted: bool,
    end_rail_blank: Part,
    skirting_width: Mm,
    end_rail_from: Mm,
    end_rail_set_back: Mm,
    skirting_bottom: Mm,
    end_joinery: EndJoint,
    tenon_shoulder: Mm,
    hidden_face: Face,
) -> Made:
    """A skirting closes the headboard from the end rail down to the floor gap."""
    if not is_skirted:
        return ()
    at = (end_rail_from, end_rail_set_back, skirting_bottom)
    blank = replace(end_rail_blank, name="skirting", width=skirting_width, at=at)
    work = _to_posts(end_joinery, blank.size, tenon_shoulder, tenon_shoulder, hidden_face)
    return (_worked(blank, work),)


@rule
def cap(
    is_capped: bool,
    has_upper_rail: bool,
    frame: Frame,
    end_assembly: str,
    cap_length: Mm,
    cap_width: Mm,
    cap_thickness: Mm,
    cap_from: Mm,
    cap_plane: Mm,
    post_top: Mm,
    frame_wood: Material,
    eased_edge: Mm,
) -> Made:
    """A cap board covers the end grain of the posts and the rail between them."""
    if not is_capped:
        return ()
    below = ("post_left", "post_right", "upper_rail" if has_upper_rail else "end_rail")
    return (
        Part(
            name="cap",
            assembly=end_assembly,
            length=cap_length,
            width=cap_width,
            thickness=cap_thickness,
            lies="uvz",
            at=(cap_from, cap_plane, post_top),
            frame=frame,
            material=frame_wood.key,
            eased=eased_edge,
            held=tuple(Hold(part, "glued on top", glued=True) for part in below),
        ),
    )


def _worked(blank: Part, work: Work) -> Part:
    return replace(blank, cuts=work.cuts, holes=work.holes, screws=work.screws)
