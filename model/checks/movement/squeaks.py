"""What would squeak: bolts that work loose, and wood that rubs on wood."""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from model.brief.deck import DeckKind, SlatFixing
from model.checks.record import Finding, advice, at_least, at_most, check
from model.materials import Connector
from model.parts.pieces import Pieces

TENONS_OR_DOWELS = 2.0  # beside a bolt, so that its joint does not work


@check(
    "movement",
    "Bolted joints stay tight and quiet",
    source=(
        "a magazine on bed building, 2007: one bolt does not stop a rail from turning, add two "
        "dowels or a shallow tenon, unglued; lock washers and a month: articles on beds that squeak"
    ),
    remedies=("connector",),
)
def bolts_stay_tight(connector: Connector) -> Finding | None:
    """A joint that bolts alone hold works as the bed is used: bolts come loose, and it squeaks."""
    if connector.is_plate:
        return None
    return replace(
        advice(at_least(0.0, TENONS_OR_DOWELS, unit="dowels")),
        reason=(
            "Nothing but bolts keeps the rails from working in their joints: they come loose and "
            "squeak. Put lock washers under the heads, and tighten all bolts again after a month. "
            "What would hold a joint still, two dowels or a shallow tenon beside its bolts, "
            "unglued, is not drawn for this bed."
        ),
    )


@check(
    "movement",
    "Deck lies quiet on what carries it",
    source="articles on beds that squeak: wood on wood, slat on cleat; felt or a strip of cork",
    remedies=("slat_fixing",),
)
def deck_lies_quiet(deck: DeckKind, slat_fixing: SlatFixing, pieces: Pieces) -> Finding | None:
    """Slats and panels that no screw holds rub on their cleats as a sleeper turns over."""
    if deck == "slats" and slat_fixing == "screws":
        return None
    rule = "slat_pieces" if deck == "slats" else "deck_panel_pieces"
    loose = np.array([name == rule for name in pieces.rules], bool)[pieces.rule]
    what = "slats on their strap" if deck == "slats" else "deck panels"
    return replace(
        advice(at_most(float(loose.sum()), 0.0, unit="pieces")),
        reason=(
            f"The {what} lie wood on wood and squeak: glue felt or a strip of cork along the "
            "cleats and the beam, or screw them down."
        ),
        pieces=tuple(np.flatnonzero(loose).tolist()),
    )
