"""Do the panels that close a face frame have room in the damp, and hold in the dry? Read for left
and right.
"""

from __future__ import annotations

from model.checks.movement.ends import HELD, LEAST_HOLD, LEAST_HOLD_TIGHT, MOVEMENT, NEAR
from model.checks.record import Finding, at_least, check
from model.materials import Material
from model.units import Mm


@check(
    "movement",
    "Closing panels have room in the damp",
    about="closing_room_damp",
    source=MOVEMENT,
    remedies=("panel_float", "panel_groove_depth", "board_cut", "panel_material"),
)
def closing_panel_free(
    widest_closing_panel: Mm, panel_material: Material, closing_room_damp: Mm
) -> Finding | None:
    """A solid panel that fills its grooves in the damp bursts its frame; fix it in its middle."""
    if not widest_closing_panel or panel_material.wood is None:
        return None
    return at_least(closing_room_damp, 0.0, tight=NEAR)


@check(
    "movement",
    "Closing panels stay in their grooves in the dry",
    about="closing_hold_dry",
    source=HELD,
    remedies=("panel_groove_depth", "panel_float", "board_cut", "panel_material"),
)
def closing_panel_held(
    widest_closing_panel: Mm, panel_material: Material, closing_hold_dry: Mm
) -> Finding | None:
    """A panel at its narrowest must still reach into the grooves at both sides."""
    if not widest_closing_panel or panel_material.wood is None:
        return None
    return at_least(closing_hold_dry, LEAST_HOLD, tight=LEAST_HOLD_TIGHT)
