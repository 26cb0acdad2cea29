"""The deck: cleats along the sides, slats or panels on them."""

import math

from model.brief.deck import DeckKind, SlatsBy
from model.dimensions.joinery import LEAST_WALL
from model.errors import CannotBuild
from model.materials import WoodScrew
from model.rules import rule
from model.units import Count, Mm, Places, ShopGrid, snapped

DECK_ROOM: Mm = 0.8  # 1/32 in at each post, so that slats go in; common practice, no source


@rule
def cleat_inner_x(rail_inner_x: Mm, cleat_stock: Mm) -> Mm:
    """Between the cleats the deck spans free."""
    return rail_inner_x - cleat_stock


@rule
def cleat_overhang(
    cleat_bottom: Mm, opening_top: Mm, left_is_framed: bool, right_is_framed: bool
) -> Mm:
    """How far the cleat clears the openings; the top rail must hold recess, slat and cleat."""
    room = snapped(cleat_bottom - opening_top)
    if (left_is_framed or right_is_framed) and room < 0:
        raise CannotBuild(
            "top_rail_width",
            f"The cleats would hang {-room:.1f} mm into the openings: "
            "the top rail must be as wide as recess, slat and cleat together.",
        )
    return room


@rule
def cleat_on_rail(
    rail_width: Mm, rail_top: Mm, cleat_bottom: Mm, left_is_framed: bool, right_is_framed: bool
) -> Mm:
    """A solid side rail has wood behind the whole cleat."""
    wood = snapped(rail_width - (rail_top - cleat_bottom))
    if not (left_is_framed and right_is_framed) and wood < 0:
        raise CannotBuild(
            "rail_width", f"The cleats would hang {-wood:.1f} mm below the side rail."
        )
    return wood


@rule
def slat_length(well_width: Mm, slat_end_clearance: Mm, grid: ShopGrid) -> Mm:
    """Slats lie between the side rails with a little room, so that they drop in."""
    return grid.down(well_width - 2 * slat_end_clearance)


@rule
def slat_clearance_built(well_width: Mm, slat_length: Mm) -> Mm:
    """Between a slat's end and the rail, with what the grid left over."""
    return (well_width - slat_length) / 2


@rule
def slat_from_x(slat_length: Mm) -> Mm:
    """Slats lie centred on the bed."""
    return -slat_length / 2


@rule
def slat_bearing_least(cleat_stock: Mm, well_width: Mm, slat_length: Mm) -> Mm:
    """Pushed against one rail, a slat must still lie on the other cleat."""
    return cleat_stock - (well_width - slat_length)


@rule
def slats(
    deck: DeckKind,
    slats_by: SlatsBy,
    slat_count: Count,
    rail_length: Mm,
    slat_gap_most: Mm,
    slat_width: Mm,
) -> Count:
    """The fewest slats that keep every gap below the largest, or the number that was chosen."""
    if slats_by == "count":
        return slat_count
    room = rail_length - 2 * DECK_ROOM
    fewest = math.ceil((room + slat_gap_most) / (slat_width + slat_gap_most) - 1e-9)
    if deck == "slats" and fewest * slat_width > room + 1e-6:
        raise CannotBuild(
            "slat_gap_most",
            f"No number of slats keeps every gap below {slat_gap_most:g} mm: "
            f"{fewest} slats of {slat_width:g} mm are longer than the rail between the posts.",
        )
    return fewest


@rule
def slat_spacer(
    deck: DeckKind, rail_length: Mm, slats: Count, slat_width: Mm, grid: ShopGrid
) -> Mm:
    """One spacer serves all gaps between slats; the two end gaps share what the grid leaves, and
    have a little room, so that the last slat goes in.
    """
    gap = snapped((rail_length - 2 * DECK_ROOM - slats * slat_width) / (slats - 1))
    if deck == "slats" and gap < -1e-6:
        raise CannotBuild(
            "slat_count",
            f"{slats} slats of {slat_width:g} mm are longer than the rail between the posts.",
        )
    return grid.down(gap)


@rule
def slat_pitch(slat_width: Mm, slat_spacer: Mm) -> Mm:
    """From one slat to the next."""
    return slat_width + slat_spacer


@rule
def slat_end_gap(rail_length: Mm, slats: Count, slat_pitch: Mm, slat_spacer: Mm) -> Mm:
    """From the posts to the first and the last slat."""
    return (rail_length - slats * slat_pitch + slat_spacer) / 2


@rule
def slat_places(
    deck: DeckKind, post_along: Mm, slat_end_gap: Mm, slat_pitch: Mm, slats: Count
) -> Places:
    """Where each slat begins, from the foot; none where the deck is of panels."""
    if deck != "slats":
        return ()
    return tuple(post_along + slat_end_gap + i * slat_pitch for i in range(slats))


@rule
def deck_panel_length(
    rail_length: Mm, deck_panels: Count, deck_joint_gap: Mm, grid: ShopGrid
) -> Mm:
    """Deck panels are alike; what the grid leaves over is shared by the two ends, which have a
    little room, so that the last panel goes in.
    """
    room = rail_length - 2 * DECK_ROOM - (deck_panels - 1) * deck_joint_gap
    return grid.down(room / deck_panels)


@rule
def deck_panel_pitch(deck_panel_length: Mm, deck_joint_gap: Mm) -> Mm:
    """From one deck panel to the next."""
    return deck_panel_length + deck_joint_gap


@rule
def deck_panel_from(
    post_along: Mm, rail_length: Mm, deck_panels: Count, deck_panel_pitch: Mm, deck_joint_gap: Mm
) -> Mm:
    """The first deck panel begins at the foot posts, but for half of what the grid left over."""
    return post_along + (rail_length - deck_panels * deck_panel_pitch + deck_joint_gap) / 2


@rule
def deck_panel_places(
    deck: DeckKind, deck_panel_from: Mm, deck_panel_pitch: Mm, deck_panels: Count
) -> Places:
    """Where each deck panel begins; none where the deck is of slats."""
    if deck != "panels":
        return ()
    return tuple(deck_panel_from + i * deck_panel_pitch for i in range(deck_panels))


@rule
def vent_web(deck: DeckKind, deck_panel_length: Mm, vent_rows: Count, vent_diameter: Mm) -> Mm:
    """Between two rows of vents the panel keeps wood."""
    web = deck_panel_length / (vent_rows + 1) - vent_diameter
    if deck == "panels" and vent_rows and web < LEAST_WALL:
        raise CannotBuild(
            "vent_rows",
            f"Between the rows of vents {web:.1f} mm of the panel would be left; 6 mm is the "
            f"least.",
        )
    return web


@rule
def batten_places(deck_panel_places: Places, deck_joint_gap: Mm, slat_width: Mm) -> Places:
    """Under every joint of two deck panels lies a batten that carries both edges."""
    return tuple(at - deck_joint_gap / 2 - slat_width / 2 for at in deck_panel_places[1:])


@rule
def batten_span(cleat_inner_x: Mm, beam_stock: Mm, has_beam: bool) -> Mm:
    """Battens fit between the cleats, or between cleat and centre beam."""
    return cleat_inner_x - beam_stock / 2 if has_beam else 2 * cleat_inner_x


@rule
def batten_length(batten_span: Mm, grid: ShopGrid) -> Mm:
    """The grid's leftover is a gap at the batten's ends, which its screws pull up."""
    return grid.down(batten_span)


@rule
def batten_gap(batten_span: Mm, batten_length: Mm) -> Mm:
    """What the grid leaves between a batten and what it is screwed to."""
    return (batten_span - batten_length) / 2


@rule
def batten_from_x(has_beam: bool, cleat_inner_x: Mm, batten_gap: Mm) -> Mm:
    """The first batten begins at the left cleat."""
    return batten_gap - cleat_inner_x


@rule
def batten_halves(has_beam: bool, batten_span: Mm, beam_stock: Mm) -> Places:
    """With a centre beam a batten comes in two, one to each side."""
    return (0.0, batten_span + beam_stock) if has_beam else (0.0,)


@rule
def batten_bottom(deck_bottom: Mm, frame_thickness: Mm) -> Mm:
    """Battens lie flat under the deck panels."""
    return deck_bottom - frame_thickness


def _longest(screw: WoodScrew, most: float) -> float:
    """The longest sold length within `most`; the shortest of all when none is, for the check to
    speak up.
    """
    return max((x for x in screw.lengths_mm if x <= most + 1e-6), default=min(screw.lengths_mm))


@rule
def cleat_screw_length(
    cleat_screw: WoodScrew, cleat_stock: Mm, frame_thickness: Mm, screw_cover: Mm
) -> Mm:
    """The longest screw that goes through the cleat into the rail and does not come out."""
    return _longest(cleat_screw, cleat_stock + frame_thickness - screw_cover)


@rule
def slat_screw_length(
    cleat_screw: WoodScrew, slat_thickness: Mm, cleat_width: Mm, screw_cover: Mm
) -> Mm:
    """A slat's screw is about three times as long as the slat is thick, and ends inside the cleat.

    Source: common practice, no source.
    """
    return _longest(
        cleat_screw, min(3 * slat_thickness, slat_thickness + cleat_width - screw_cover)
    )


@rule
def slat_screw_in(slat_clearance_built: Mm, cleat_stock: Mm) -> Mm:
    """Slat screws stand over the middle of the cleat, counted from the slat's end."""
    return cleat_stock / 2 - slat_clearance_built
