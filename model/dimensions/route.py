"""What stands in the way of the bed's pieces on their way in."""

from model.brief.route import Stairs
from model.mechanics.obstacles import Corner, Door, Flight, Landing
from model.rules import rule
from model.units import Mm


@rule
def door(door_width: Mm, door_height: Mm) -> Door:
    """Every piece passes the narrowest door."""
    return Door(width=float(door_width), height=float(door_height))


@rule
def corner(has_corner: bool, corridor_before: Mm, corridor_after: Mm, ceiling: Mm) -> Corner | None:
    """Long pieces turn a square corner."""
    if not has_corner:
        return None
    return Corner(
        before=float(corridor_before), after=float(corridor_after), ceiling=float(ceiling)
    )


@rule
def flight(
    stairs: Stairs, stair_width: Mm, stair_headroom: Mm, stair_riser: Mm, stair_tread: Mm
) -> Flight | None:
    """Pieces are carried along the slope of the stairs."""
    if stairs == "none":
        return None
    return Flight(
        width=float(stair_width), headroom=float(stair_headroom), riser=float(stair_riser),
        tread=float(stair_tread),
    )  # fmt: skip


@rule
def landing(
    stairs: Stairs, stair_width: Mm, landing_depth: Mm, stair_headroom: Mm
) -> Landing | None:
    """Where the stairs turn, long pieces turn with them."""
    if stairs != "with a turn":
        return None
    return Landing(
        width=float(stair_width), depth=float(landing_depth), headroom=float(stair_headroom)
    )
