"""Do slats and panels lie safely on their cleats, close enough for the mattress?"""

import math

from model.brief.deck import BeamKind, DeckKind, SlatFixing
from model.brief.mattress import MattressKind
from model.checks.record import Finding, advice, at_least, at_most, check
from model.units import Count, Mm

WARRANTY = (
    "articles on mattress warranties: 3 in for foam and hybrid; "
    "a mattress maker's page: 5 in on rigid slats"
)
GAPS = {"foam": 76.2, "hybrid": 76.2, "latex": 76.2, "spring": 127.0}


@check(
    "fit",
    "Gap between slats suits the mattress",
    about="slat_spacer",
    source=WARRANTY,
    remedies=("slat_gap_most", "slat_count"),
)
def slat_gap(deck: DeckKind, slat_spacer: Mm, mattress_kind: MattressKind) -> Finding | None:
    """Foam sinks between slats that lie far apart, and its warranty with it."""
    return at_most(slat_spacer, GAPS[mattress_kind], tight=3) if deck == "slats" else None


@check(
    "fit",
    "Gap from the post to the first slat",
    about="slat_end_gap",
    source=WARRANTY,
    remedies=("slat_gap_most", "slat_count", "slat_width"),
)
def slat_end(deck: DeckKind, slat_end_gap: Mm, mattress_kind: MattressKind) -> Finding | None:
    """The end gaps take what the spacer leaves over and must not be the widest."""
    return at_most(slat_end_gap, GAPS[mattress_kind]) if deck == "slats" else None


@check(
    "fit",
    "A slat pushed aside stays on its cleat",
    about="slat_bearing_least",
    source=(
        "bearing = cleat less twice the end clearance; half an inch kept: a family's "
        "blog, 2009, slats that fell nightly"
    ),
    remedies=("cleat_stock", "slat_end_clearance"),
)
def slat_bearing(slat_bearing_least: Mm) -> Finding:
    """The slat lies against one rail; what still rests on the other cleat must be half an inch."""
    return at_least(slat_bearing_least, 12.7, tight=3)


@check(
    "fit",
    "Slats are held down",
    about="slat_bearing_least",
    source="articles on platform beds: slats walk off narrow cleats",
)
def slats_held(deck: DeckKind, slat_fixing: SlatFixing, slat_bearing_least: Mm) -> Finding | None:
    """Slats on a strap only keep their distance; unscrewed they want an inch of cleat."""
    if deck != "slats" or slat_fixing == "screws":
        return None
    return advice(at_least(slat_bearing_least, 25.4))


@check(
    "fit",
    "Cleat stays above the openings",
    about="cleat_overhang",
    remedies=("top_rail_width", "cleat_width"),
)
def cleat_clear(cleat_overhang: Mm, left_is_framed: bool, right_is_framed: bool) -> Finding | None:
    """A cleat that hangs into an opening is met by the drawer; the top rail carries recess, slat
    and cleat.
    """
    return at_least(cleat_overhang, 0.0) if left_is_framed or right_is_framed else None


@check(
    "fit",
    "Solid rail backs the whole cleat",
    about="cleat_on_rail",
    remedies=("rail_width", "cleat_width"),
)
def cleat_backed(cleat_on_rail: Mm, left_is_framed: bool, right_is_framed: bool) -> Finding | None:
    """Every screw of the cleat needs wood behind it."""
    return None if left_is_framed and right_is_framed else at_least(cleat_on_rail, 0.0)


@check(
    "fit",
    "Deck is carried in the middle",
    about="well_width",
    source=(
        "a mattress maker's warranty: queen and king want a rigid centre support; full "
        "size: common practice"
    ),
)
def centre_support(well_width: Mm, has_beam: bool) -> Finding | None:
    """From full size (54 in) upwards a deck without a centre beam shows a valley."""
    return None if has_beam else advice(at_most(well_width, 1371.6))


@check(
    "fit",
    "Legs under the centre beam",
    about="beam_legs",
    source="a magazine on bed building, 2007: a leg mid-way on king beds",
)
def centre_legs(beam: BeamKind, well_width: Mm) -> Finding | None:
    """From queen size upwards a beam that rests on its ends alone wants a leg under its middle."""
    return advice(at_most(well_width, 1524.0)) if beam == "ends" else None


@check(
    "fit",
    "Vents in a closed deck",
    about="vent_diameter",
    source="EN 747 asks 35 cm2 of a closed base in bunk and high beds; a yardstick here",
    remedies=("vent_rows", "vent_diameter"),
)
def deck_breathes(
    deck: DeckKind, vent_diameter: Mm, vent_rows: Count, slat_length: Mm, deck_panels: Count
) -> Finding | None:
    """A closed deck lets no damp out: foam has moulded on one."""
    if deck != "panels":
        return None
    across = max(1, int(slat_length / (5 * vent_diameter)))
    area = vent_rows * across * deck_panels * math.pi / 4 * vent_diameter**2
    return at_least(area / 100, 35.0, unit="cm2")


@check("fit", "Slats leave the mattress air", about="slat_spacer")
def slats_breathe(deck: DeckKind, slat_spacer: Mm, slat_width: Mm) -> Finding | None:
    """About a fifth of the deck open lets the mattress dry."""
    if deck != "slats":
        return None
    return advice(at_least(100 * slat_spacer / (slat_spacer + slat_width), 20.0, unit="%"))
