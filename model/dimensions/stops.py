"""Guides under a box, stops that keep a drawer in. Read for left, right and foot."""

from model.dimensions.spots import shifted
from model.errors import CannotBuild
from model.materials import Slide
from model.rules import rule
from model.units import Count, Mm, Places, ShopGrid

LEAST_TRAVEL: Mm = 50.0
LEAST_BUTTON: Mm = 3.0  # inset fronts may leave no room for a longer one


@rule
def has_stop(slide: Slide, drawer_count: Count) -> bool:
    """A drawer that its slide does not hold is held by a stop."""
    return drawer_count > 0 and not slide.holds_the_drawer


@rule
def stop_room(box_back_front: Mm, back_plane: Mm, bearer_stock: Mm) -> Mm:
    """How far behind the frame a stop can sit under the bottom, and still before the back."""
    return box_back_front - back_plane - bearer_stock


@rule
def stop_travel(has_stop: bool, slide: Slide, box_depth: Mm, stop_room: Mm, grid: ShopGrid) -> Mm:
    """The stop lets about three quarters of the box come out, so that the rest still holds it.

    Source: common practice, no source
    """
    if not has_stop:
        return 0.0
    out = grid.down(min(slide.travel_share * box_depth, stop_room))
    if out < LEAST_TRAVEL:
        raise CannotBuild("depth", "The boxes are too shallow for a stop behind the frame.")
    return out


@rule
def stop_plane(back_plane: Mm, stop_travel: Mm) -> Mm:
    """The stop meets the frame's inner face when the drawer has come out."""
    return back_plane + stop_travel


@rule
def guide_places(
    bearer_places: Places, has_centre_runner: bool, slide_play: Mm, box_thickness: Mm
) -> Places:
    """The first guide strip of each box runs beside the centre runner, with its play."""
    return shifted(bearer_places, -slide_play - box_thickness) if has_centre_runner else ()


@rule
def guide_far_places(
    guide_places: Places, box_thickness: Mm, slide_play: Mm, bearer_across: Mm
) -> Places:
    """The second guide strip runs on the centre runner's other side."""
    return shifted(guide_places, box_thickness + 2 * slide_play + bearer_across)


@rule
def guide_room(drawer_inside_width: Mm, bearer_across: Mm, slide_play: Mm, box_thickness: Mm) -> Mm:
    """Under the bottom, what is left between a guide strip and the box side."""
    return (drawer_inside_width - bearer_across) / 2 - slide_play - box_thickness


@rule
def stop_places(
    has_stop: bool,
    has_centre_runner: bool,
    box_places: Places,
    box_width: Mm,
    stop_width: Mm,
) -> Places:
    """One stop under the middle of the box; beside a centre runner, the first of two."""
    if not has_stop or has_centre_runner:
        return ()
    return shifted(box_places, (box_width - stop_width) / 2)


@rule
def side_stop_places(
    has_stop: bool,
    has_centre_runner: bool,
    box_places: Places,
    box_thickness: Mm,
    guide_room: Mm,
    stop_width: Mm,
) -> Places:
    """Beside a centre runner a stop sits on either side, between guide strip and box side."""
    if not has_stop or not has_centre_runner:
        return ()
    if guide_room < stop_width:
        raise CannotBuild(
            "slide", "The drawers are too narrow for a centre runner with guides and stops."
        )
    return shifted(box_places, box_thickness + (guide_room - stop_width) / 2)


@rule
def side_stop_far_places(
    side_stop_places: Places,
    box_width: Mm,
    box_thickness: Mm,
    guide_room: Mm,
) -> Places:
    """The stop on the centre runner's other side."""
    return shifted(side_stop_places, box_width - 2 * box_thickness - guide_room)


@rule
def button_far_places(button_places: Places, box_width: Mm, box_thickness: Mm) -> Places:
    """The glide button under the box side at the opening's far edge."""
    return shifted(button_places, box_width - box_thickness)


@rule
def button_length(back_plane: Mm, box_front_plane: Mm) -> Mm:
    """A glide button is as long as the rail's upper edge is free under the closed box."""
    return back_plane - box_front_plane


@rule
def button_places(has_centre_runner: bool, button_length: Mm, box_places: Places) -> Places:
    """On a centre runner buttons on the bottom rail, under the box sides, keep the box level."""
    return box_places if has_centre_runner and button_length >= LEAST_BUTTON else ()


@rule
def shoe_places(has_centre_runner: bool, bearer_places: Places) -> Places:
    """A shoe lies on the centre runner."""
    return bearer_places if has_centre_runner else ()


@rule
def guide_plane(box_front_plane: Mm, box_thickness: Mm, back_plane: Mm) -> Mm:
    """Guide strips begin behind the box front and behind the frame, which they must not drag on."""
    return max(box_front_plane + box_thickness, back_plane)


@rule
def guide_length(
    box_back_front: Mm, guide_plane: Mm, has_centre_runner: bool, grid: ShopGrid
) -> Mm:
    """Guide strips reach from the box front to the box back."""
    return grid.down(box_back_front - guide_plane) if has_centre_runner else 0.0
