"""Left and right: where the side stands, and how much of its length the drawers may take."""

from model.brief.sides import SideKind
from model.errors import CannotBuild
from model.rules import rule
from model.units import Count, Mm


@rule
def is_framed(side: SideKind, drawers: Count) -> bool:
    """A drawer side without drawers is a plain side."""
    return side in ("dummy", "closed frame") or (side == "drawer" and drawers > 0)


@rule
def bays(is_framed: bool, drawers: Count) -> Count:
    """A face frame has a bay for each drawer, and at least one."""
    return max(drawers, 1) if is_framed else 0


@rule
def drawer_count(side: SideKind, drawers: Count) -> Count:
    """Only a drawer side has drawers; a dummy side shows fronts alone."""
    return drawers if side == "drawer" else 0


@rule
def front_plane(rail_set_back: Mm) -> Mm:
    """The frame's outer face, from the posts' outer face inwards."""
    return rail_set_back


@rule
def back_plane(rail_back_plane: Mm) -> Mm:
    """The frame's inner face, from the posts' outer face inwards."""
    return rail_back_plane


@rule
def far_plane(bed_width: Mm, rail_back_plane: Mm) -> Mm:
    """The opposite side's inner face, from this side's posts inwards."""
    return bed_width - rail_back_plane


@rule
def middle_plane(post_outer_x: Mm) -> Mm:
    """The centre line of the bed, from this side's posts inwards."""
    return post_outer_x


@rule
def run_from(post_along: Mm) -> Mm:
    """The frame begins at the foot post."""
    return post_along


@rule
def run_to(rail_end: Mm) -> Mm:
    """The frame ends at the head post."""
    return rail_end


@rule
def blind_bay(
    foot_drawer_count: Count, foot_row_behind: Mm, run_from: Mm, end_stile_least: Mm
) -> Mm:
    """Beside foot drawers the side stays closed: a blind bay behind its own end stile."""
    return foot_row_behind - run_from - end_stile_least if foot_drawer_count else 0.0


@rule
def row_from(foot_drawer_count: Count, foot_row_behind: Mm, run_from: Mm) -> Mm:
    """The row of drawers begins at the foot post, or behind the foot drawers."""
    return foot_row_behind if foot_drawer_count else run_from


@rule
def side_rail_bottom(rail_top: Mm, rail_width: Mm, is_framed: bool) -> Mm:
    """A solid side rail hangs from the rail height by its own width."""
    if not is_framed and rail_width > rail_top:
        raise CannotBuild("rail_width", "The side rail would stand below the floor.")
    return rail_top - rail_width
