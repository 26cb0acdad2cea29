"""What drawers run on: the room it takes beside a box, and how high on the box it sits."""

from model.errors import CannotBuild
from model.materials import Slide
from model.rules import rule
from model.units import Count, Measured, Mm

LIFT_CLEAR: Mm = 3.0  # a hand that lifts a side cannot hold it nearer; common practice, no source
SCREW_CLEAR: Mm = 5.0  # half a screw's head and a hair: from its centre to the bottom's groove


@rule
def has_drawers(
    left_drawer_count: Count, right_drawer_count: Count, foot_drawer_count: Count
) -> bool:
    """Whether the bed has any drawer at all."""
    return left_drawer_count + right_drawer_count + foot_drawer_count > 0


@rule
def is_side_mount(slide: Slide) -> bool:
    """Ball-bearing slides are screwed to the box sides; runners are made of wood."""
    return slide.kind == "side-mount ball-bearing"


@rule
def slide_thickness(slide: Slide, slide_thickness_measured: Measured) -> Mm:
    """A slide takes its thickness beside the box, as measured where it was; a runner none."""
    if not slide.thickness_mm or slide_thickness_measured is None:
        return slide.thickness_mm
    return slide_thickness_measured


@rule
def slide_side_space(slide_thickness: Mm, slide_play: Mm) -> Mm:
    """Beside the box there is room for the slide, and a little play so that it runs.

    Source: a slide maker's help page: thickness plus 0.2 to 0.5 mm, heavier series 0.5 to 0.9 mm
    """
    return slide_thickness + slide_play


@rule
def slide_member(slide_thickness: Mm) -> Mm:
    """Half of a slide's thickness stays on the bearer, half moves with the box."""
    return slide_thickness / 2


@rule
def slide_section(slide: Slide) -> Mm:
    """How high the slide's own section is."""
    return slide.section_height_mm


@rule
def slide_over_rail(
    connector_lift: Mm, left_drawer_count: Count, right_drawer_count: Count, box_bottom_room: Mm
) -> Mm:
    """How high above the box's lower edge a slide must hang so that the bottom rail of a side that
    is lifted onto its hooks passes below it: slides reach past their bearers into the openings.
    """
    if not connector_lift or not left_drawer_count + right_drawer_count:
        return 0.0
    return max(0.0, connector_lift + LIFT_CLEAR - box_bottom_room)


@rule
def slide_screw_up(
    is_side_mount: bool,
    slide_section: Mm,
    bottom_up: Mm,
    bottom_thickness: Mm,
    box_height: Mm,
    slide_over_rail: Mm,
    slide_up_most: Mm,
) -> Mm:
    """The slide sits low on the box side, yet its screws clear the bottom's groove, and a side that
    is hooked in clears the slide, where box and bearer are high enough.
    """
    if not is_side_mount:
        return 0.0
    up = max(slide_section / 2, bottom_up + bottom_thickness + SCREW_CLEAR)
    up = max(up, min(slide_section / 2 + slide_over_rail, slide_up_most))
    if box_height and up + slide_section / 2 > box_height:
        raise CannotBuild(
            "slide",
            f"The slide ({slide_section:.0f} mm high) is taller than the box side.",
        )
    return up


@rule
def slide_centre(box_bottom: Mm, slide_screw_up: Mm) -> Mm:
    """The line of the slide's screws, from the floor."""
    return box_bottom + slide_screw_up


@rule
def slide_bottom(slide_centre: Mm, slide_section: Mm) -> Mm:
    """The slide's lower edge, from the floor."""
    return slide_centre - slide_section / 2
