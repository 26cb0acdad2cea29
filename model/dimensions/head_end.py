"""The head end's frame of reference."""

from model.frame import Frame, end_frame_at
from model.rules import rule
from model.units import Mm


@rule
def frame(bed_length: Mm) -> Frame:
    """The head end is laid out from its posts' outer faces inwards."""
    return end_frame_at(bed_length, -1)
