"""Drawer boxes along and across their row. Read for left, right and foot."""

from model.brief.drawers import BottomFit, FrontFit
from model.brief.sides import DepthKind
from model.dimensions.spots import shifted
from model.errors import CannotBuild
from model.materials import Slide
from model.rules import rule
from model.units import Count, Measured, Mm, Places, Share, ShopGrid

LEAST_DEPTH: Mm = 150.0  # a shallower box tips on any slide; common practice, no source


@rule
def box_side_adds(box_thickness: Mm, box_joint_depth: Mm) -> Mm:
    """What a box side adds to the width beyond the end of the box front."""
    return box_thickness - box_joint_depth


@rule
def box_front_length_wanted(opening_width: Mm, slide_side_space: Mm, box_side_adds: Mm) -> Mm:
    """The opening, less the slide and its play on either side, and less what the sides add."""
    return opening_width - 2 * slide_side_space - 2 * box_side_adds


@rule
def box_width_step(
    box_front_length_wanted: Mm, slide_play: Mm, slide: Slide, grid: ShopGrid
) -> ShopGrid:
    """A box must meet its slides' tolerance: front and back go on the coarsest step that does."""
    low, high = min(slide.play_low_mm, slide_play), max(slide.play_high_mm, slide_play)
    steps = grid.finer()
    for step in steps:
        play = slide_play + (box_front_length_wanted - step.near(box_front_length_wanted)) / 2
        if low - 1e-6 <= play <= high + 1e-6:
            return step
    return steps[-1]


@rule
def box_front_length(
    box_front_length_wanted: Mm, box_width_step: ShopGrid, drawer_count: Count
) -> Mm:
    """Front and back fit between the sides, and into them as deep as the joint goes."""
    return box_width_step.near(box_front_length_wanted) if drawer_count else 0.0


@rule
def box_width(box_front_length: Mm, box_side_adds: Mm, drawer_count: Count) -> Mm:
    """The box is as wide as its front and its two sides make it."""
    return box_front_length + 2 * box_side_adds if drawer_count else 0.0


@rule
def box_side_room(opening_width: Mm, box_width: Mm) -> Mm:
    """Between box and bearer, each side, as built."""
    return (opening_width - box_width) / 2


@rule
def slide_play_built(box_side_room: Mm, slide_thickness: Mm) -> Mm:
    """The play that is left at each slide, as built."""
    return box_side_room - slide_thickness


@rule
def box_front_plane(front_plane: Mm, front_fit: FrontFit, front_thickness: Mm) -> Mm:
    """The box begins flush with the frame's outer face, or behind its inset front."""
    return front_plane + (front_thickness if front_fit == "inset" else 0.0)


@rule
def dust_back_thickness(
    has_dust_back: bool, depth: DepthKind, drawer_count: Count, bottom_thickness: Mm
) -> Mm:
    """Half-depth drawers may have a thin panel behind them, cut from the bottoms' sheet."""
    return bottom_thickness if has_dust_back and depth == "half" and drawer_count else 0.0


@rule
def box_depth_most(
    back_plane: Mm,
    bearer_reach: Mm,
    box_rear_room: Mm,
    dust_back_thickness: Mm,
    box_front_plane: Mm,
) -> Mm:
    """How deep a box can be: as far as its bearers reach, less room behind it."""
    return back_plane + bearer_reach - box_rear_room - dust_back_thickness - box_front_plane


@rule
def slide_closed(
    slide: Slide, slide_length: Measured, box_depth_most: Mm, drawer_count: Count, grid: ShopGrid
) -> Mm:
    """The longest slide that is no longer than the box, unless another length was chosen."""
    if not drawer_count:
        return 0.0
    if slide.is_cut_to_length:
        return grid.down(box_depth_most)
    if slide_length is not None:
        if grid.up(slide_length) > box_depth_most + 1e-6:
            raise CannotBuild(
                "slide_length", "The slides are longer than a box can be here.",
            )  # fmt: skip
        return slide_length
    longest = slide.longest_within(grid.down(box_depth_most))
    if longest is None:
        raise CannotBuild(
            "slide",
            f"No slide is short enough: a box can be {max(box_depth_most, 0):.0f} mm deep here.",
        )
    return longest


@rule
def box_depth(
    depth: DepthKind, slide_closed: Mm, box_depth_most: Mm, drawer_count: Count, grid: ShopGrid
) -> Mm:
    """The box fills the depth there is, or is as deep as its slide is long."""
    if not drawer_count:
        return 0.0
    deep = grid.up(slide_closed) if depth == "slide" else grid.down(box_depth_most)
    if deep < LEAST_DEPTH:
        raise CannotBuild(
            "depth",
            f"The boxes would be {max(deep, 0):.0f} mm deep; {LEAST_DEPTH:.0f} mm is the least.",
        )
    return deep


@rule
def box_back_plane(box_front_plane: Mm, box_depth: Mm) -> Mm:
    """Where the closed box ends, from the posts' outer plane inwards."""
    return box_front_plane + box_depth


@rule
def travel(
    is_side_mount: bool, slide_closed: Mm, slide: Slide, stop_travel: Mm, drawer_count: Count
) -> Mm:
    """How far the drawer comes out: as far as its slide lets it, or until it meets its stop."""
    if not drawer_count:
        return 0.0
    return slide_closed * slide.travel_share if is_side_mount else stop_travel


@rule
def access_overhang(box_front_plane: Mm, front_plane: Mm) -> Mm:
    """A box behind an inset front has to pass the front's thickness before it shows."""
    return box_front_plane - front_plane


@rule
def access(box_depth: Mm, travel: Mm, access_overhang: Mm) -> Share:
    """The share of the box that comes out from under the bed."""
    return max(0.0, min(box_depth, travel - access_overhang)) / box_depth if box_depth else 0.0


@rule
def drawer_inside_width(box_width: Mm, box_thickness: Mm, drawer_count: Count) -> Mm:
    """Between the box sides."""
    return box_width - 2 * box_thickness if drawer_count else 0.0


@rule
def drawer_inside_depth(
    box_depth: Mm, box_thickness: Mm, dado_set_in: Mm, drawer_count: Count
) -> Mm:
    """Between box front and box back."""
    return box_depth - 2 * box_thickness - dado_set_in if drawer_count else 0.0


@rule
def bottom_across(
    drawer_inside_width: Mm, bottom_groove_depth: Mm, bottom_room: Mm, grid: ShopGrid
) -> Mm:
    """The bottom reaches into the sides' grooves, but for its room."""
    return grid.down(drawer_inside_width + 2 * (bottom_groove_depth - bottom_room))


@rule
def bottom_across_room(drawer_inside_width: Mm, bottom_groove_depth: Mm, bottom_across: Mm) -> Mm:
    """Room between the bottom's edge and the ground of the sides' grooves, as built."""
    return (drawer_inside_width + 2 * bottom_groove_depth - bottom_across) / 2


@rule
def bottom_span_along(
    bottom_fit: BottomFit, drawer_inside_depth: Mm, bottom_groove_depth: Mm, box_thickness: Mm
) -> Mm:
    """From the front's groove to the back's groove, or to the outer face of a cut-down back."""
    behind = bottom_groove_depth if bottom_fit == "groove" else box_thickness
    return drawer_inside_depth + bottom_groove_depth + behind


@rule
def bottom_along(
    bottom_fit: BottomFit, bottom_span_along: Mm, bottom_room: Mm, grid: ShopGrid
) -> Mm:
    """The bottom is as deep as its grooves let it, but for its room; under a back it ends flush."""
    return grid.down(bottom_span_along - bottom_room * (2 if bottom_fit == "groove" else 1))


@rule
def bottom_along_room(bottom_fit: BottomFit, bottom_span_along: Mm, bottom_along: Mm) -> Mm:
    """Room between the bottom's edge and the ground of the front's groove, as built."""
    return (bottom_span_along - bottom_along) / (2 if bottom_fit == "groove" else 1)


@rule
def bottom_plane(
    box_front_plane: Mm, box_thickness: Mm, bottom_groove_depth: Mm, bottom_along_room: Mm
) -> Mm:
    """Where the bottom begins, in the front's groove."""
    return box_front_plane + box_thickness - bottom_groove_depth + bottom_along_room


@rule
def box_back_front(box_back_plane: Mm, dado_set_in: Mm, box_thickness: Mm) -> Mm:
    """Where the box back's inner face is."""
    return box_back_plane - dado_set_in - box_thickness


@rule
def box_places(opening_places: Places, box_side_room: Mm, drawer_count: Count) -> Places:
    """Each box stands in the middle of its opening."""
    return shifted(opening_places, box_side_room) if drawer_count else ()


@rule
def box_far_side_places(box_places: Places, box_width: Mm, box_thickness: Mm) -> Places:
    """Where the side at the far end of each box begins."""
    return shifted(box_places, box_width - box_thickness)


@rule
def box_front_places(box_places: Places, box_thickness: Mm, box_joint_depth: Mm) -> Places:
    """Where the front and back of each box begin."""
    return shifted(box_places, box_thickness - box_joint_depth)


@rule
def bottom_places(
    box_places: Places, box_thickness: Mm, bottom_groove_depth: Mm, bottom_across_room: Mm
) -> Places:
    """Where each bottom begins, in the side's groove."""
    return shifted(box_places, box_thickness - bottom_groove_depth + bottom_across_room)
