"""Slats or deck panels, and the mattress on them."""

from model.brief.deck import SlatFixing
from model.joints.vents import vent_holes
from model.materials import Material, WoodScrew
from model.part import Face, Hold, Hole, Made, Part, Place, Screw
from model.parts.places import along_v
from model.rules import rule
from model.units import Count, Mm, Places


@rule
def slat_pieces(
    slat_places: Places,
    slat_from_x: Mm,
    deck_bottom: Mm,
    slat_length: Mm,
    slat_width: Mm,
    slat_thickness: Mm,
    slat_wood: Material,
    slat_fixing: SlatFixing,
    cleat_screw: WoodScrew,
    slat_screw_length: Mm,
    slat_screw_in: Mm,
    screw_cover: Mm,
) -> Made:
    """Slats lie across the bed on both cleats, all cut at one stop."""
    if not slat_places:
        return ()
    holes: tuple[Hole, ...] = ()
    screws: tuple[Screw, ...] = ()
    joint = "rests"
    if slat_fixing == "screws":
        joint = "rests, screwed"
        holes, screws = _end_screws(
            slat_length,
            slat_width,
            slat_thickness,
            slat_screw_in,
            slat_screw_length,
            cleat_screw,
            screw_cover,
        )
    return (
        Part(
            name="slat",
            assembly="deck",
            length=slat_length,
            width=slat_width,
            thickness=slat_thickness,
            lies="uvz",
            at=(slat_from_x, slat_places[0], deck_bottom),
            places=along_v(slat_places),
            material=slat_wood.key,
            holes=holes,
            screws=screws,
            held=(
                Hold("left.cleat", joint, knock_down=True),
                Hold("right.cleat", joint, knock_down=True),
            ),
        ),
    )


def _end_screws(
    length: float,
    width: float,
    thickness: float,
    inset: float,
    screw_length: float,
    screw: WoodScrew,
    cover: float,
) -> tuple[tuple[Hole, ...], tuple[Screw, ...]]:
    """One screw down through each end of a slat, over the middle of the cleat."""
    spots = ((inset, "left.cleat"), (length - inset, "right.cleat"))
    down, kind = (0.0, 0.0, -1.0), f"wood screw {screw.key}"
    holes = tuple(
        Hole(
            "shank hole", Face.FACE, (x, width / 2, thickness), down, screw.shank_hole_mm, thickness
        )
        for x, _ in spots
    )
    driven = tuple(
        Screw(kind, (x, width / 2, thickness), down, screw_length, screw.shank_mm, cleat, cover)
        for x, cleat in spots
    )
    return holes, driven


@rule
def deck_panel_pieces(
    deck_panel_places: Places,
    slat_from_x: Mm,
    deck_bottom: Mm,
    slat_length: Mm,
    deck_panel_length: Mm,
    deck_sheet_thickness: Mm,
    deck_sheet: Material,
    vent_diameter: Mm,
    vent_rows: Count,
) -> Made:
    """Deck panels lie on cleats and the battens under joints; vents let the mattress breathe."""
    if not deck_panel_places:
        return ()
    size = (float(slat_length), float(deck_panel_length), float(deck_sheet_thickness))
    return (
        Part(
            name="deck panel",
            assembly="deck",
            length=slat_length,
            width=deck_panel_length,
            thickness=deck_sheet_thickness,
            lies="uvz",
            at=(slat_from_x, deck_panel_places[0], deck_bottom),
            places=along_v(deck_panel_places),
            material=deck_sheet.key,
            holes=vent_holes(size, diameter=vent_diameter, rows=vent_rows),
            held=(
                Hold("left.cleat", "rests", knock_down=True),
                Hold("right.cleat", "rests", knock_down=True),
            ),
        ),
    )


@rule
def batten_pieces(
    batten_places: Places,
    batten_halves: Places,
    batten_from_x: Mm,
    batten_bottom: Mm,
    batten_length: Mm,
    slat_width: Mm,
    frame_thickness: Mm,
    batten_gap: Mm,
    slat_wood: Material,
) -> Made:
    """A batten under each joint of the deck panels, screwed between cleats, or cleat and beam."""
    ends = ("left.cleat", "right.cleat") if len(batten_halves) == 1 else ("beam_pieces",)
    if not batten_places:
        return ()
    return tuple(
        Part(
            name="deck batten",
            assembly="deck",
            length=batten_length,
            width=slat_width,
            thickness=frame_thickness,
            lies="uvz",
            at=(batten_from_x + half, batten_places[0], batten_bottom),
            places=along_v(batten_places),
            material=slat_wood.key,
            held=tuple(
                Hold(by, "pocket screws", within=batten_gap, knock_down=True)
                for by in (*ends, *(("left.cleat|right.cleat",) if len(ends) == 1 else ()))
            ),
        )
        for half in batten_halves
    )


@rule
def mattress_pieces_lie(
    mattress_pieces: Count,
    mattress_across: Mm,
    mattress_piece_width: Mm,
    mattress_along: Mm,
    mattress_high: Mm,
    mattress_from_x: Mm,
    mattress_foot_y: Mm,
    deck_top: Mm,
) -> Made:
    """The mattress is a body too: it must find its place in the well."""
    return (
        Part(
            name="mattress",
            assembly="mattress",
            length=mattress_along,
            width=mattress_piece_width,
            thickness=mattress_high,
            lies="vuz",
            at=(mattress_from_x, mattress_foot_y, deck_top),
            places=tuple(Place(u=i * mattress_piece_width) for i in range(mattress_pieces)),
            material="mattress",
            hardware="MATTRESS",
            held=(Hold("slat_pieces|deck_panel_pieces", "rests", knock_down=True),),
        ),
    )
