"""Slab fronts, and the pulls on all fronts. Read for left, right and foot."""

from __future__ import annotations

from model.frame import Frame
from model.materials import Material, Pull, PullScrew
from model.part import Hold, Made, Part
from model.parts.drawer_places import of_drawers
from model.parts.front_fixing import for_pull
from model.rules import rule
from model.units import Count, Mm, Places

HELD = "box_fronts|fixed_front_blocks"
ON_BOX = Hold(HELD, "screwed from behind", knock_down=True)


@rule
def front_slabs(
    slab_places: Places,
    drawers_from: Count,
    front_face: Mm,
    front_bottom: Mm,
    front_width: Mm,
    front_height: Mm,
    front_thickness: Mm,
    pull_screw: PullScrew | None,
    pull_spots: Places,
    pull_middle: Mm,
    hand_hole_width: Mm,
    pull_height: Mm,
    frame: Frame,
    front_material: Material,
    row_name: str,
    eased_edge: Mm,
) -> Made:
    """A slab front is one board in front of its box."""
    if not slab_places:
        return ()
    size = (front_width, front_height, front_thickness)
    work = for_pull(
        size, screw=pull_screw, along=pull_spots, up=pull_middle - front_bottom,
        into="" if drawers_from else "pulls",  # with a drawer the screws start inside the box
        hand_hole=(hand_hole_width, pull_height), middle=size[0] / 2,
    )  # fmt: skip
    return (
        Part(
            name="front",
            assembly="fronts",
            length=front_width,
            width=front_height,
            thickness=front_thickness,
            lies="uzv",
            at=(slab_places[0], front_face, front_bottom),
            places=of_drawers(slab_places, first=drawers_from),
            frame=frame,
            material=front_material.key,
            eased=eased_edge,
            cuts=work.cuts,
            holes=work.holes,
            screws=work.screws,
            held=(ON_BOX,),
            row=row_name,
        ),
    )


@rule
def pulls(
    pull_places: Places,
    second_pull_places: Places,
    drawers_from: Count,
    pull_plane: Mm,
    pull_bottom: Mm,
    pull_length: Mm,
    pull_height: Mm,
    pull_projection: Mm,
    pull: Pull,
    frame: Frame,
    row_name: str,
) -> Made:
    """Pulls stand on the fronts, centred or in pairs, and move with them."""
    if not pull_places:
        return ()
    return (
        Part(
            name=pull.name,
            assembly="fronts",
            length=pull_length,
            width=pull_height,
            thickness=pull_projection,
            lies="uzv",
            at=(pull_places[0], pull_plane, pull_bottom),
            places=of_drawers(pull_places, second_pull_places, first=drawers_from),
            frame=frame,
            material="metal",
            held=(Hold("front_slabs|front_panels", "bolted", knock_down=True),),
            row=row_name,
            hardware=f"PULL-{pull.key}",
        ),
    )
