"""Angle brackets under the ends of the bearers."""

from model.brief.drawers import BearerFixing
from model.errors import CannotBuild
from model.rules import rule
from model.units import Mm

# Shares of the leaf: as far apart, and from the bearer's end, as heads of No. 8 screws have room in
# an inch of steel. Common practice, no source
HOLES = (0.315, 0.83)


@rule
def bracket_leaf() -> Mm:
    """Each leaf of the angle brackets under a bearer's ends is an inch long.

    Source: common practice, no source
    """
    return 25.4


@rule
def bracket_plate() -> Mm:
    """Brackets are bent from plate of this thickness.

    Source: common practice, no source
    """
    return 2.0


@rule
def bracket_width() -> Mm:
    """Brackets are narrower than any bearer.

    Source: common practice, no source (5/8 in brackets are 14 to 16 mm wide)
    """
    return 14.0


@rule
def bracket_drop(bearer_fixing: BearerFixing, bracket_leaf: Mm) -> Mm:
    """How far what holds a bearer's end reaches below the bearer."""
    return bracket_leaf if bearer_fixing == "brackets" else 0.0


@rule
def bracket_bottom(bearer_bottom: Mm, bracket_drop: Mm, frame_bottom: Mm, has_drawers: bool) -> Mm:
    """A bracket hangs under the bearer, against the frame's inner face."""
    bottom = bearer_bottom - bracket_drop
    if has_drawers and bracket_drop and bottom < frame_bottom - 1e-6:
        raise CannotBuild(
            "bearer_fixing", "The frame gives brackets under the bearers nothing to be screwed to.",
        )  # fmt: skip
    if has_drawers and bottom < 0:
        raise CannotBuild("bearer_stock", "The bearers would stand below the floor.")
    return bottom


@rule
def bracket_offset(bearer_across: Mm, bracket_width: Mm) -> Mm:
    """A bracket sits under the middle of its bearer."""
    return (bearer_across - bracket_width) / 2
