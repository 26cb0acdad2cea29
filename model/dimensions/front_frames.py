"""Framed fronts: stiles, rails and the panel in their grooves. Read for left, right and foot."""

from model.brief.drawers import FrontStyle
from model.dimensions.spots import shifted
from model.errors import CannotBuild
from model.rules import rule
from model.units import Count, Mm, Places, ShopGrid

LEAST_FIELD: Mm = 30.0  # a smaller panel cannot be seen as one
LEAST_TONGUE: Mm = 2.0


@rule
def framed_places(front_places: Places, front_style: FrontStyle) -> Places:
    """Where framed fronts begin; none when fronts are slabs."""
    return front_places if front_style == "frame and panel" else ()


@rule
def slab_places(front_places: Places, front_style: FrontStyle) -> Places:
    """Where slab fronts begin; none when fronts are framed."""
    return front_places if front_style == "slab" else ()


@rule
def front_field_width(
    front_width: Mm, front_stile_width: Mm, front_style: FrontStyle, front_count: Count
) -> Mm:
    """Between the stiles of a framed front."""
    field = front_width - 2 * front_stile_width
    if front_style == "frame and panel" and front_count and field < LEAST_FIELD:
        raise CannotBuild("front_stile_width", "The stiles leave no room for a panel.")
    return field


@rule
def front_field_height(
    front_height: Mm, front_stile_width: Mm, front_style: FrontStyle, front_count: Count
) -> Mm:
    """Between the rails of a framed front."""
    field = front_height - 2 * front_stile_width
    if front_style == "frame and panel" and front_count and field < LEAST_FIELD:
        raise CannotBuild(
            "front_stile_width", "The rails of the fronts leave no room for a panel.",
        )  # fmt: skip
    return field


@rule
def front_rail_length(front_field_width: Mm, front_groove_depth: Mm) -> Mm:
    """A rail's stub tenons fill the stiles' grooves."""
    return front_field_width + 2 * front_groove_depth


@rule
def front_panel_reach(
    front_groove_depth: Mm, panel_float: Mm, front_style: FrontStyle, front_count: Count
) -> Mm:
    """How far the panel reaches into its grooves, but for its float."""
    reach = front_groove_depth - panel_float
    if front_style == "frame and panel" and front_count and reach < LEAST_TONGUE:
        raise CannotBuild(
            "front_groove_depth", "The panel would drop out of its grooves.",
        )  # fmt: skip
    return reach


@rule
def front_panel_width(front_field_width: Mm, front_panel_reach: Mm, grid: ShopGrid) -> Mm:
    """The panel's size across, tongues counted."""
    return grid.down(front_field_width + 2 * front_panel_reach)


@rule
def front_panel_height(front_field_height: Mm, front_panel_reach: Mm, grid: ShopGrid) -> Mm:
    """The panel's size up, tongues counted."""
    return grid.down(front_field_height + 2 * front_panel_reach)


@rule
def front_panel_tuck(front_panel_width: Mm, front_field_width: Mm) -> Mm:
    """How far the panel reaches into each stile, as built."""
    return (front_panel_width - front_field_width) / 2


@rule
def front_panel_tuck_up(front_panel_height: Mm, front_field_height: Mm) -> Mm:
    """How far the panel reaches into each rail, as built."""
    return (front_panel_height - front_field_height) / 2


@rule
def front_panel_float(front_groove_depth: Mm, front_panel_tuck: Mm) -> Mm:
    """Room at the panel's sides, as built."""
    return front_groove_depth - front_panel_tuck


@rule
def front_panel_float_up(front_groove_depth: Mm, front_panel_tuck_up: Mm) -> Mm:
    """Room above and below the panel, as built."""
    return front_groove_depth - front_panel_tuck_up


@rule
def front_panel_recess(
    front_style: FrontStyle,
    front_thickness: Mm,
    front_groove_width: Mm,
    front_panel_stock: Mm,
    front_count: Count,
) -> Mm:
    """The groove lies in the middle of the frame; the panel's face begins at its outer wall."""
    if front_style == "slab":
        return 0.0
    wall = (front_thickness - front_groove_width) / 2
    if front_count and front_panel_stock < front_groove_width - 1e-6:
        raise CannotBuild(
            "front_panel_stock", "The panel is thinner than its groove is wide.",
        )  # fmt: skip
    if front_count and wall + front_panel_stock > front_thickness + 1e-6:
        raise CannotBuild(
            "front_panel_stock", "The panel would stand out behind its frame.",
        )  # fmt: skip
    if front_count and wall < 3:
        raise CannotBuild(
            "front_groove_width", "The groove leaves too little wall in the front's frame.",
        )  # fmt: skip
    return wall


@rule
def front_far_stile_places(framed_places: Places, front_width: Mm, front_stile_width: Mm) -> Places:
    """The stile at the far end of each framed front."""
    return shifted(framed_places, front_width - front_stile_width)


@rule
def front_rail_places(
    framed_places: Places, front_stile_width: Mm, front_groove_depth: Mm
) -> Places:
    """Rails begin in the stile's groove."""
    return shifted(framed_places, front_stile_width - front_groove_depth)


@rule
def front_upper_rail_bottom(front_top: Mm, front_stile_width: Mm) -> Mm:
    """The upper rail of a framed front, from the floor."""
    return front_top - front_stile_width


@rule
def front_panel_places(
    framed_places: Places, front_stile_width: Mm, front_panel_tuck: Mm
) -> Places:
    """Panels are kept centred between their stiles."""
    return shifted(framed_places, front_stile_width - front_panel_tuck)


@rule
def front_panel_bottom(front_bottom: Mm, front_stile_width: Mm, front_panel_tuck_up: Mm) -> Mm:
    """Panels are kept centred between their rails."""
    return front_bottom + front_stile_width - front_panel_tuck_up


@rule
def front_panel_plane(front_face: Mm, front_panel_recess: Mm) -> Mm:
    """The panel's outer face, from the posts' outer plane inwards."""
    return front_face + front_panel_recess
