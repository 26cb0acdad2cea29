"""Do panels and planks of an end have room in the damp, and hold in the dry? Read for head and
foot.
"""

from __future__ import annotations

from model.brief.ends import EndStyle
from model.checks.record import Finding, at_least, check
from model.materials import Material
from model.units import Mm

MOVEMENT = "Wood Handbook 2010 (FPL-GTR-190), eq 13-2 and 13-3"
HELD = f"{MOVEMENT}; what must be left: common practice, no source"
LEAST_HOLD: Mm = 2.0  # of a panel or tongue in its groove at its narrowest; common practice
LEAST_HOLD_TIGHT: Mm = 1.0
NEAR: Mm = 0.3  # room this small is soon used up by a coat of finish; common practice, no source


@check(
    "movement",
    "Panels have room in the damp",
    about="panel_room_damp",
    source=MOVEMENT,
    remedies=("panel_float", "panel_groove_depth", "board_cut", "panel_material"),
)
def panel_swells_free(
    style: EndStyle, panel_material: Material, panel_room_damp: Mm
) -> Finding | None:
    """A solid panel that fills its grooves in the damp bursts its frame; fix it in its middle."""
    if style != "panel" or panel_material.wood is None:
        return None
    return at_least(panel_room_damp, 0.0, tight=NEAR)


@check(
    "movement",
    "Panels stay in their grooves in the dry",
    about="panel_hold_dry",
    source=HELD,
    remedies=("panel_groove_depth", "panel_float", "board_cut", "panel_material"),
)
def panel_held_dry(style: EndStyle, panel_material: Material, panel_hold_dry: Mm) -> Finding | None:
    """A panel at its narrowest must still reach into the grooves at both sides."""
    if style != "panel" or panel_material.wood is None:
        return None
    return at_least(panel_hold_dry, LEAST_HOLD, tight=LEAST_HOLD_TIGHT)


@check(
    "movement",
    "Planks keep apart in the damp",
    about="plank_gap_damp",
    source=MOVEMENT,
    remedies=("plank_gap", "plank_width", "board_cut"),
)
def planks_apart(style: EndStyle, frame_wood: Material, plank_gap_damp: Mm) -> Finding | None:
    """Planks that meet push each other and the posts apart; pin each in its middle, glue none."""
    if style != "planks" or frame_wood.wood is None:
        return None
    return at_least(plank_gap_damp, 0.0, tight=NEAR)


@check(
    "movement",
    "Tongues stay in their grooves in the dry",
    about="plank_tongue_dry",
    source=HELD,
    remedies=("plank_gap", "plank_width", "board_cut"),
)
def tongues_held_dry(style: EndStyle, frame_wood: Material, plank_tongue_dry: Mm) -> Finding | None:
    """Where a tongue leaves its groove, light shows between the planks."""
    if style != "planks" or frame_wood.wood is None:
        return None
    return at_least(plank_tongue_dry, LEAST_HOLD, tight=LEAST_HOLD_TIGHT)


@check(
    "movement",
    "Outer planks have room in the posts",
    about="plank_room_damp",
    source=MOVEMENT,
    remedies=("panel_float", "panel_groove_depth", "plank_width", "board_cut"),
)
def outer_planks_free(style: EndStyle, frame_wood: Material, plank_room_damp: Mm) -> Finding | None:
    """The first and last plank swell towards the ground of the posts' grooves."""
    if style != "planks" or frame_wood.wood is None:
        return None
    return at_least(plank_room_damp, 0.0, tight=NEAR)


@check(
    "movement",
    "Outer planks stay in the posts in the dry",
    about="plank_hold_dry",
    source=HELD,
    remedies=("panel_groove_depth", "panel_float", "plank_width", "board_cut"),
)
def outer_planks_held(style: EndStyle, frame_wood: Material, plank_hold_dry: Mm) -> Finding | None:
    """The first and last plank must still reach into their posts when they are narrowest."""
    if style != "planks" or frame_wood.wood is None:
        return None
    return at_least(plank_hold_dry, LEAST_HOLD, tight=LEAST_HOLD_TIGHT)


@check(
    "movement",
    "Open slats keep apart in the damp",
    about="spindle_gap_damp",
    source=MOVEMENT,
    remedies=("spindle_gap_most", "spindle_width"),
)
def spindles_apart(style: EndStyle, frame_wood: Material, spindle_gap_damp: Mm) -> Finding | None:
    """Wide slats that stand close grow together."""
    if style != "slats" or frame_wood.wood is None:
        return None
    return at_least(spindle_gap_damp, 0.0, tight=1.0)
