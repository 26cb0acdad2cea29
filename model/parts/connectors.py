"""Plates, bolts and nuts that hold a long side to its posts. Read for left and right."""

from __future__ import annotations

from dataclasses import replace

from model.frame import Frame
from model.joints.connector import KnockDown, plate_screws, through_nut
from model.materials import Connector
from model.part import Face, Hold, Hole, Made, Part, Screw
from model.parts.rows import in_rows
from model.rules import rule
from model.units import Mm, Places


@rule
def plate_blank(
    connector: Connector,
    row_name: str,
    frame: Frame,
    plate_length: Mm,
    plate_width: Mm,
    plate_thickness: Mm,
    rail_plate_from: Mm,
    plate_plane: Mm,
    plate_bottom: Mm,
) -> Part:
    """What all four plates of a side have alike."""
    return Part(
        name=connector.kind,
        assembly=f"{row_name} side",
        length=plate_length,
        width=plate_width,
        thickness=plate_thickness,
        lies="zvu",
        at=(rail_plate_from, plate_plane, plate_bottom),
        frame=frame,
        material="steel",
    )


def _plate(blank: Part, knock: KnockDown, half: str, from_u: Mm, is_up: bool, into: str) -> Part:
    """One half, screwed `into` its part from the face that looks at the other half.

    `is_up` when the screws go towards the head.
    """
    assert knock.screw is not None
    head, way = (0.0, 1.0) if is_up else (blank.size[2], -1.0)
    toward = (0.0, 0.0, way)
    spots = plate_screws(blank.size[0], knock.row.screws_per_plate)
    at = [(along, blank.size[1] / 2, head) for along in spots]
    wide, kind = knock.screw.shank_hole_mm, f"wood screw {knock.screw.key}"
    face = Face.BACK if is_up else Face.FACE
    return replace(
        blank,
        name=f"{blank.name}, {half} half",
        hardware=f"{blank.name}-{half}".upper().replace(" ", "-"),
        at=(from_u, *blank.at[1:]),
        holes=tuple(Hole("screw hole", face, each, toward, wide, blank.size[2]) for each in at),
        screws=tuple(
            Screw(kind, each, toward, knock.screw_length, knock.screw.shank_mm, into) for each in at
        ),
        held=(Hold(into, "screwed"),),
    )


@rule
def post_plates(
    connector: Connector,
    knock_down: KnockDown,
    row_name: str,
    plate_blank: Part,
    post_plate_from: Mm,
    last_post_plate_from: Mm,
) -> Made:
    """The halves in the posts, at foot and head."""
    if not connector.is_plate:
        return ()
    spots = ((post_plate_from, False, "foot"), (last_post_plate_from, True, "head"))
    return tuple(
        _plate(plate_blank, knock_down, "post", from_u, is_up, f"{end}.post_{row_name}")
        for from_u, is_up, end in spots
    )


@rule
def rail_plates(
    connector: Connector,
    knock_down: KnockDown,
    is_framed: bool,
    plate_blank: Part,
    rail_plate_from: Mm,
    last_rail_plate_from: Mm,
) -> Made:
    """The halves in the side's ends hang in those of the posts and come off again."""
    if not connector.is_plate:
        return ()
    into = "stiles" if is_framed else "side_rail"
    hangs = Hold("post_plates", "hooked in", knock_down=True)
    spots = ((rail_plate_from, True), (last_rail_plate_from, False))
    plates = [_plate(plate_blank, knock_down, "rail", u, is_up, into) for u, is_up in spots]
    return tuple(replace(each, held=(*each.held, hangs)) for each in plates)


@rule
def bolts(
    bolt_bottoms: Places,
    bolt_places: Places,
    connector: Connector,
    row_name: str,
    frame: Frame,
    bolt_length: Mm,
    bolt_diameter: Mm,
    bolt_plane: Mm,
) -> Made:
    """Bolts pull the side against its posts, and come out again."""
    if not bolt_bottoms:
        return ()
    posts = f"foot.post_{row_name}|head.post_{row_name}"
    return (
        Part(
            name="bolt",
            assembly=f"{row_name} side",
            length=bolt_length,
            width=bolt_diameter,
            thickness=bolt_diameter,
            lies="uvz",
            at=(bolt_places[0], bolt_plane, bolt_bottoms[0]),
            places=in_rows(bolt_places, bolt_bottoms),
            frame=frame,
            material="steel",
            hardware=connector.kind.upper().replace(" ", "-"),
            is_round=True,
            held=(
                Hold("nuts", "thread", knock_down=True),
                Hold(posts, "bolt hole", knock_down=True),
            ),
        ),
    )


@rule
def nuts(
    nut_bottoms: Places,
    nut_places: Places,
    connector: Connector,
    row_name: str,
    is_framed: bool,
    frame: Frame,
    nut_length: Mm,
    nut_diameter: Mm,
    bolt_diameter: Mm,
    nut_plane: Mm,
) -> Made:
    """Nuts lie across the rail, in holes drilled from inside the bed."""
    if not nut_bottoms:
        return ()
    rail = "top_rail|bottom_rail" if is_framed else "side_rail"
    return (
        Part(
            name="nut",
            assembly=f"{row_name} side",
            length=nut_length,
            width=nut_diameter,
            thickness=nut_diameter,
            lies="vuz",
            at=(nut_places[0], nut_plane, nut_bottoms[0]),
            places=in_rows(nut_places, nut_bottoms),
            frame=frame,
            material="steel",
            hardware=f"{connector.kind}-nut".upper().replace(" ", "-"),
            is_round=True,
            holes=(through_nut(nut_length, nut_diameter, bolt_diameter),),
            held=(Hold(rail, "nut hole", knock_down=True),),
        ),
    )
