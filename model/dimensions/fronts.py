"""Drawer fronts: size and place of each. Read for left, right and foot."""

from model.brief.drawers import FrontFit
from model.dimensions.spots import shifted
from model.errors import CannotBuild
from model.rules import rule
from model.units import Count, Mm, Places, ShopGrid


@rule
def front_reach(
    front_fit: FrontFit,
    overlay: Mm,
    inset_reveal: Mm,
    front_thickness: Mm,
    frame_thickness: Mm,
    front_count: Count,
) -> Mm:
    """A front reaches past the opening's edge, or ends short of it by the reveal."""
    if front_fit == "overlay":
        return overlay
    if front_count and front_thickness > frame_thickness + 1e-6:
        raise CannotBuild(
            "front_thickness", "Inset fronts are thicker than the frame that they stand in.",
        )  # fmt: skip
    return -inset_reveal


@rule
def front_width(opening_width: Mm, front_reach: Mm, front_count: Count, grid: ShopGrid) -> Mm:
    """A front covers the opening and the overlay, or fits inside with the reveal all round."""
    return grid.down(opening_width + 2 * front_reach) if front_count else 0.0


@rule
def front_height(opening_height: Mm, front_reach: Mm, grid: ShopGrid) -> Mm:
    """Above and below a front reaches as far as at its sides."""
    return grid.down(opening_height + 2 * front_reach)


@rule
def front_lap(front_width: Mm, opening_width: Mm) -> Mm:
    """How far a front covers each stile, as built; below zero it is the reveal."""
    return (front_width - opening_width) / 2


@rule
def front_lap_up(front_height: Mm, opening_height: Mm) -> Mm:
    """How far a front covers each rail, as built; below zero it is the reveal."""
    return (front_height - opening_height) / 2


@rule
def front_gap(
    front_fit: FrontFit,
    mid_stile: Mm,
    front_lap: Mm,
    front_count: Count,
    front_gap_least: Mm,
    first_end_stile: Mm,
) -> Mm:
    """Between two fronts of a row."""
    gap = mid_stile - 2 * front_lap
    if front_fit == "inset" or not front_count:
        return gap
    if front_count > 1 and gap < front_gap_least - 1e-6:
        raise CannotBuild(
            "overlay", "The fronts would meet over the stiles between them.",
        )  # fmt: skip
    if front_lap > first_end_stile + 1e-6:
        raise CannotBuild("overlay", "The fronts would cover the posts.")
    return gap


@rule
def front_bottom(
    opening_bottom: Mm,
    front_lap_up: Mm,
    front_count: Count,
    top_rail_width: Mm,
    bottom_rail_width: Mm,
) -> Mm:
    """A front's lower edge, from the floor: it covers no more than the rails."""
    narrower = min(top_rail_width, bottom_rail_width)
    if front_count and front_lap_up > narrower + 1e-6:
        raise CannotBuild("overlay", "The fronts would reach past the rails.")
    return opening_bottom - front_lap_up


@rule
def front_top(front_bottom: Mm, front_height: Mm) -> Mm:
    """A front's upper edge, from the floor."""
    return front_bottom + front_height


@rule
def front_face(box_front_plane: Mm, front_thickness: Mm) -> Mm:
    """A front's outer face, from the posts' outer plane; below zero it stands before them."""
    return box_front_plane - front_thickness


@rule
def front_places(opening_places: Places, front_lap: Mm, front_count: Count) -> Places:
    """Each front stands over the middle of its opening."""
    return shifted(opening_places, -front_lap) if front_count else ()


@rule
def drawers_from(drawer_count: Count) -> Count:
    """Fronts move with their drawers, counted from 1; fixed fronts move with none."""
    return 1 if drawer_count else 0
