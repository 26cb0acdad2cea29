"""The foot end's frame of reference, and the row of drawers reached from there."""

from model.frame import Frame, end_frame_at
from model.rules import rule
from model.units import Count, Mm, Places


@rule
def frame() -> Frame:
    """Laid out inwards from the posts' outer faces, from which the bed's length is measured."""
    return end_frame_at(0.0, 1)


@rule
def is_framed(drawers: Count) -> bool:
    """With drawers at the foot, the foot end below the deck is a face frame."""
    return drawers > 0


@rule
def bays(drawers: Count) -> Count:
    """A face frame has a bay for each drawer."""
    return drawers


@rule
def drawer_count(drawers: Count) -> Count:
    """Every bay at the foot holds a drawer."""
    return drawers


@rule
def front_plane(end_rail_set_back: Mm) -> Mm:
    """The frame's outer face, from the posts' outer face inwards."""
    return end_rail_set_back


@rule
def back_plane(end_rail_back_plane: Mm) -> Mm:
    """The frame's inner face, from the posts' outer face inwards."""
    return end_rail_back_plane


@rule
def far_plane(bed_length: Mm, end_rail_back_plane: Mm) -> Mm:
    """The head rail's inner face, from the foot posts inwards."""
    return bed_length - end_rail_back_plane


@rule
def middle_plane(bed_length: Mm) -> Mm:
    """Half the bed's length, from the foot posts inwards."""
    return bed_length / 2


@rule
def run_from(post_inner_x: Mm) -> Mm:
    """The frame begins at the left post."""
    return -post_inner_x


@rule
def run_to(post_inner_x: Mm) -> Mm:
    """The frame ends at the right post."""
    return post_inner_x


@rule
def blind_bay(drawers: Count) -> Mm:
    """The foot frame opens over its full width."""
    return 0.0


@rule
def row_from(run_from: Mm) -> Mm:
    """The row of drawers begins at the left post."""
    return run_from


@rule
def row_name() -> str:
    """The row of drawers is called after its side."""
    return "foot"


@rule
def frame_assembly() -> str:
    """The foot frame is glued up with the footboard."""
    return "footboard"


@rule
def closed_bays() -> Places:
    """Every bay at the foot opens."""
    return ()


@rule
def blind_bays() -> Places:
    """No bay at the foot is blind."""
    return ()
