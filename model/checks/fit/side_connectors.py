"""Can a side be hung on its posts and taken off again? Asked of left and right."""

from dataclasses import replace

import numpy as np

from model.checks.record import Finding, at_least, check
from model.dimensions.connectors import ROUND_NUT
from model.joints.connector import END_RELIEF, KnockDown
from model.materials import Connector
from model.part import Part
from model.parts.pieces import Pieces
from model.solids.near import TOUCH
from model.units import Count, Mm, Places


@check(
    "fit",
    "Wood above and below the connector's plate",
    about="plate_room",
    remedies=("rail_width", "top_rail_width", "connector"),
)
def wood_round_plate(connector: Connector, plate_room: Mm) -> Finding | None:
    """A rail at least an inch wider than its plate keeps wood above and below it."""
    return at_least(plate_room, 25.4) if connector.is_plate else None


@check("fit", "Room to lift the side off its hooks", about="lift_spare", remedies=("connector",))
def room_to_lift(connector: Connector, lift_spare: Mm) -> Finding | None:
    """Hooks and keyholes come free only when the rail can rise: nothing may be in the way above
    it.
    """
    return at_least(lift_spare, 0.0) if connector.is_plate else None


@check(
    "fit",
    "A lifted side clears what stands under the bed",
    remedies=("bearer_height", "connector", "wished_opening_height", "rail_height"),
)
def side_lifts_clear(
    connector_lift: Mm, row_name: str, drawer_count: Count, pieces: Pieces
) -> Finding | None:
    """A side is lifted onto its hooks past bearers and slides that stand already, and lifted off
    them again: what reaches into its openings must leave its bottom rail that room.
    """
    if not connector_lift or not drawer_count:
        return None
    parts = pieces.parts
    own = np.array([p.assembly == f"{row_name} side" and not p.hardware for p in parts])
    still = np.array([p.assembly == "under the bed" and not _rides(p) for p in parts])
    below, above = (
        np.flatnonzero(kind[pieces.part][pieces.piece]) for kind in (own, still)
    )  # boxes of wood of the side, and of all that it may meet
    room = pieces.lo[above, 2][None, :] - pieces.hi[below, 2][:, None]
    met = room > -TOUCH
    for axis in (0, 1):
        low, high = pieces.lo[:, axis], pieces.hi[:, axis]
        met &= low[below][:, None] + TOUCH < high[above][None, :]
        met &= low[above][None, :] + TOUCH < high[below][:, None]
    if not met.any():
        return None
    worst, other = np.unravel_index(np.where(met, room, np.inf).argmin(), room.shape)
    one, two = (int(pieces.piece[k]) for k in (below[worst], above[other]))
    found = at_least(float(room[worst, other]), connector_lift)
    lower, upper = (parts[pieces.part[k]].name for k in (one, two))
    said = (
        f"Between the {lower} and the {upper} above it are {found.value:.1f} mm; the side is "
        f"lifted {connector_lift:.1f} mm to be hung."
    )
    return replace(found, reason=said, pieces=tuple(sorted((one, two))))


def _rides(part: Part) -> bool:
    """Whether a part is fixed to the side's bottom rail alone, and is lifted with it."""
    return {hold.by for hold in part.held} == {"bottom_rail"}


@check(
    "fit",
    "Wood round the nuts of the bolts",
    about="connector_up",
    source=(
        "nut 1 1/4 to 2 in from the rail's end, 1/4 in of wood beside its hole: common practice, "
        "no source; a magazine on bed building, 2007: nut holes must be aligned with the bolts"
    ),
    remedies=("connector", "rail_width", "bottom_rail_width", "tenon_length"),
)
def nut_has_wood(
    knock_down: KnockDown,
    is_framed: bool,
    top_rail_width: Mm,
    bottom_rail_width: Mm,
    rail_edge_taken: Mm,
    connector_in_rail: Places,
) -> Finding | None:
    """A nut too near to an edge, or to a stile's joint, splits its rail; holes that miss each other
    cannot be bolted.
    """
    row = knock_down.row
    if row.is_plate:
        return None
    narrower = min(top_rail_width, bottom_rail_width)
    up = (narrower - rail_edge_taken) / 2 if is_framed else min(connector_in_rail)
    edge = "edge of its narrower rail" if is_framed else "nearer edge"
    return replace(
        at_least(up - row.nut_diameter_mm / 2, ROUND_NUT),
        reason=(
            f"The middle of a nut's hole, {row.nut_diameter_mm:.1f} mm wide, lies "
            f"{row.nut_from_end_mm:.1f} mm from the rail's end and {up:.1f} mm from the {edge}; "
            f"the bolt's hole, {knock_down.bolt_hole:.1f} mm wide and "
            f"{knock_down.in_rail + END_RELIEF:.1f} mm deep, runs in the middle of the thickness. "
            "Drill both with one guide, or they miss each other."
        ),
    )
