"""The row of drawers reached from the foot, and the cross member behind it."""

from model.brief.sides import DepthKind
from model.materials import Slide
from model.rules import rule
from model.units import Count, Mm, Places, ShopGrid


@rule
def owns_bearers(drawer_count: Count) -> bool:
    """The foot row shares its bearers with no other."""
    return drawer_count > 0


@rule
def lands_far() -> bool:
    """Bearers from the foot end on a cross member of their own."""
    return False


@rule
def zone_limit(depth: DepthKind, slide: Slide, far_plane: Mm, rail_end: Mm, middle_plane: Mm) -> Mm:
    """Drawers from the foot may reach to the head posts, or to the middle of the bed.

    A runner that is cut to its box has no length of its own: by slide its box is half deep.
    """
    to_middle = depth == "half" or (depth == "slide" and slide.is_cut_to_length)
    return middle_plane if to_middle else min(far_plane, rail_end)


@rule
def front_count(drawer_count: Count) -> Count:
    """Every drawer has a front."""
    return drawer_count


@rule
def row_behind(drawer_count: Count, zone_back: Mm, post_along: Mm, grid: ShopGrid) -> Mm:
    """The side rows begin behind the foot drawers and their cross member, on the grid."""
    return post_along + (grid.up(zone_back - post_along) if drawer_count else 0.0)


@rule
def divider_length(well_width: Mm, divider_end_clearance: Mm, grid: ShopGrid) -> Mm:
    """The cross member reaches from side rail to side rail, but for a little room."""
    return grid.down(well_width - 2 * divider_end_clearance)


@rule
def divider_from(divider_length: Mm) -> Mm:
    """The cross member lies in the middle of the bed."""
    return -divider_length / 2


@rule
def frame_bracket_spots(bracket_screw_spots: Places) -> Places:
    """Only the foot row's own bearers end on its frame."""
    return bracket_screw_spots


@rule
def frame_bracket_heights(bracket_screw_heights: Places) -> Places:
    """Only the foot row's own brackets are screwed to its frame."""
    return bracket_screw_heights
