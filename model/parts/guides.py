"""What a box on a centre runner has under it. Read for left, right and foot."""

from __future__ import annotations

from model.frame import Frame
from model.materials import Material
from model.part import Hold, Made, Part
from model.parts.drawer_places import of_drawers, standing
from model.parts.slides import BEARERS
from model.rules import rule
from model.units import Mm, Places


@rule
def guides(
    guide_places: Places,
    guide_far_places: Places,
    guide_plane: Mm,
    guide_bottom: Mm,
    guide_length: Mm,
    guide_height: Mm,
    box_thickness: Mm,
    slide_play: Mm,
    frame: Frame,
    box_sheet: Material,
    row_name: str,
) -> Made:
    """Two strips under the bottom run beside the centre runner and steer the box."""
    if not guide_places:
        return ()
    return (
        Part(
            name="guide strip",
            assembly="drawers",
            length=guide_length,
            width=guide_height,
            thickness=box_thickness,
            lies="vzu",
            at=(guide_places[0], guide_plane, guide_bottom),
            places=of_drawers(guide_places, guide_far_places),
            frame=frame,
            material=box_sheet.key,
            held=(
                Hold("box_bottoms", "glued and screwed", glued=True),
                Hold(BEARERS, "runs beside", within=slide_play, knock_down=True),
            ),
            row=row_name,
        ),
    )


@rule
def shoes(
    shoe_places: Places,
    guide_plane: Mm,
    box_bottom: Mm,
    guide_length: Mm,
    bearer_height: Mm,
    bottom_up: Mm,
    frame: Frame,
    box_sheet: Material,
    row_name: str,
) -> Made:
    """A shoe under the bottom, between the guide strips, slides on the runner."""
    if not shoe_places:
        return ()
    return (
        Part(
            name="runner shoe",
            assembly="drawers",
            length=guide_length,
            width=bearer_height,
            thickness=bottom_up,
            lies="vuz",
            at=(shoe_places[0], guide_plane, box_bottom),
            places=of_drawers(shoe_places),
            frame=frame,
            material=box_sheet.key,
            held=(
                Hold("box_bottoms", "glued", glued=True),
                Hold(BEARERS, "slides on", knock_down=True),
            ),
            row=row_name,
        ),
    )


@rule
def glide_buttons(
    button_places: Places,
    button_far_places: Places,
    box_front_plane: Mm,
    opening_bottom: Mm,
    box_thickness: Mm,
    box_bottom_room: Mm,
    button_length: Mm,
    frame: Frame,
) -> Made:
    """Buttons on the bottom rail keep a box level that has its runner in the middle."""
    if not button_places:
        return ()
    return (
        Part(
            name="glide button",
            assembly="under the bed",
            length=button_length,
            width=box_thickness,
            thickness=box_bottom_room,
            lies="vuz",
            at=(button_places[0], box_front_plane, opening_bottom),
            places=standing(button_places, button_far_places),
            frame=frame,
            material="plastic",
            held=(Hold("bottom_rail", "nailed", knock_down=True),),
            hardware="GLIDE-BUTTON",
        ),
    )
