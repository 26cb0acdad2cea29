"""The centre beam, and what carries it."""

from model.brief.deck import BeamKind
from model.brief.sides import DepthKind
from model.errors import CannotBuild
from model.rules import rule
from model.units import Count, Mm, Places, ShopGrid, snapped

# Of the distance between two legs, how much a beam may run on past the last: there w a^2 / 2 over
# the leg is what w p^2 / 8 leaves between the legs, so that a = p / sqrt(8).
OVERHANG = 8**-0.5


@rule
def has_beam(beam: BeamKind) -> bool:
    """Wide beds want the deck carried in the middle."""
    return beam != "none"


@rule
def beam_bottom(deck_bottom: Mm, beam_height: Mm) -> Mm:
    """The beam lies right under the deck."""
    return deck_bottom - beam_height


@rule
def drawers_top(opening_top: Mm, box_top_room: Mm) -> Mm:
    """No drawer box stands higher than this."""
    return opening_top - box_top_room


@rule
def beam_over_drawers(has_beam: bool, beam_bottom: Mm, drawers_top: Mm) -> bool:
    """A beam that ends above the boxes lets them pass under it."""
    return has_beam and beam_bottom >= drawers_top


@rule
def centre_reserve(beam: BeamKind, beam_over_drawers: bool, beam_stock: Mm) -> Mm:
    """Half of the room along the centre line that drawers leave to the beam or its legs."""
    in_the_way = beam == "legs" or (beam != "none" and not beam_over_drawers)
    return beam_stock / 2 if in_the_way else 0.0


@rule
def crossing_drawers(
    left_drawer_count: Count,
    left_depth: DepthKind,
    right_drawer_count: Count,
    right_depth: DepthKind,
    foot_drawer_count: Count,
) -> bool:
    """Full-depth drawers, and drawers from the foot, pass under the middle of the bed."""
    left = left_drawer_count > 0 and left_depth == "full"
    right = right_drawer_count > 0 and right_depth == "full"
    return left or right or foot_drawer_count > 0


@rule
def beam_drawer_gap(has_beam: bool, crossing_drawers: bool, beam_bottom: Mm, drawers_top: Mm) -> Mm:
    """Drawers that cross the middle must pass under the beam."""
    gap = snapped(beam_bottom - drawers_top)
    if has_beam and crossing_drawers and gap < 0:
        raise CannotBuild(
            "beam_height",
            f"The centre beam hangs {-gap:.1f} mm into drawers that pass under it.",
        )
    return gap


@rule
def beam_span(bed_length: Mm, end_rail_back_plane: Mm) -> Mm:
    """The beam fits between the end rails."""
    return bed_length - 2 * end_rail_back_plane


@rule
def beam_length(beam_span: Mm, beam_end_clearance: Mm, grid: ShopGrid) -> Mm:
    """The beam drops in with a little room at both ends."""
    return grid.down(beam_span - 2 * beam_end_clearance)


@rule
def beam_end_gap(beam_span: Mm, beam_length: Mm) -> Mm:
    """Between the beam and each end rail, with what the grid left over."""
    return (beam_span - beam_length) / 2


@rule
def beam_from_y(end_rail_back_plane: Mm, beam_end_gap: Mm) -> Mm:
    """The beam begins just behind the foot rail."""
    return end_rail_back_plane + beam_end_gap


@rule
def beam_from_x(beam_stock: Mm) -> Mm:
    """The beam lies on the centre line."""
    return -beam_stock / 2


@rule
def beam_block_length(beam_stock: Mm, grid: ShopGrid) -> Mm:
    """An end cleat is thrice as long as the beam is thick: its screws find wood on both sides."""
    return grid.up(3 * beam_stock)


@rule
def beam_block_from_x(beam_block_length: Mm) -> Mm:
    """End cleats sit in the middle of the end rails."""
    return -beam_block_length / 2


@rule
def beam_block_bottom(
    beam: BeamKind,
    beam_bottom: Mm,
    cleat_width: Mm,
    head_end_rail_bottom: Mm,
    foot_end_rail_bottom: Mm,
) -> Mm:
    """End cleats under the beam need the end rails behind them."""
    bottom = beam_bottom - cleat_width
    short = snapped(max(head_end_rail_bottom, foot_end_rail_bottom) - bottom)
    if beam == "ends" and short > 0:
        raise CannotBuild(
            "beam_height",
            f"The end cleats under the centre beam would hang {short:.1f} mm below the end rails.",
        )
    return bottom


@rule
def beam_legs_from(foot_drawer_count: Count, foot_row_behind: Mm, post_along: Mm) -> Mm:
    """Legs stand clear of drawers reached from the foot."""
    return foot_row_behind if foot_drawer_count else post_along


@rule
def beam_leg_spots(
    left_drawer_count: Count,
    left_opening_places: Places,
    right_drawer_count: Count,
    right_opening_places: Places,
    opening_middle: Mm,
) -> Places:
    """Between half-depth drawers legs stand in the middle of openings, clear of the bearers."""
    spots = left_opening_places if left_drawer_count else ()
    if not spots and right_drawer_count:
        spots = right_opening_places
    return tuple(spot + opening_middle for spot in spots)


@rule
def opening_middle(left_drawer_count: Count, left_opening_width: Mm, right_opening_width: Mm) -> Mm:
    """Half an opening of the row that the legs stand behind."""
    return (left_opening_width if left_drawer_count else right_opening_width) / 2


def spread(wanted: int, spots: Places) -> Places:
    """So many of the spots, spread evenly, both ends first where there are two or more."""
    if wanted >= len(spots):
        return spots
    if wanted == 1:
        return (spots[len(spots) // 2],)
    step = (len(spots) - 1) / (wanted - 1)
    return tuple(spots[round(i * step)] for i in range(wanted))


@rule
def beam_leg_places(
    beam: BeamKind,
    beam_legs: Count,
    beam_leg_spots: Places,
    beam_legs_from: Mm,
    rail_end: Mm,
    beam_leg_width: Mm,
    grid: ShopGrid,
) -> Places:
    """Legs stand so that the beam bends as hard over them as between them, or, where there are
    drawers, behind the openings.
    """
    if beam != "legs":
        return ()
    if beam_leg_spots:
        return tuple(grid.near(at - beam_leg_width / 2) for at in spread(beam_legs, beam_leg_spots))
    step = (rail_end - beam_legs_from) / (beam_legs - 1 + 2 * OVERHANG)
    first = beam_legs_from + OVERHANG * step - beam_leg_width / 2
    return tuple(grid.near(first + i * step) for i in range(beam_legs))


@rule
def beam_leg_height(
    beam_bottom: Mm,
    beam: BeamKind,
    left_depth: DepthKind,
    right_depth: DepthKind,
    left_drawer_count: Count,
    right_drawer_count: Count,
) -> Mm:
    """Legs stand on the floor; full-depth drawers leave them no place."""
    full = (left_drawer_count and left_depth == "full") or (
        right_drawer_count and right_depth == "full"
    )
    if beam == "legs" and full:
        raise CannotBuild(
            "beam", "Full-depth drawers pass where the legs of the centre beam would stand."
        )
    return beam_bottom
