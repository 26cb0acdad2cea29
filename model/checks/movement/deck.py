"""Do slats and deck panels keep apart when they swell?"""

from __future__ import annotations

from model.brief.deck import DeckKind
from model.checks.movement.ends import MOVEMENT, NEAR
from model.checks.record import Finding, at_least, check
from model.materials import Material
from model.units import Mm


@check(
    "movement",
    "Slats keep apart in the damp",
    about="slat_gap_damp",
    source=MOVEMENT,
    remedies=("slat_width", "slat_count", "slat_gap_most"),
)
def slats_apart(deck: DeckKind, slat_wood: Material, slat_gap_damp: Mm) -> Finding | None:
    """Wide slats that lie close grow together: they close the deck to air, and squeak."""
    if deck != "slats" or slat_wood.wood is None:
        return None
    return at_least(slat_gap_damp, 0.0, tight=1.0)


@check(
    "movement",
    "Deck panels keep apart in the damp",
    about="deck_gap_damp",
    source=MOVEMENT,
    remedies=("deck_joint_gap", "deck_sheet", "deck_panels", "board_cut"),
)
def deck_panels_apart(deck: DeckKind, deck_sheet: Material, deck_gap_damp: Mm) -> Finding | None:
    """Deck panels of solid wood that meet lift each other off the cleats."""
    if deck != "panels" or deck_sheet.wood is None:
        return None
    return at_least(deck_gap_damp, 0.0, tight=NEAR)
