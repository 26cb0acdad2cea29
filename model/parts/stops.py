"""Stops, and the thin panel behind half-depth drawers. Read for left, right and foot."""

from __future__ import annotations

from model.frame import Frame
from model.materials import Material
from model.part import Hold, Made, Part
from model.parts.drawer_places import of_drawers, standing
from model.parts.slides import BEARERS
from model.rules import rule
from model.units import Mm, Places


@rule
def stop_blocks(
    stop_places: Places,
    side_stop_places: Places,
    side_stop_far_places: Places,
    stop_plane: Mm,
    stop_bottom: Mm,
    stop_width: Mm,
    stop_height: Mm,
    bearer_stock: Mm,
    frame: Frame,
    bearer_wood: Material,
    row_name: str,
) -> Made:
    """Screwed under the bottom once the drawer is in, a stop keeps it from coming out."""
    rows = tuple(row for row in (stop_places, side_stop_places, side_stop_far_places) if row)
    if not rows:
        return ()
    return (
        Part(
            name="drawer stop",
            assembly="drawers",
            length=stop_width,
            width=stop_height,
            thickness=bearer_stock,
            lies="uzv",
            at=(rows[0][0], stop_plane, stop_bottom),
            places=of_drawers(*rows),
            frame=frame,
            material=bearer_wood.key,
            held=(Hold("box_bottoms", "screwed through the bottom", knock_down=True),),
            row=row_name,
        ),
    )


@rule
def rear_stops(
    rear_stop_places: Places,
    rear_stop_far_places: Places,
    box_back_plane: Mm,
    rear_stop_bottom: Mm,
    rear_stop_height: Mm,
    rear_stop_width: Mm,
    box_rear_room: Mm,
    has_centre_runner: bool,
    frame: Frame,
    bearer_wood: Material,
) -> Made:
    """Behind the box sides a block stops the closing drawer where its front should be."""
    if not rear_stop_places:
        return ()
    # On a bearer's face by glue alone: a screw would stand so near to the block's edges, to the
    # bearer's end and to a bracket's screws that it splits the one or meets the others.
    joint = "glued and screwed" if has_centre_runner else "glued"
    return (
        Part(
            name="rear stop",
            assembly="under the bed",
            length=rear_stop_height,
            width=rear_stop_width,
            thickness=box_rear_room,
            lies="zuv",
            at=(rear_stop_places[0], box_back_plane, rear_stop_bottom),
            places=standing(rear_stop_places, rear_stop_far_places),
            frame=frame,
            material=bearer_wood.key,
            held=(Hold(BEARERS, joint, glued=True),),
        ),
    )


@rule
def dust_backs(
    dust_back_places: Places,
    dust_back_plane: Mm,
    box_bottom: Mm,
    opening_width: Mm,
    box_height: Mm,
    dust_back_thickness: Mm,
    frame: Frame,
    bottom_sheet: Material,
) -> Made:
    """A thin panel between the bearers keeps dust, and what falls behind, out of the drawers."""
    if not dust_back_places:
        return ()
    return (
        Part(
            name="dust back",
            assembly="under the bed",
            length=opening_width,
            width=box_height,
            thickness=dust_back_thickness,
            lies="uzv",
            at=(dust_back_places[0], dust_back_plane, box_bottom),
            places=standing(dust_back_places),
            frame=frame,
            material=bottom_sheet.key,
            held=(Hold(BEARERS, "nailed", knock_down=True),),
        ),
    )
