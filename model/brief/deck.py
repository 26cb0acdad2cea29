"""What the maker says of the deck: cleats, slats or panels, centre beam."""

from typing import Literal

from model.brief.declare import count, length, material_of, measured, option, row_of
from model.materials import Material, WoodScrew, screws
from model.units import Count, Measured, Mm

DeckKind = Literal["slats", "panels"]
SlatsBy = Literal["largest gap", "count"]
SlatFixing = Literal["screws", "strap"]
BeamKind = Literal["none", "legs", "bearers", "ends"]


class Deck:
    """Deck"""

    deck: DeckKind = option("slats", help="Slats, or panels with vents.")
    slat_wood: Material = material_of("yellow_poplar", help="Slats and centre beam.")
    slat_width: Mm = length(
        88.9, cut=True, least=40, most=200, why_least="Narrower slats roll.",
        why_most="Wider is a panel.",
        help="Width of each slat.",
    )  # fmt: skip
    slat_stock: Mm = length(
        22.225, least=12, most=40, why_least="Thinner slats sag.", why_most="Thicker is a joist.",
        help="Thickness of the slats.",
    )  # fmt: skip
    slat_stock_measured: Measured = measured("the slat stock", least=10, most=45)
    slats_by: SlatsBy = option("largest gap", help="Slats from the largest gap, or a count.")
    slat_gap_most: Mm = length(
        63.5, least=5, most=130, slider=True, why_least="Closer is a panel.",
        why_most="No mattress maker allows more.",
        help="Largest gap between slats; many foam warranties ask for 76 mm or less.",
    )  # fmt: skip
    slat_count: Count = count(
        14, least=4, most=60, why_least="Fewer do not carry.", why_most="More do not fit.",
        help="Number of slats, where it is fixed.",
    )  # fmt: skip
    slat_end_clearance: Mm = length(
        1.5875, least=0, most=12, why_least="The slat touches both rails.",
        why_most="The slat could fall off its cleat.", help="Between a slat's end and the rail.",
    )  # fmt: skip
    slat_fixing: SlatFixing = option("screws", help="Each slat screwed down, or all on a strap.")
    cleat_width: Mm = length(
        38.1, cut=True, least=20, most=90, why_least="Too narrow for its screws.",
        why_most="Wider hangs into the opening.", help="Height of the cleat on the rail.",
    )  # fmt: skip
    cleat_stock: Mm = length(
        30.1625, cut=True, least=18, most=60, why_least="The slat needs 13 mm of bearing.",
        why_most="Thicker is a beam.", help="How far the cleat stands out under the slats.",
    )  # fmt: skip
    deck_sheet: Material = material_of("birch_ply_18", help="Deck panels.")
    deck_stock: Mm = length(
        18, least=9, most=30, why_least="Thinner panels sag.",
        why_most="Thicker panels are too heavy.",
        help="Thickness of deck panels.",
    )  # fmt: skip
    deck_stock_measured: Measured = measured("the deck stock", least=8, most=32)
    deck_panels: Count = count(
        3, least=1, most=6, why_least="One panel covers the bed.", why_most="More is slats.",
        help="Deck panels from foot to head, joined over a support.",
    )  # fmt: skip
    deck_joint_gap: Mm = length(
        1.5875, least=0, most=10, why_least="Panels touch.", why_most="A wider gap pinches.",
        help="Between two deck panels.",
    )  # fmt: skip
    vent_diameter: Mm = length(
        25.4, least=12, most=60, why_least="Smaller vents hold a finger.",
        why_most="Larger vents weaken the panel.", help="Vent holes in deck panels.",
    )  # fmt: skip
    vent_rows: Count = count(
        2, least=0, most=6, why_least="No vents.", why_most="More weaken the panel.",
        help="Rows of vents in each deck panel.",
    )  # fmt: skip


class Beam:
    """Centre beam"""

    beam: BeamKind = option(
        "legs", help="None; on its own legs; on the bearers; between end cleats."
    )
    beam_stock: Mm = length(
        38.1, least=18, most=90, why_least="Thinner beams buckle.", why_most="Thicker is a wall.",
        help="Thickness of the centre beam.",
    )  # fmt: skip
    beam_height: Mm = length(
        63.5, cut=True, least=38, most=250, why_least="Lower beams sag.",
        why_most="Higher meets the drawers.",
        help="Height of the centre beam.",
    )  # fmt: skip
    beam_legs: Count = count(
        2, least=1, most=6, why_least="The beam needs a leg.", why_most="More are in the way.",
        help="Legs under the centre beam.",
    )  # fmt: skip
    beam_leg_width: Mm = length(
        63.5, cut=True, least=30, most=150, why_least="Thinner legs tip.",
        why_most="Wider is a wall.",
        help="Width of each leg along the bed.",
    )  # fmt: skip
    beam_end_clearance: Mm = length(
        1.5875, least=0, most=10, why_least="The beam touches the end rails.",
        why_most="A shorter beam slips off.", help="Between the beam and each end rail.",
    )  # fmt: skip


class CleatScrews:
    """Cleat screws"""

    cleat_screw: WoodScrew = row_of(screws, "8", help="Screws that hold the cleats to the rails.")
    cleat_screw_spacing: Mm = length(
        152.4, least=50, most=400, why_least="Closer screws split the cleat.",
        why_most="Wider leaves the cleat to the glue.",
        help="Largest distance between cleat screws.",
    )  # fmt: skip
    screw_cover: Mm = length(
        3.175, least=1, most=10, why_least="A point would come through.",
        why_most="More leaves no thread.",
        help="Wood that must remain in front of a screw's point.",
    )  # fmt: skip
