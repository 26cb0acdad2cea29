"""Across and along the bed: posts and rails set round the mattress."""

from model.brief.posts import RailSet
from model.errors import CannotBuild
from model.rules import rule
from model.units import Mm, ShopGrid


def _set_back(
    rail_set: RailSet, rail_reveal: float, post: float, rail: float, grid: ShopGrid
) -> float:
    if rail > post + 1e-6:
        raise CannotBuild(
            "frame_stock",
            f"The rails ({rail:g} mm) are thicker than the posts they meet ({post:g} mm).",
        )
    if rail_set == "flush":
        return 0.0
    back = grid.down((post - rail) / 2) if rail_set == "centred" else rail_reveal
    if back + rail > post + 1e-6:
        raise CannotBuild(
            "rail_reveal",
            "Rails set back this far stand out behind their posts: no wood meets them.",
        )
    return back


@rule
def rail_set_back(
    rail_set: RailSet, rail_reveal: Mm, post_width: Mm, frame_thickness: Mm, grid: ShopGrid
) -> Mm:
    """Side rails stand flush with the posts' outer faces, centred, or set back by the reveal."""
    return _set_back(rail_set, rail_reveal, post_width, frame_thickness, grid)


@rule
def end_rail_set_back(
    rail_set: RailSet, rail_reveal: Mm, post_along: Mm, frame_thickness: Mm, grid: ShopGrid
) -> Mm:
    """End rails stand in their posts as the side rails do."""
    return _set_back(rail_set, rail_reveal, post_along, frame_thickness, grid)


@rule
def rail_back_plane(rail_set_back: Mm, frame_thickness: Mm) -> Mm:
    """From the posts' outer face to the side rail's inner face."""
    return rail_set_back + frame_thickness


@rule
def end_rail_back_plane(end_rail_set_back: Mm, frame_thickness: Mm) -> Mm:
    """From the posts' outer face to the end rail's inner face."""
    return end_rail_set_back + frame_thickness


@rule
def well_width_least(mattress_across: Mm, side_fit: Mm) -> Mm:
    """The mattress drops in with room at each side for the bedding."""
    return mattress_across + 2 * side_fit


@rule
def between_posts(well_width_least: Mm, rail_back_plane: Mm, post_width: Mm, grid: ShopGrid) -> Mm:
    """End rails fit between the posts, which stand so that the side rails clear the mattress.

    The grid's leftover widens the well.
    """
    room = grid.up(well_width_least + 2 * (rail_back_plane - post_width))
    if room < 300:
        raise CannotBuild("post_width", "The posts are so wide that no end rail fits between them.")
    return room


@rule
def post_inner_x(between_posts: Mm) -> Mm:
    """Posts stand alike on both sides of the centre line."""
    return between_posts / 2


@rule
def post_outer_x(post_inner_x: Mm, post_width: Mm) -> Mm:
    """The bed is as wide as its posts stand."""
    return post_inner_x + post_width


@rule
def bed_width(post_outer_x: Mm) -> Mm:
    """From outer face to outer face of the posts, fronts and pulls not counted."""
    return 2 * post_outer_x


@rule
def rail_inner_x(post_outer_x: Mm, rail_back_plane: Mm) -> Mm:
    """The side rails' inner faces bound the mattress."""
    return post_outer_x - rail_back_plane


@rule
def well_width(rail_inner_x: Mm) -> Mm:
    """Along the mattress nothing stands in past the side rails; posts stand beyond its ends."""
    return 2 * rail_inner_x


@rule
def side_fit_built(well_width: Mm, mattress_across: Mm) -> Mm:
    """Room beside the mattress, with what the grid left over."""
    return (well_width - mattress_across) / 2


@rule
def well_length_least(mattress_along: Mm, end_fit: Mm) -> Mm:
    """The mattress drops in with room at the foot and at the head."""
    return mattress_along + 2 * end_fit


@rule
def rail_length(
    well_length_least: Mm, head_stands_in: Mm, foot_stands_in: Mm, grid: ShopGrid
) -> Mm:
    """Side rails run from post to post; posts, and caps reaching over them, clear the mattress."""
    return grid.up(well_length_least + head_stands_in + foot_stands_in)


@rule
def rail_end(post_along: Mm, rail_length: Mm) -> Mm:
    """Where the side rail meets the head post."""
    return post_along + rail_length


@rule
def bed_length(rail_end: Mm, post_along: Mm) -> Mm:
    """From the foot posts' outer face to the head posts' outer face."""
    return rail_end + post_along


@rule
def well_length(rail_length: Mm, head_stands_in: Mm, foot_stands_in: Mm) -> Mm:
    """Between whatever stands farthest in at the foot and at the head."""
    return rail_length - head_stands_in - foot_stands_in


@rule
def end_fit_built(well_length: Mm, mattress_along: Mm) -> Mm:
    """Room at the foot and at the head, with what the grid left over."""
    return (well_length - mattress_along) / 2


@rule
def mattress_foot_y(post_along: Mm, foot_stands_in: Mm, end_fit_built: Mm) -> Mm:
    """The mattress lies in the middle of its well."""
    return post_along + foot_stands_in + end_fit_built
