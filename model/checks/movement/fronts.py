"""Do drawer fronts and bottoms have room to move? Read for left, right and foot."""

from __future__ import annotations

from model.brief.drawers import BottomFit, FrontFit, FrontStyle
from model.checks.movement.ends import HELD, LEAST_HOLD, LEAST_HOLD_TIGHT, MOVEMENT, NEAR
from model.checks.record import Finding, at_least, at_most, check
from model.materials import Material
from model.parts.front_fixing import OVERSIZE
from model.units import Count, Mm

RUBS: Mm = (
    0.8  # 1/32 in: a narrower gap is closed by a slide that gives; common practice, no source
)
FORUM_GAP: Mm = 1.5875  # 1/16 in


@check(
    "movement",
    "Gap round the inset fronts in the damp",
    about="front_gap_damp",
    source=(
        f"{MOVEMENT}; a furniture forum: 1/16 in each side and the wood's own movement on top; "
        "1/32 in at the least: common practice"
    ),
    remedies=("inset_reveal", "board_cut", "front_material"),
)
def inset_fronts_free(
    front_count: Count,
    front_fit: FrontFit,
    outside_moves: bool,
    front_gap_damp: Mm,
) -> Finding | None:
    """A wide solid front that fits in the dry sticks in the damp."""
    if not front_count or front_fit != "inset" or not outside_moves:
        return None
    return at_least(front_gap_damp, RUBS, tight=FORUM_GAP - RUBS)


@check(
    "movement",
    "Solid fronts move past their screws",
    about="front_screw_slip",
    source=f"{MOVEMENT}; holes 3 mm oversize, half of it to either side: common practice",
    remedies=("board_cut", "front_material"),
)
def front_slips_on_screws(
    drawer_count: Count, front_style: FrontStyle, front_material: Material, front_screw_slip: Mm
) -> Finding | None:
    """Screws in tight holes split a solid front: set each in the middle of its oversize hole."""
    if not drawer_count or front_style != "slab" or front_material.wood is None:
        return None
    return at_most(front_screw_slip, OVERSIZE / 2, tight=0.5)


@check(
    "movement",
    "Panels of fronts have room in the damp",
    about="front_panel_room_damp",
    source=MOVEMENT,
    remedies=("panel_float", "front_groove_depth", "board_cut", "front_panel_material"),
)
def front_panel_free(
    front_count: Count,
    front_style: FrontStyle,
    front_panel_material: Material,
    front_panel_room_damp: Mm,
) -> Finding | None:
    """A solid panel that fills its grooves in the damp opens the corners of its front."""
    if not front_count or front_style == "slab" or front_panel_material.wood is None:
        return None
    return at_least(front_panel_room_damp, 0.0, tight=NEAR)


@check(
    "movement",
    "Panels of fronts stay in their grooves in the dry",
    about="front_panel_hold_dry",
    source=HELD,
    remedies=("front_groove_depth", "panel_float", "board_cut", "front_panel_material"),
)
def front_panel_held(
    front_count: Count,
    front_style: FrontStyle,
    front_panel_material: Material,
    front_panel_hold_dry: Mm,
) -> Finding | None:
    """A panel at its narrowest must still reach into the rails of its front."""
    if not front_count or front_style == "slab" or front_panel_material.wood is None:
        return None
    return at_least(front_panel_hold_dry, LEAST_HOLD, tight=LEAST_HOLD_TIGHT)


@check(
    "movement",
    "Solid bottoms have room in the damp",
    about="bottom_swell",
    source=f"{MOVEMENT}; a free back edge: common practice",
    remedies=("bottom_sheet", "bottom_fit", "board_cut"),
)
def bottom_free(
    drawer_count: Count,
    bottom_sheet: Material,
    bottom_fit: BottomFit,
    bottom_swell: Mm,
    bottom_along_room: Mm,
    box_rear_room: Mm,
) -> Finding | None:
    """A solid bottom moves from front to back: let it out under a cut-down back, with the screw in
    a slot.
    """
    if not drawer_count or bottom_sheet.wood is None:
        return None
    if bottom_fit == "groove":
        return at_most(bottom_swell, 2 * bottom_along_room, tight=NEAR)
    return at_most(bottom_swell, box_rear_room, tight=1.0)
