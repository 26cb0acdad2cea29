"""Tongue-and-groove planks between the two rails of an end. Read for head and foot."""

from __future__ import annotations

from dataclasses import replace

from model.brief.ends import EndStyle
from model.frame import Frame
from model.joints.groove import middle_groove
from model.joints.tongue import tongue
from model.materials import Material
from model.part import Cut, Face, Hold, Made, Part, Point
from model.parts.places import along_u
from model.rules import rule
from model.units import Mm, Places


def _tongue(size: Point, length: Mm, thickness: Mm) -> tuple[Cut, ...]:
    return tongue(size, Face.UPPER, length=length, thickness=thickness)


def _groove(size: Point, depth: Mm, width: Mm) -> tuple[Cut, ...]:
    return (middle_groove(size, Face.LOWER, width=width, depth=depth),)


@rule
def plank_blank(
    frame: Frame,
    end_assembly: str,
    filling_height: Mm,
    plank_cut_width: Mm,
    panel_thickness: Mm,
    first_plank_from: Mm,
    panel_plane: Mm,
    filling_bottom: Mm,
    frame_wood: Material,
) -> Part:
    """What all planks of an end have alike: they stand in the grooves of both rails."""
    return Part(
        name="plank",
        assembly=end_assembly,
        length=filling_height,
        width=plank_cut_width,
        thickness=panel_thickness,
        lies="zuv",
        at=(first_plank_from, panel_plane, filling_bottom),
        frame=frame,
        material=frame_wood.key,
        held=(Hold("end_rail", "groove"), Hold("upper_rail", "groove")),
    )


@rule
def edge_planks(
    style: EndStyle,
    plank_blank: Part,
    first_plank_width: Mm,
    edge_plank_cover: Mm,
    last_plank_from: Mm,
    panel_plane: Mm,
    filling_bottom: Mm,
    plank_tongue: Mm,
    plank_tongue_thickness: Mm,
) -> Made:
    """The first and the last plank have a plain edge in the groove of their post."""
    if style != "planks":
        return ()
    first = replace(plank_blank, name="first plank", width=first_plank_width)
    at = (last_plank_from, panel_plane, filling_bottom)
    last = replace(plank_blank, name="last plank", width=edge_plank_cover, at=at)
    return (
        replace(first, cuts=_tongue(first.size, plank_tongue, plank_tongue_thickness)),
        replace(last, cuts=_groove(last.size, plank_tongue, plank_tongue_thickness)),
    )


@rule
def planks(
    inner_plank_places: Places,
    style: EndStyle,
    plank_blank: Part,
    panel_plane: Mm,
    filling_bottom: Mm,
    plank_tongue: Mm,
    plank_tongue_thickness: Mm,
) -> Made:
    """Planks between the first and the last have a groove at one edge and a tongue at the other."""
    if not inner_plank_places:
        return ()
    size = plank_blank.size
    cuts = _groove(size, plank_tongue, plank_tongue_thickness)
    cuts += _tongue(size, plank_tongue, plank_tongue_thickness)
    at = (inner_plank_places[0], panel_plane, filling_bottom)
    return (replace(plank_blank, at=at, cuts=cuts, places=along_u(inner_plank_places)),)
