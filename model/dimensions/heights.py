"""Heights above the floor: rail, opening, deck, sleeper."""

from model.brief.heights import HeightFrom
from model.errors import CannotBuild
from model.rules import rule
from model.units import Measured, Mm, ShopGrid


@rule
def frame_height_least(bottom_rail_width: Mm, top_rail_width: Mm, floor_gap: Mm) -> Mm:
    """Floor gap and both rails stack up before there is any opening."""
    return floor_gap + bottom_rail_width + top_rail_width


@rule
def rail_top(
    height_from: HeightFrom,
    rail_height: Mm,
    wished_opening_height: Mm,
    frame_height_least: Mm,
    wished_sleeping_height: Mm,
    mattress_high: Mm,
    recess: Mm,
    grid: ShopGrid,
) -> Mm:
    """The rail's top edge follows from the height the maker fixed: rail, opening or sleeper."""
    if height_from == "opening height":
        return grid.up(frame_height_least + wished_opening_height)
    if height_from == "sleeping height":
        return grid.near(wished_sleeping_height - mattress_high + recess)
    return grid.near(rail_height)


@rule
def opening_height(
    rail_top: Mm,
    frame_height_least: Mm,
    grid: ShopGrid,
    opening_height_measured: Measured = None,
    height_from: HeightFrom = "rail height",
    wished_opening_height: Mm = 0.0,
) -> Mm:
    """The opening is as measured, as fixed, or what rails leave; the rest widens the floor gap."""
    if opening_height_measured is not None:
        return opening_height_measured
    if height_from == "opening height":
        return wished_opening_height
    return grid.down(rail_top - frame_height_least)


@rule
def opening_top(rail_top: Mm, top_rail_width: Mm) -> Mm:
    """The opening ends under the top rail."""
    return rail_top - top_rail_width


@rule
def opening_bottom(opening_top: Mm, opening_height: Mm) -> Mm:
    """The opening stands on the bottom rail."""
    return opening_top - opening_height


@rule
def frame_bottom(opening_bottom: Mm, bottom_rail_width: Mm) -> Mm:
    """Floor gap as built: under the bottom rail."""
    return opening_bottom - bottom_rail_width


@rule
def frame_height(rail_top: Mm, frame_bottom: Mm) -> Mm:
    """A face frame reaches from its bottom rail's lower edge to the rail's top edge."""
    return rail_top - frame_bottom


@rule
def deck_bottom(rail_top: Mm, recess: Mm, deck_thickness: Mm, grid: ShopGrid) -> Mm:
    """Slats or panels lie on the cleats; what the grid leaves over deepens the recess."""
    return grid.down(rail_top - recess - deck_thickness)


@rule
def deck_top(deck_bottom: Mm, deck_thickness: Mm) -> Mm:
    """The mattress lies on the deck."""
    return deck_bottom + deck_thickness


@rule
def recess_built(rail_top: Mm, deck_top: Mm) -> Mm:
    """How far the mattress sinks below the rail's top edge, so that it cannot slide off."""
    return rail_top - deck_top


@rule
def cleat_bottom(deck_bottom: Mm, cleat_width: Mm) -> Mm:
    """The cleat is fixed to the rail below the slats."""
    if deck_bottom - cleat_width < 0:
        raise CannotBuild("cleat_width", "The cleats would stand below the floor.")
    return deck_bottom - cleat_width


@rule
def sleeping_height(deck_top: Mm, mattress_high: Mm) -> Mm:
    """The sleeper lies on the mattress, and the mattress on the deck."""
    return deck_top + mattress_high
