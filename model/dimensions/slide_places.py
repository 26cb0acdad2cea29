"""Side-mount slides along their row. Read for left, right and foot."""

from model.dimensions.brackets import HOLES
from model.dimensions.fasteners import Fastener, longest_screw
from model.dimensions.spots import shifted
from model.mechanics.fasteners.spacing import wood_between
from model.rules import rule
from model.units import Count, Mm, Places

PLATE: Mm = 1.2  # the steel that a screw's head bears on; common practice, no source
# A slide's screw may come this near to the box side's inner face: a sheet is a few tenths thinner
# here and there, and a nearer point comes through it. Common practice, no source
HAIR: Mm = 1.0


@rule
def slide_near_places(opening_places: Places, is_side_mount: bool, drawer_count: Count) -> Places:
    """The outer member lies on the bearer, flush with the opening's first edge."""
    return opening_places if is_side_mount and drawer_count else ()


@rule
def slide_holder_far_places(
    slide_near_places: Places, opening_width: Mm, slide_member: Mm
) -> Places:
    """The outer member at the opening's far edge."""
    return shifted(slide_near_places, opening_width - slide_member)


@rule
def slide_mover_places(box_places: Places, is_side_mount: bool, slide_member: Mm) -> Places:
    """The inner member lies on the box side."""
    return shifted(box_places, -slide_member) if is_side_mount else ()


@rule
def slide_mover_far_places(slide_mover_places: Places, slide_member: Mm, box_width: Mm) -> Places:
    """The inner member on the box's far side."""
    return shifted(slide_mover_places, slide_member + box_width)


@rule
def slide_screw_behind(
    bracket_drop: Mm, bracket_leaf: Mm, bracket_screw_up: Fastener, slide_bearer_screw: Fastener
) -> Mm:
    """The first screw of a slide goes into the bearer behind the screws that hold a bracket under
    it, and at least half an inch behind the frame.

    Source: common practice, no source
    """
    if not bracket_drop:
        return 12.0
    up, own = bracket_screw_up.screw.shank_mm, slide_bearer_screw.screw.shank_mm
    return bracket_leaf * max(HOLES) + (up + own) / 2 + wood_between(up, own)


@rule
def slide_screw_spots(
    slide_closed: Mm, back_plane: Mm, box_front_plane: Mm, slide_screw_behind: Mm
) -> Places:
    """Slides have three screws a side, the first behind the frame, where the bearer is.

    Source: common practice, no source
    """
    first = max(35.0, back_plane - box_front_plane + slide_screw_behind)
    last = slide_closed - 35.0
    return (first, (first + last) / 2, last)


@rule
def slide_bearer_screw(bearer_stock: Mm) -> Fastener:
    """Screws that hold a slide must end inside the bearer."""
    return longest_screw(min(15.875, bearer_stock - 1), ("6", "4"))


@rule
def slide_box_screw(box_thickness: Mm) -> Fastener:
    """Screws that hold a slide must not prick whoever reaches into the drawer."""
    return longest_screw(min(15.875, box_thickness + PLATE - HAIR), ("6", "4"))


@rule
def slide_code(slide_closed: Mm) -> str:
    """Slides are bought by their length in mm."""
    return f"SLIDE-{slide_closed:.0f}"
