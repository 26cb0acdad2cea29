"""Cap board and skirting of an end, and how far the end stands in over the mattress."""

from __future__ import annotations

from model.frame import Frame
from model.rules import rule
from model.units import Mm, ShopGrid

BEDDING: Mm = 50.0  # a quilt on the mattress; common practice, no source
NOTHING_ABOVE: Mm = 1000.0  # as good as free: nobody lifts a rail higher
LEAST_SKIRTING: Mm = 30.0  # a narrower board splits at its joints; common practice, no source


@rule
def is_capped(cap_thickness: Mm) -> bool:
    """A cap board of no thickness is none."""
    return cap_thickness > 0


@rule
def cap_length(bed_width: Mm, cap_overhang: Mm) -> Mm:
    """The cap covers both posts and stands out at each end."""
    return bed_width + 2 * cap_overhang


@rule
def cap_width(post_along: Mm, cap_overhang: Mm) -> Mm:
    """The cap covers the posts' depth and stands out in front and behind."""
    return post_along + 2 * cap_overhang


@rule
def cap_from(cap_length: Mm) -> Mm:
    """The cap lies in the middle of the bed."""
    return -cap_length / 2


@rule
def cap_plane(cap_overhang: Mm) -> Mm:
    """The cap begins outside the posts' outer faces."""
    return -cap_overhang


@rule
def stands_in(is_capped: bool, cap_overhang: Mm, end_height_built: Mm, sleeping_height: Mm) -> Mm:
    """A cap no higher than the bedding stands in over the mattress; nothing else does."""
    return cap_overhang if is_capped and end_height_built < sleeping_height + BEDDING else 0.0


@rule
def rail_lift_room(is_capped: bool, cap_overhang: Mm, end_height_built: Mm, rail_top: Mm) -> Mm:
    """How far a side rail can be lifted at this end before it meets the cap."""
    return end_height_built - rail_top if is_capped and cap_overhang > 0 else NOTHING_ABOVE


@rule
def skirting_width(end_rail_bottom: Mm, floor_gap: Mm, grid: ShopGrid) -> Mm:
    """The skirting reaches from the end rail to the floor gap; the grid's leftover widens that."""
    return grid.down(end_rail_bottom - floor_gap)


@rule
def skirting_bottom(end_rail_bottom: Mm, skirting_width: Mm) -> Mm:
    """The skirting closes up to the end rail's lower edge."""
    return end_rail_bottom - skirting_width


@rule
def is_head(frame: Frame) -> bool:
    """The head end looks towards the foot, and the other way round."""
    return frame.inward < 0


@rule
def end_assembly(is_head: bool) -> str:
    """Each end is glued up on its own and stays one piece."""
    return "headboard" if is_head else "footboard"


@rule
def is_skirted(has_skirting: bool, is_head: bool, skirting_width: Mm) -> bool:
    """Only the headboard is closed, and a rail near the floor leaves nothing to close."""
    return has_skirting and is_head and skirting_width >= LEAST_SKIRTING
