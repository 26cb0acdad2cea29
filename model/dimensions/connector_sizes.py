"""What the bed's knock-down joints need of wood and hardware, wherever they are."""

from __future__ import annotations

from model.brief.drawers import BearerFixing
from model.errors import CannotBuild
from model.materials import Connector, screw_no_longer_than, wood_screw
from model.mechanics.fasteners.spacing import wood_between
from model.rules import rule
from model.units import Mm, Places

PLATE_WALL: Mm = 1.5  # beside a plate in the end of a rail; from memory
BOLT_END: Mm = 3.0  # of a bolt beyond its nut: 1/8 in; common practice, no source
NUT_COVER: Mm = 3.0  # of wood behind a nut, so that it does not show; from memory
LEAST_CLAMPED: Mm = 12.0  # of post under a bolt's head: 1/2 in; common practice, no source
WALL_BEHIND_POCKET: Mm = 12.7  # 1/2 in of post behind a pocket; common practice, no source
SCREW_COVER: Mm = 3.0  # 1/8 in of wood before a point; common practice, no source
PLATE_GAUGE = "10"  # of the thickest screws of plates
SCREW_ROOM: Mm = 5.0  # of wood beside a plate screw's axis; from memory
BOLT_ROOM: Mm = 1.0  # a bolt's hole is wider than the bolt; common practice, no source


@rule
def plate_length(connector: Connector) -> Mm:
    """Bed-rail plates are as long as they are sold."""
    return connector.plate_length_mm


@rule
def plate_width(connector: Connector, frame_thickness: Mm) -> Mm:
    """A plate goes into the rail's end, with a wall of wood at each side.

    Source: common practice, no source
    """
    if connector.is_plate and frame_thickness < connector.plate_width_mm + 2 * PLATE_WALL:
        raise CannotBuild(
            "frame_stock", "The rails are too thin for the plates of their connectors.",
            involved=("connector",),
        )  # fmt: skip
    return connector.plate_width_mm


@rule
def plate_thickness(connector: Connector) -> Mm:
    """Each half of a pair is let in flush, so that wood meets wood."""
    return connector.plate_thickness_mm


@rule
def end_stile_ground(
    end_stile_least: Mm,
    panel_groove_depth: Mm,
    left_closed_bays: Places,
    right_closed_bays: Places,
    left_blind_bays: Places,
    right_blind_bays: Places,
    slanted_bearer_ground: Mm,
) -> Mm:
    """What an end stile offers the screws of its plate: beside a panel its groove is lost, before a
    bearer what the bearer's own screws take.
    """
    closed = left_closed_bays or right_closed_bays or left_blind_bays or right_blind_bays
    lost = max(panel_groove_depth if closed else 0.0, slanted_bearer_ground)
    return end_stile_least - lost


@rule
def slanted_bearer_ground(
    bearer_fixing: BearerFixing, has_drawers: bool, has_centre_runner: bool, bearer_across: Mm
) -> Mm:
    """How far from a stile's inner edge the screws that slant through a bearer into it, and a
    diameter of wood beside them, take its ground.
    """
    if bearer_fixing != "screws" or not has_drawers or has_centre_runner:
        return 0.0
    shank = wood_screw(PLATE_GAUGE).shank_mm
    return bearer_across / 2 + shank / 2 + wood_between(shank, shank) - SCREW_COVER


@rule
def post_ground(
    post_along: Mm,
    post_width: Mm,
    end_joint_reach: Mm,
    rail_set_back: Mm,
    frame_thickness: Mm,
    end_rail_back_plane: Mm,
) -> Mm:
    """What a post offers the screws of its plates, short of the end rails' joints."""
    screws_reach = rail_set_back + frame_thickness / 2 + SCREW_ROOM
    is_clear = post_width - end_joint_reach >= screws_reach
    return post_along if is_clear else post_along - end_rail_back_plane


@rule
def plate_screw_length(
    connector: Connector,
    left_is_framed: bool,
    right_is_framed: bool,
    end_stile_ground: Mm,
    post_ground: Mm,
) -> Mm:
    """Plate screws are as long as advised, or as long as end stiles and posts allow.

    Source: common practice, no source
    """
    if connector.screw_length_mm is None:
        return 0.0
    is_framed = left_is_framed or right_is_framed
    ground = min(post_ground, end_stile_ground) if is_framed else post_ground
    if connector.screw_length_mm <= ground - SCREW_COVER:
        return connector.screw_length_mm
    try:
        return screw_no_longer_than(connector.screw_gauge, ground - SCREW_COVER)
    except CannotBuild:
        raise CannotBuild(
            "end_stile_least" if ground < post_ground else "post_along",
            "The screws of the connectors find too little wood.", involved=("connector",),
        ) from None  # fmt: skip


@rule
def connector_lift(connector: Connector) -> Mm:
    """How far a rail is lifted to hang it or to take it off."""
    return connector.lift_mm


@rule
def rail_spare_thickness(frame_thickness: Mm, connector: Connector) -> Mm:
    """What the rail has beyond the thickness that its connector asks for; below zero it is weak."""
    return frame_thickness - connector.least_rail_thickness_mm


@rule
def post_behind_pocket(post_along: Mm, connector: Connector) -> Mm:
    """Behind the pocket for hooks the post keeps half an inch.

    Source: common practice, no source
    """
    wall = post_along - connector.plate_thickness_mm - connector.pocket_depth_mm
    if connector.is_plate and wall < WALL_BEHIND_POCKET:
        raise CannotBuild(
            "post_along", "The connectors' pockets would come through the posts.",
            involved=("connector",),
        )  # fmt: skip
    return wall


@rule
def bolt_diameter(connector: Connector) -> Mm:
    """Bolts are as thick as they are sold."""
    return connector.bolt_diameter_mm


@rule
def bolt_length(connector: Connector) -> Mm:
    """Bolts are as long as they are sold."""
    return connector.bolt_length_mm


@rule
def nut_diameter(connector: Connector) -> Mm:
    """The nut's hole in the rail fits its nut."""
    return connector.nut_diameter_mm


@rule
def nut_length(connector: Connector, frame_thickness: Mm) -> Mm:
    """A nut lies in the middle of the rail's thickness and must not show outside.

    Source: a magazine on bed building, 2007: rails for barrel nuts are often 1 1/2 in thick.
    """
    least = connector.nut_length_mm + 2 * NUT_COVER
    if connector.nut_length_mm and frame_thickness < least:
        raise CannotBuild(
            "frame_stock", "The rails are too thin for the nuts of their bolts.",
            involved=("connector",),
        )  # fmt: skip
    return connector.nut_length_mm


@rule
def bolt_in_rail_least(connector: Connector) -> Mm:
    """A bolt reaches past the middle of its nut, through the nut and a little beyond.

    Source: common practice, no source
    """
    return connector.nut_from_end_mm + connector.nut_diameter_mm / 2 + BOLT_END


@rule
def counterbore_depth(
    connector: Connector, bolt_length: Mm, post_along: Mm, bolt_in_rail_least: Mm
) -> Mm:
    """The bolt's head is sunk into the post's outer face, as deep as its length asks for."""
    if not bolt_length:
        return 0.0
    depth = max(connector.counterbore_depth_mm, post_along + bolt_in_rail_least - bolt_length)
    if post_along - depth < LEAST_CLAMPED:
        raise CannotBuild(
            "post_along", "The bolts leave too little of the post under their heads.",
            involved=("connector",),
        )  # fmt: skip
    return depth


@rule
def bolt_in_rail(bolt_length: Mm, post_along: Mm, counterbore_depth: Mm) -> Mm:
    """What the post leaves of the bolt goes into the rail."""
    return bolt_length - (post_along - counterbore_depth) if bolt_length else 0.0


@rule
def bolt_from(counterbore_depth: Mm) -> Mm:
    """A bolt's head lies on the floor of its counterbore in the foot post."""
    return counterbore_depth


@rule
def last_bolt_from(bed_length: Mm, bolt_length: Mm, counterbore_depth: Mm) -> Mm:
    """At the head, too, a bolt begins at the floor of its counterbore and goes the other way."""
    return bed_length - counterbore_depth - bolt_length


@rule
def bolt_past_tenons(
    connector: Connector,
    bolt_length: Mm,
    post_width: Mm,
    end_joint_reach: Mm,
    panel_groove_depth: Mm,
    rail_set_back: Mm,
    frame_thickness: Mm,
) -> Mm:
    """Bolts go through the post beside the joints of the end rails."""
    bolt_side = rail_set_back + (frame_thickness + connector.bolt_diameter_mm + BOLT_ROOM) / 2
    reach = max(end_joint_reach, panel_groove_depth)
    if bolt_length and post_width - reach < bolt_side:
        raise CannotBuild(
            "post_width", "The bed bolts would go through the joints of the end rails.",
            involved=("tenon_length", "connector"),
        )  # fmt: skip
    return post_width - reach - bolt_side
