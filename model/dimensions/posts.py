"""The posts of an end: how long they are, how they are built, where their taper begins."""

from __future__ import annotations

from model.brief.posts import PostBuild
from model.errors import CannotBuild
from model.rules import rule
from model.units import Count, Mm, Places

LEAST_TAPER: Mm = 25.0  # below this a taper is a chamfer; common practice, no source


@rule
def post_bottom(glide_height: Mm) -> Mm:
    """A post stands on its glide."""
    return glide_height


@rule
def post_length(post_top: Mm, post_bottom: Mm) -> Mm:
    """From the glide to the top of the end."""
    return post_top - post_bottom


@rule
def post_layers_built(post_build: PostBuild, post_layers: Count) -> Count:
    """A solid post is one layer."""
    return 1 if post_build == "solid" else post_layers


@rule
def post_layer_thickness(post_build: PostBuild, frame_thickness: Mm, post_along: Mm) -> Mm:
    """A laminated post is glued up from the stock of the frames."""
    return post_along if post_build == "solid" else frame_thickness


@rule
def lowest_of_end(
    end_rail_bottom: Mm,
    is_framed: bool,
    frame_bottom: Mm,
    is_skirted: bool,
    skirting_bottom: Mm,
) -> Mm:
    """The lowest edge between the two posts."""
    lowest = frame_bottom if is_framed else end_rail_bottom
    return min(lowest, skirting_bottom) if is_skirted else lowest


@rule
def lowest_rail(lowest_of_end: Mm, left_lowest_of_side: Mm, right_lowest_of_side: Mm) -> Mm:
    """The lowest edge of all that meets the posts of this end."""
    return min(lowest_of_end, left_lowest_of_side, right_lowest_of_side)


@rule
def taper_length(post_taper: Mm, lowest_rail: Mm, glide_height: Mm) -> Mm:
    """Posts taper from below the lowest rail that meets them; both posts of an end alike."""
    length = lowest_rail - glide_height
    if length < 0:
        raise CannotBuild(
            "glide_height", "The posts would end above the lower edges of their rails.",
        )  # fmt: skip
    if post_taper > 0 and length < LEAST_TAPER:
        raise CannotBuild(
            "post_taper", "The rails reach down so far that they would meet the posts' taper.",
            involved=("floor_gap",),
        )  # fmt: skip
    return length


@rule
def post_taper_length(post_taper: Mm, taper_length: Mm) -> Mm:
    """A post without a taper is straight down to the floor."""
    return taper_length if post_taper > 0 else 0.0


@rule
def post_foot(post_width: Mm, post_along: Mm, post_taper: Mm, glide_width: Mm) -> Mm:
    """The narrower side of the post where it stands; its glide must fit under it."""
    foot = min(post_width, post_along) - 2 * post_taper
    if foot < glide_width:
        raise CannotBuild(
            "post_taper", "The tapered post ends narrower than its glide.",
            involved=("glide_width",),
        )  # fmt: skip
    return foot


@rule
def post_left_from(post_outer_x: Mm) -> Mm:
    """The left post's outer face is the bed's left side."""
    return -post_outer_x


@rule
def glide_plane(post_along: Mm, glide_width: Mm) -> Mm:
    """A glide sits under the middle of its post."""
    return (post_along - glide_width) / 2


@rule
def glide_places(post_inner_x: Mm, post_width: Mm, glide_width: Mm) -> Places:
    """Where the glides of both posts begin."""
    inset = (post_width - glide_width) / 2
    return (-post_inner_x - post_width + inset, post_inner_x + inset)
