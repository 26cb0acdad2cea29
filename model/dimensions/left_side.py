"""The left side's frame of reference."""

from model.frame import Frame, side_frame_at
from model.rules import rule
from model.units import Mm


@rule
def frame(post_outer_x: Mm) -> Frame:
    """The left side is laid out from its posts' outer faces inwards."""
    return side_frame_at(-post_outer_x, 1)


@rule
def row_name() -> str:
    """The row of drawers is called after its side."""
    return "left"


@rule
def frame_assembly() -> str:
    """The face frame is part of its side."""
    return "left side"
