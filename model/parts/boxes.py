"""Drawer boxes: sides, front and back between them, bottom. Read for left, right and foot."""

from __future__ import annotations

from model.frame import Frame
from model.joints.work import Work
from model.materials import Material
from model.part import Cut, Face, Hold, Made, Part, Point
from model.parts.box_corners import BoxMake
from model.parts.drawer_places import of_drawers
from model.rules import rule
from model.units import Mm, Places

CARRIED = "slide_movers|runners|opposite_bearers|bearers|guides|glide_buttons|box_fronts"


def _side(
    name: str,
    at: Point,
    places: Places,
    size: tuple[Mm, Mm, Mm],
    cuts: tuple[Cut, ...],
    frame: Frame,
    material: Material,
    row: str,
    joint: str,
) -> Part:
    return Part(
        name=name,
        assembly="drawers",
        length=size[0],
        width=size[1],
        thickness=size[2],
        lies="vzu",
        at=at,
        places=of_drawers(places),
        frame=frame,
        material=material.key,
        cuts=cuts,
        held=(
            Hold("box_fronts", joint, glued=True),
            Hold("box_backs", joint, glued=True),
            Hold(CARRIED, "carried", knock_down=True),
        ),
        row=row,
    )


@rule
def box_near_sides(
    box_places: Places,
    box_front_plane: Mm,
    box_bottom: Mm,
    box_depth: Mm,
    box_height: Mm,
    box_thickness: Mm,
    box_make: BoxMake,
    frame: Frame,
    box_sheet: Material,
    row_name: str,
) -> Made:
    """Box sides run the full depth: the side at the opening's first edge."""
    if not box_places:
        return ()
    size = (box_depth, box_height, box_thickness)
    at = (box_places[0], box_front_plane, box_bottom)
    cuts = box_make.side(size, Face.FACE)
    return (
        _side(
            "box side",
            at,
            box_places,
            size,
            cuts,
            frame,
            box_sheet,
            row_name,
            box_make.held_by,
        ),
    )


@rule
def box_far_sides(
    box_far_side_places: Places,
    box_front_plane: Mm,
    box_bottom: Mm,
    box_depth: Mm,
    box_height: Mm,
    box_thickness: Mm,
    box_make: BoxMake,
    frame: Frame,
    box_sheet: Material,
    row_name: str,
) -> Made:
    """The side at the opening's far edge is the other's mirror image."""
    if not box_far_side_places:
        return ()
    size = (box_depth, box_height, box_thickness)
    at = (box_far_side_places[0], box_front_plane, box_bottom)
    cuts = box_make.side(size, Face.BACK)
    return (
        _side(
            "box side", at, box_far_side_places, size, cuts, frame, box_sheet, row_name,
            box_make.held_by,
        ),
    )  # fmt: skip


@rule
def box_fronts(
    box_front_places: Places,
    box_front_plane: Mm,
    box_bottom: Mm,
    box_front_length: Mm,
    box_height: Mm,
    box_thickness: Mm,
    box_make: BoxMake,
    front_fixing: Work,
    frame: Frame,
    box_sheet: Material,
    row_name: str,
) -> Made:
    """The box front stands between the sides and takes the drawer front."""
    if not box_front_places:
        return ()
    size = (box_front_length, box_height, box_thickness)
    work = box_make.front(size, Face.FACE) + front_fixing
    return (
        Part(
            name="box front",
            assembly="drawers",
            length=box_front_length,
            width=box_height,
            thickness=box_thickness,
            lies="uzv",
            at=(box_front_places[0], box_front_plane, box_bottom),
            places=of_drawers(box_front_places),
            frame=frame,
            material=box_sheet.key,
            cuts=work.cuts,
            holes=work.holes,
            screws=work.screws,
            held=_by_sides(box_make),
            row=row_name,
        ),
    )


@rule
def box_backs(
    box_front_places: Places,
    box_back_front: Mm,
    box_back_bottom: Mm,
    box_front_length: Mm,
    box_back_height: Mm,
    box_thickness: Mm,
    box_make: BoxMake,
    frame: Frame,
    box_sheet: Material,
    row_name: str,
) -> Made:
    """The box back is as long as the front, and as high unless the bottom slides in under it."""
    if not box_front_places:
        return ()
    work = box_make.back((box_front_length, box_back_height, box_thickness), Face.BACK)
    return (
        Part(
            name="box back",
            assembly="drawers",
            length=box_front_length,
            width=box_back_height,
            thickness=box_thickness,
            lies="uzv",
            at=(box_front_places[0], box_back_front, box_back_bottom),
            places=of_drawers(box_front_places),
            frame=frame,
            material=box_sheet.key,
            cuts=work.cuts,
            holes=work.holes,
            screws=work.screws,
            held=_by_sides(box_make),
            row=row_name,
        ),
    )


def _by_sides(make: BoxMake) -> tuple[Hold, ...]:
    return tuple(
        Hold(side, make.held_by, glued=True) for side in ("box_near_sides", "box_far_sides")
    )


@rule
def box_bottoms(
    bottom_places: Places,
    bottom_plane: Mm,
    bottom_under: Mm,
    bottom_across: Mm,
    bottom_along: Mm,
    bottom_thickness: Mm,
    bottom_across_room: Mm,
    bottom_along_room: Mm,
    frame: Frame,
    bottom_sheet: Material,
    row_name: str,
) -> Made:
    """The bottom lies in grooves all round, or slides in under the back and is screwed to it."""
    if not bottom_places:
        return ()
    return (
        Part(
            name="box bottom",
            assembly="drawers",
            length=bottom_across,
            width=bottom_along,
            thickness=bottom_thickness,
            lies="uvz",
            at=(bottom_places[0], bottom_plane, bottom_under),
            places=of_drawers(bottom_places),
            frame=frame,
            material=bottom_sheet.key,
            held=(
                Hold("box_near_sides", "groove", within=bottom_across_room),
                Hold("box_far_sides", "groove", within=bottom_across_room),
                Hold("box_fronts", "groove", within=bottom_along_room),
                Hold("box_backs", "groove, or screwed up into the back", within=bottom_along_room),
            ),
            row=row_name,
        ),
    )
