"""Where a long side's rails are joined to its posts. Read for left and right."""

from __future__ import annotations

from model.dimensions.fasteners import BRACKET_GAUGE
from model.errors import CannotBuild
from model.materials import Connector, wood_screw
from model.mechanics.fasteners.spacing import wood_between
from model.rules import rule
from model.units import Mm, Places

RAIL_ROUND_PLATE: Mm = (
    25.4  # a rail is at least 1 in wider than its plate; common practice, no source
)
ROUND_NUT: Mm = 6.0  # of wood beside a nut's hole: 1/4 in; common practice, no source


@rule
def lowest_of_side(is_framed: bool, frame_bottom: Mm, side_rail_bottom: Mm) -> Mm:
    """The lowest edge of the side that meets its posts."""
    return frame_bottom if is_framed else side_rail_bottom


@rule
def plate_room(
    connector: Connector, is_framed: bool, opening_height: Mm, rail_width: Mm, plate_length: Mm
) -> Mm:
    """A plate is let into the end of a plain rail, or into the end stile of a face frame.

    Source: rail at least plate + 1 in: common practice, no source
    """
    room, field = (opening_height, "opening_height") if is_framed else (rail_width, "rail_width")
    if connector.is_plate and room < plate_length + RAIL_ROUND_PLATE:
        raise CannotBuild(
            field, "The plates of the connectors are too long for the end of the side.",
            involved=("connector",),
        )  # fmt: skip
    return room - plate_length


@rule
def plate_middle(
    is_framed: bool, opening_bottom: Mm, opening_height: Mm, side_rail_bottom: Mm, rail_width: Mm
) -> Mm:
    """A plate sits in the middle of the rail, or of the end stile."""
    return opening_bottom + opening_height / 2 if is_framed else side_rail_bottom + rail_width / 2


@rule
def plate_bottom(plate_middle: Mm, plate_length: Mm) -> Mm:
    """The plate's lower end."""
    return plate_middle - plate_length / 2


@rule
def bolt_heights(
    connector: Connector,
    is_framed: bool,
    rail_top: Mm,
    side_rail_bottom: Mm,
    rail_width: Mm,
    bolt_in_top_rail: Mm,
    bolt_in_bottom_rail: Mm,
) -> Places:
    """Two bolts keep a side from turning: in a plain rail, or one in each rail of a face frame."""
    if connector.is_plate:
        return ()
    if is_framed:
        return (bolt_in_bottom_rail, bolt_in_top_rail)
    return (side_rail_bottom + rail_width / 4, rail_top - rail_width / 4)


def _bolt_room(width: float, reach: float, connector: Connector, is_framed: bool) -> bool:
    needed = max(connector.nut_diameter_mm, connector.bolt_diameter_mm) + 2 * ROUND_NUT
    return connector.is_plate or not is_framed or width - reach >= needed


@rule
def rail_edge_taken(
    frame_joint_reach: Mm, panel_groove_depth: Mm, closed_bays: Places, blind_bays: Places
) -> Mm:
    """How deep the joints of the stiles, and grooves for panels, go into the rails of the frame."""
    grooved = closed_bays or blind_bays
    return max(frame_joint_reach, panel_groove_depth) if grooved else frame_joint_reach


@rule
def bolt_in_top_rail(
    connector: Connector, is_framed: bool, rail_top: Mm, top_rail_width: Mm, rail_edge_taken: Mm
) -> Mm:
    """The upper bolt keeps clear of the end stile's joint in the top rail."""
    if not _bolt_room(top_rail_width, rail_edge_taken, connector, is_framed):
        raise CannotBuild(
            "top_rail_width", "Above the stile's joint the top rail has no room for a bolt.",
        )  # fmt: skip
    return rail_top - (top_rail_width - rail_edge_taken) / 2


@rule
def bolt_in_bottom_rail(
    connector: Connector,
    is_framed: bool,
    frame_bottom: Mm,
    bottom_rail_width: Mm,
    rail_edge_taken: Mm,
    frame_bracket_heights: Places,
) -> Mm:
    """The lower bolt keeps clear of the end stile's joint in the bottom rail, and it and its nut
    of the screws of brackets above it.
    """
    if not _bolt_room(bottom_rail_width, rail_edge_taken, connector, is_framed):
        raise CannotBuild(
            "bottom_rail_width", "Under the stile's joint the bottom rail has no room for a bolt.",
        )  # fmt: skip
    middle = frame_bottom + (bottom_rail_width - rail_edge_taken) / 2
    if connector.is_plate or not is_framed or not frame_bracket_heights:
        return middle
    shank = wood_screw(BRACKET_GAUGE).shank_mm
    half = max(connector.nut_diameter_mm, connector.bolt_diameter_mm) / 2
    under = min(frame_bracket_heights) - shank / 2 - wood_between(shank, shank) - half
    return max(min(middle, under), frame_bottom + half + ROUND_NUT)


@rule
def connector_up(connector: Connector, plate_middle: Mm, bolt_heights: Places) -> Places:
    """Heights of the connectors' middles above the floor, alike in post and rail."""
    return (plate_middle,) if connector.is_plate else bolt_heights


@rule
def rail_plate_from(run_from: Mm) -> Mm:
    """The rail's half of a pair lies in its end, flush with it."""
    return run_from


@rule
def post_plate_from(run_from: Mm, plate_thickness: Mm) -> Mm:
    """The post's half lies in its inner face, flush with it."""
    return run_from - plate_thickness


@rule
def last_rail_plate_from(run_to: Mm, plate_thickness: Mm) -> Mm:
    """At the head the rail's half ends with the rail."""
    return run_to - plate_thickness


@rule
def last_post_plate_from(run_to: Mm) -> Mm:
    """At the head the post's half begins where the rail ends."""
    return run_to


@rule
def plate_plane(front_plane: Mm, frame_thickness: Mm, plate_width: Mm) -> Mm:
    """Plates lie in the middle of the rail's thickness."""
    return front_plane + (frame_thickness - plate_width) / 2


@rule
def bolt_plane(front_plane: Mm, frame_thickness: Mm, bolt_diameter: Mm) -> Mm:
    """Bolts lie in the middle of the rail's thickness."""
    return front_plane + (frame_thickness - bolt_diameter) / 2


@rule
def nut_plane(front_plane: Mm, frame_thickness: Mm, nut_length: Mm) -> Mm:
    """Nuts lie across the middle of the rail's thickness."""
    return front_plane + (frame_thickness - nut_length) / 2


@rule
def nut_places(run_from: Mm, run_to: Mm, connector: Connector, nut_diameter: Mm) -> Places:
    """Where nuts begin along the side: as far from both ends of the rail."""
    first = run_from + connector.nut_from_end_mm - nut_diameter / 2
    return (first, run_to - connector.nut_from_end_mm - nut_diameter / 2)


@rule
def lift_spare(connector_lift: Mm, head_rail_lift_room: Mm, foot_rail_lift_room: Mm) -> Mm:
    """What remains above a rail that is lifted to hang it or to take it off."""
    spare = min(head_rail_lift_room, foot_rail_lift_room) - connector_lift
    if connector_lift and spare < 0:
        raise CannotBuild(
            "cap_overhang", "The cap board would stop the side rails from being lifted off.",
            involved=("connector",),
        )  # fmt: skip
    return spare


@rule
def connector_in_post(connector_up: Places, glide_height: Mm) -> Places:
    """How far up a post the connectors are, from its lower end."""
    return tuple(up - glide_height for up in connector_up)


@rule
def connector_in_rail(is_framed: bool, connector_up: Places, side_rail_bottom: Mm) -> Places:
    """How far up a plain rail the connectors are, from its lower edge."""
    return () if is_framed else tuple(up - side_rail_bottom for up in connector_up)


@rule
def connector_in_top_rail(
    is_framed: bool, bolt_heights: Places, bolt_in_top_rail: Mm, opening_top: Mm
) -> Places:
    """How far up the top rail of a face frame its bolts are."""
    return (bolt_in_top_rail - opening_top,) if is_framed and bolt_heights else ()


@rule
def connector_in_bottom_rail(
    is_framed: bool, bolt_heights: Places, bolt_in_bottom_rail: Mm, frame_bottom: Mm
) -> Places:
    """How far up the bottom rail of a face frame its bolts are."""
    return (bolt_in_bottom_rail - frame_bottom,) if is_framed and bolt_heights else ()


@rule
def connector_in_stile(
    connector: Connector, is_framed: bool, plate_middle: Mm, stile_bottom: Mm
) -> Places:
    """How far up an end stile the plates are, from its lower end."""
    return (plate_middle - stile_bottom,) if is_framed and connector.is_plate else ()


@rule
def bolt_bottoms(bolt_heights: Places, bolt_diameter: Mm) -> Places:
    """The bolts' lowest lines."""
    return tuple(up - bolt_diameter / 2 for up in bolt_heights)


@rule
def nut_bottoms(bolt_heights: Places, nut_diameter: Mm) -> Places:
    """The nuts' lowest lines."""
    return tuple(up - nut_diameter / 2 for up in bolt_heights)


@rule
def bolt_places(bolt_from: Mm, last_bolt_from: Mm) -> Places:
    """Where bolts begin along the side: in the foot post, and in the rail before the head post."""
    return (bolt_from, last_bolt_from)
