"""Framed fronts: tongue-and-groove corners, floating panel. Read for left, right and foot."""

from __future__ import annotations

from model.dimensions.spots import shifted
from model.frame import Frame
from model.joints.groove import middle_groove
from model.joints.rabbet import rabbet
from model.joints.tongue import tongue
from model.materials import Material, PullScrew
from model.part import Face, Hold, Made, Part
from model.parts.drawer_places import of_drawers
from model.parts.front_fixing import for_pull
from model.parts.fronts import ON_BOX
from model.rules import rule
from model.units import Count, Mm, Places

TENON = "stub tenon in groove"


@rule
def front_stiles(
    framed_places: Places,
    front_far_stile_places: Places,
    drawers_from: Count,
    front_face: Mm,
    front_bottom: Mm,
    front_height: Mm,
    front_stile_width: Mm,
    front_thickness: Mm,
    front_groove_width: Mm,
    front_groove_depth: Mm,
    frame: Frame,
    frame_wood: Material,
    row_name: str,
) -> Made:
    """The stiles of a framed front run its full height and are grooved for rails and panel."""
    size = (front_height, front_stile_width, front_thickness)
    made = []
    sides = ((framed_places, Face.UPPER), (front_far_stile_places, Face.LOWER))
    for places, edge in sides if framed_places else ():
        cut = middle_groove(size, edge, width=front_groove_width, depth=front_groove_depth)
        made.append(
            Part(
                name="front stile",
                assembly="fronts",
                length=front_height,
                width=front_stile_width,
                thickness=front_thickness,
                lies="zuv",
                at=(places[0], front_face, front_bottom),
                places=of_drawers(places, first=drawers_from),
                frame=frame,
                material=frame_wood.key,
                cuts=(cut,),
                held=(Hold("front_rails", TENON, glued=True), ON_BOX),
                row=row_name,
            )
        )
    return tuple(made)


@rule
def front_rails(
    front_rail_places: Places,
    drawers_from: Count,
    front_face: Mm,
    front_bottom: Mm,
    front_upper_rail_bottom: Mm,
    front_rail_length: Mm,
    front_stile_width: Mm,
    front_thickness: Mm,
    front_groove_width: Mm,
    front_groove_depth: Mm,
    frame: Frame,
    frame_wood: Material,
    row_name: str,
) -> Made:
    """The rails of a framed front go into the stiles' grooves with stub tenons."""
    size = (front_rail_length, front_stile_width, front_thickness)
    made = []
    rails = ((front_bottom, Face.UPPER), (front_upper_rail_bottom, Face.LOWER))
    tenons = tuple(
        cut
        for end in (Face.NEAR, Face.FAR)
        for cut in tongue(size, end, length=front_groove_depth, thickness=front_groove_width)
    )
    for bottom, edge in rails if front_rail_places else ():
        cut = middle_groove(size, edge, width=front_groove_width, depth=front_groove_depth)
        made.append(
            Part(
                name="front rail",
                assembly="fronts",
                length=front_rail_length,
                width=front_stile_width,
                thickness=front_thickness,
                lies="uzv",
                at=(front_rail_places[0], front_face, bottom),
                places=of_drawers(front_rail_places, first=drawers_from),
                frame=frame,
                material=frame_wood.key,
                cuts=(*tenons, cut),
                held=(Hold("front_stiles", TENON, glued=True),),
                row=row_name,
            )
        )
    return tuple(made)


@rule
def front_panels(
    front_panel_places: Places,
    drawers_from: Count,
    front_panel_plane: Mm,
    front_panel_bottom: Mm,
    front_panel_width: Mm,
    front_panel_height: Mm,
    front_panel_stock: Mm,
    front_groove_width: Mm,
    front_groove_depth: Mm,
    front_panel_float: Mm,
    front_panel_float_up: Mm,
    pull_screw: PullScrew | None,
    pull_spots: Places,
    pull_middle: Mm,
    front_places: Places,
    hand_hole_width: Mm,
    pull_height: Mm,
    frame: Frame,
    front_panel_material: Material,
    row_name: str,
) -> Made:
    """The panel is rabbeted on its back, so that a tongue fills the groove, but for its float."""
    if not front_panel_places:
        return ()
    size = (front_panel_width, front_panel_height, front_panel_stock)
    behind = front_panel_stock - front_groove_width
    cuts = tuple(
        rabbet(size, Face.FACE, edge, width=front_groove_depth, depth=behind)
        for edge in (Face.NEAR, Face.FAR, Face.LOWER, Face.UPPER)
        if behind > 1e-6
    )
    start = front_places[0] - front_panel_places[0]
    work = for_pull(
        size, screw=pull_screw, along=shifted(pull_spots, start),
        up=pull_middle - front_panel_bottom, into="" if drawers_from else "pulls",
        hand_hole=(hand_hole_width, pull_height), middle=size[0] / 2,
    )  # fmt: skip
    return (
        Part(
            name="front panel",
            assembly="fronts",
            length=front_panel_width,
            width=front_panel_height,
            thickness=front_panel_stock,
            lies="uzv",
            at=(front_panel_places[0], front_panel_plane, front_panel_bottom),
            places=of_drawers(front_panel_places, first=drawers_from),
            frame=frame,
            material=front_panel_material.key,
            cuts=cuts + work.cuts,
            holes=work.holes,
            screws=work.screws,
            held=(
                Hold("front_stiles", "floats in grooves", within=front_panel_float),
                Hold("front_rails", "floats in grooves", within=front_panel_float_up),
            ),
            row=row_name,
        ),
    )
