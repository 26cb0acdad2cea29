"""The four posts and their glides. Read for head and foot."""

from __future__ import annotations

from dataclasses import replace

from model.dimensions.end_members import Members
from model.frame import Frame
from model.joints.connector import KnockDown, in_post
from model.joints.end_joint import EndJoint
from model.joints.post_work import PostWork
from model.materials import Material
from model.part import Face, Hold, Made, Part
from model.parts.places import along_u
from model.rules import rule
from model.units import Count, Mm, Places, Spans


@rule
def post_work(
    end_joinery: EndJoint,
    end_members: Members,
    end_rail_set_back: Mm,
    end_rail_back_plane: Mm,
    post_grooves: Spans,
    panel_thickness: Mm,
    panel_groove_depth: Mm,
    post_bottom: Mm,
) -> PostWork:
    """Both posts of an end take the same rails and panels, mirrored."""
    return PostWork(
        joint=end_joinery, meetings=end_members, across=(end_rail_set_back, end_rail_back_plane),
        grooves=post_grooves, groove_width=panel_thickness, groove_depth=panel_groove_depth,
        starts_at=post_bottom,
    )  # fmt: skip


@rule
def post_blank(
    frame: Frame,
    end_assembly: str,
    post_length: Mm,
    post_width: Mm,
    post_along: Mm,
    post_left_from: Mm,
    post_bottom: Mm,
    post_layers_built: Count,
    post_layer_thickness: Mm,
    post_taper: Mm,
    post_taper_length: Mm,
    frame_wood: Material,
    glide_height: Mm,
    eased_edge: Mm,
) -> Part:
    """What both posts of an end have alike; each stands on its glide, or on the floor."""
    return Part(
        name="post",
        assembly=end_assembly,
        length=post_length,
        width=post_width,
        thickness=post_along,
        lies="zuv",
        at=(post_left_from, 0.0, post_bottom),
        frame=frame,
        material=frame_wood.key,
        layers=post_layers_built,
        layer_thickness=post_layer_thickness,
        taper=post_taper,
        taper_length=post_taper_length,
        eased=eased_edge,
        held=(Hold("glides", "stands") if glide_height else Hold("floor", "stands"),),
    )


@rule
def post_left(
    post_blank: Part,
    post_work: PostWork,
    knock_down: KnockDown,
    rail_across_left: Places,
    left_connector_in_post: Places,
) -> Made:
    """The post at the left, as seen from the foot."""
    size, across = post_blank.size, (rail_across_left[0], rail_across_left[1])
    work = post_work.on_edge(size, Face.UPPER)
    work += in_post(knock_down, size, across, left_connector_in_post)
    return (replace(post_blank, cuts=work.cuts, holes=work.holes),)


@rule
def post_right(
    post_blank: Part,
    post_work: PostWork,
    knock_down: KnockDown,
    post_inner_x: Mm,
    post_bottom: Mm,
    rail_across_right: Places,
    right_connector_in_post: Places,
) -> Made:
    """The post at the right, as seen from the foot."""
    size, across = post_blank.size, (rail_across_right[0], rail_across_right[1])
    work = post_work.on_edge(size, Face.LOWER)
    work += in_post(knock_down, size, across, right_connector_in_post)
    at = (post_inner_x, 0.0, post_bottom)
    return (replace(post_blank, at=at, cuts=work.cuts, holes=work.holes),)


@rule
def glides(
    frame: Frame,
    end_assembly: str,
    glide_height: Mm,
    glide_width: Mm,
    glide_places: Places,
    glide_plane: Mm,
) -> Made:
    """A glide or leveller under each post keeps its end grain off the floor."""
    if not glide_height:
        return ()
    return (
        Part(
            name="glide",
            assembly=end_assembly,
            length=glide_height,
            width=glide_width,
            thickness=glide_width,
            lies="zuv",
            at=(glide_places[0], glide_plane, 0.0),
            places=along_u(glide_places),
            frame=frame,
            material="steel",
            hardware="GLIDE",
            is_round=True,
            held=(Hold("floor", "stands"),),
        ),
    )
