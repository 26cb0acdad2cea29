"""The head end's frame of reference."""

from model.dimensions.side_frames import Shoulders
from model.frame import Frame, end_frame_at
from model.rules import rule
from model.units import Mm, Spans


@rule
def frame(bed_length: Mm) -> Frame:
    """The head end is laid out from its posts' outer faces inwards."""
    return end_frame_at(bed_length, -1)


@rule
def is_framed() -> bool:
    """No drawers are reached from the head, so it has no face frame."""
    return False


@rule
def stile_spans() -> Spans:
    """Without a face frame there are no stiles below the head rail."""
    return ()


@rule
def stile_shoulders() -> Shoulders:
    """Without stiles there are no shoulders."""
    return {}
