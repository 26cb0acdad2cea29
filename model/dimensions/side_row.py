"""The row of drawers of a long side against the other side. Read for left and right."""

from model.brief.sides import DepthKind, SideKind
from model.errors import CannotBuild
from model.materials import Slide
from model.rules import rule
from model.units import Count, Mm, Places

# 1/8 in over bearers that a block passes on the way to its place; common practice, no source
BLOCK_ROOM: Mm = 3.0


@rule
def same_layout(opening_places: Places, opposite_opening_places: Places) -> bool:
    """Whether the other side's openings lie right opposite."""
    return bool(opening_places) and opening_places == opposite_opening_places


@rule
def shares_bearers(drawer_count: Count, opposite_drawer_count: Count, same_layout: bool) -> bool:
    """Two rows with openings right opposite share bearers that run through from frame to frame."""
    return drawer_count > 0 and opposite_drawer_count > 0 and same_layout


@rule
def owns_bearers(drawer_count: Count, shares_bearers: bool, row_name: str) -> bool:
    """Shared bearers are counted with the left row."""
    return drawer_count > 0 and not (shares_bearers and row_name == "right")


@rule
def rail_takes_bearers(
    opposite_is_framed: bool, opposite_side_rail_bottom: Mm, bracket_bottom: Mm
) -> bool:
    """A solid rail on the other side takes bearers that end within its width."""
    return not opposite_is_framed and opposite_side_rail_bottom <= bracket_bottom + 1e-6


@rule
def lands_far(
    shares_bearers: bool,
    same_layout: bool,
    opposite_is_framed: bool,
    opposite_drawer_count: Count,
    rail_takes_bearers: bool,
) -> bool:
    """Bearers run through where the other side has stiles, or wood enough, to take their ends."""
    closed = opposite_is_framed and opposite_drawer_count == 0 and same_layout
    return shares_bearers or closed or rail_takes_bearers


@rule
def far_limit(far_plane: Mm, opposite_side: SideKind, block_behind: Mm) -> Mm:
    """The nearest thing on the other side: its frame, or the blocks behind its fixed fronts."""
    return far_plane - (block_behind if opposite_side == "dummy" else 0.0)


@rule
def reaches_far(
    depth: DepthKind,
    slide: Slide,
    drawer_count: Count,
    opposite_drawer_count: Count,
    centre_reserve: Mm,
) -> bool:
    """A row may pass the middle at full depth, or by slide where nothing stands there.

    A runner that is cut to its box has no length of its own: by slide its box is half deep.
    """
    if depth == "full" and drawer_count and opposite_drawer_count:
        raise CannotBuild(
            "depth", "Drawers across the whole bed meet the drawers of the other side.",
        )  # fmt: skip
    is_free = opposite_drawer_count == 0 and centre_reserve == 0 and not slide.is_cut_to_length
    return depth == "full" or (depth == "slide" and is_free)


@rule
def zone_limit(reaches_far: bool, far_limit: Mm, middle_plane: Mm, centre_reserve: Mm) -> Mm:
    """How far inwards the row may reach: to the other side, or to the middle."""
    return far_limit if reaches_far else middle_plane - centre_reserve


@rule
def front_count(side: SideKind, bays: Count) -> Count:
    """Drawers have fronts, and so has a dummy side."""
    return bays if side in ("drawer", "dummy") else 0


@rule
def is_dummy(side: SideKind) -> bool:
    """Whether the fronts are fixed."""
    return side == "dummy"


@rule
def block_bottom(
    opposite_drawer_count: Count, same_layout: bool, bearer_top: Mm, opening_bottom: Mm
) -> Mm:
    """Blocks behind fixed fronts stand clear of bearers that end on the same stiles, with a little
    room, since their side comes to its place past the bearers' ends.
    """
    return bearer_top + BLOCK_ROOM if opposite_drawer_count and same_layout else opening_bottom


@rule
def divider_length(
    bays: Count, opening_pitch: Mm, mid_stile: Mm, bearer_across: Mm, has_centre_runner: bool
) -> Mm:
    """The divider runs behind all the row's bearers, from the first to the last."""
    run = max(bays * opening_pitch - mid_stile, 0.0)
    return run if has_centre_runner else run + 2 * bearer_across


@rule
def divider_from(first_opening: Mm, bearer_across: Mm, has_centre_runner: bool) -> Mm:
    """The divider begins with the first bearer."""
    return first_opening - (0.0 if has_centre_runner else bearer_across)


@rule
def frame_bracket_spots(
    bracket_screw_spots: Places, opposite_bracket_screw_spots: Places
) -> Places:
    """Bearers that run through end on this side's frame too, with brackets of the other row."""
    return tuple(sorted({*bracket_screw_spots, *opposite_bracket_screw_spots}))


@rule
def frame_bracket_heights(
    bracket_screw_heights: Places, opposite_bracket_screw_heights: Places
) -> Places:
    """How high brackets of this row and of the other one are screwed to this side's frame."""
    return tuple(sorted({*bracket_screw_heights, *opposite_bracket_screw_heights}))
