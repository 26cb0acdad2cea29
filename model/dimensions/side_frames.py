"""Face frames: stiles between the rails. Read for left, right and foot."""

from collections.abc import Mapping

from model.dimensions.joinery import LEAST_WALL
from model.errors import CannotBuild
from model.rules import rule
from model.units import Mm, Places, snapped

Shoulders = Mapping[float, tuple[Mm, Mm]]  # the lower and the upper one, by where a stile begins


@rule
def stile_length(opening_height: Mm, frame_joint_adds: Mm) -> Mm:
    """Stiles fill the opening's height, and their tenons go into both rails."""
    return opening_height + 2 * frame_joint_adds


@rule
def stile_bottom(opening_bottom: Mm, frame_joint_adds: Mm) -> Mm:
    """A stile's lower end, tenon included."""
    return opening_bottom - frame_joint_adds


@rule
def frame_shoulder(
    frame_joint_shoulder: Mm, panel_groove_depth: Mm, closed_bays: Places, blind_bays: Places
) -> Mm:
    """Beside a groove a stile's tenon, dowel or pocket keeps out of the panel's corner."""
    has_groove = bool(closed_bays or blind_bays)
    return max(frame_joint_shoulder, panel_groove_depth) if has_groove else frame_joint_shoulder


@rule
def rail_wall(
    is_framed: bool, bottom_rail_width: Mm, frame_joint_adds: Mm, opening_height: Mm
) -> Mm:
    """The wood that a stile's mortise leaves in the bottom rail, the narrower of the two."""
    wall = snapped(bottom_rail_width - frame_joint_adds)
    if is_framed and wall < LEAST_WALL:
        raise CannotBuild(
            "bottom_rail_width",
            f"The stiles' tenons would leave {wall:.1f} mm of the bottom rail; 6 mm is the least.",
        )
    if is_framed and opening_height < 40:
        raise CannotBuild(
            "rail_height",
            f"Between the rails {opening_height:.0f} mm would be left: too low for an opening "
            f"(40 mm is the least).",
        )
    return wall


@rule
def frame_clears_floor(is_framed: bool, frame_bottom: Mm) -> bool:
    """A face frame ends above the floor, however high its opening was measured."""
    if is_framed and frame_bottom < 0:
        raise CannotBuild(
            "opening_height_measured", "Under an opening this high the frame would meet the floor."
        )
    return True
