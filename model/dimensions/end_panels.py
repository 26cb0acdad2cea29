"""Frame-and-panel ends: panels and the stiles between them."""

from __future__ import annotations

from model.brief.ends import EndStyle
from model.dimensions.joinery import LEAST_WALL
from model.errors import CannotBuild
from model.rules import rule
from model.units import Count, Mm, Places, ShopGrid, Spans

LEAST_HOLD: Mm = 3.0  # of a panel in its groove; common practice, no source
LEAST_WEB: Mm = (
    12.0  # of a stile between its grooves, where its tenon is; common practice, no source
)
LEAST_PANEL: Mm = 50.0  # a narrower panel is a stile; common practice, no source


@rule
def groove_wall(is_grooved: bool, frame_thickness: Mm, panel_thickness: Mm) -> Mm:
    """Each side of its groove, a rail keeps a wall that does not break off."""
    wall = (frame_thickness - panel_thickness) / 2
    if is_grooved and wall < LEAST_WALL:
        raise CannotBuild(
            "frame_stock", "The panel's groove leaves its rails too thin a wall.",
            involved=("panel_stock",),
        )  # fmt: skip
    return wall


@rule
def panel_hold(is_grooved: bool, panel_groove_depth: Mm, panel_float: Mm) -> Mm:
    """A panel goes into its groove as deep as the room for movement leaves."""
    if is_grooved and panel_groove_depth - panel_float < LEAST_HOLD:
        raise CannotBuild(
            "panel_float", "With so much room for movement the panel drops out of its groove.",
        )  # fmt: skip
    return panel_groove_depth - panel_float


@rule
def panel_plane(end_rail_set_back: Mm, groove_wall: Mm) -> Mm:
    """Panels and planks lie in the middle of the rails' thickness."""
    return end_rail_set_back + groove_wall


@rule
def filling_height(clear_height: Mm, panel_hold: Mm, grid: ShopGrid) -> Mm:
    """Panels and planks reach into the grooves of both rails; the grid's leftover is more float."""
    return grid.down(clear_height + 2 * panel_hold)


@rule
def filling_float(clear_height: Mm, filling_height: Mm, panel_groove_depth: Mm) -> Mm:
    """Room for movement above and below, with what the grid left over."""
    return panel_groove_depth - (filling_height - clear_height) / 2


@rule
def filling_bottom(end_rail_top: Mm, filling_float: Mm, panel_groove_depth: Mm) -> Mm:
    """Panels and planks are kept in the middle of their float."""
    return end_rail_top - panel_groove_depth + filling_float


@rule
def stile_count(style: EndStyle, mid_stiles: Count) -> Count:
    """Only a frame-and-panel end has stiles between the posts."""
    return mid_stiles if style == "panel" else 0


@rule
def stile_web(
    style: EndStyle, mid_stile_width: Mm, panel_groove_depth: Mm, stile_count: Count
) -> Mm:
    """Between its two grooves a stile keeps wood, where its own joint is."""
    web = mid_stile_width - 2 * panel_groove_depth
    if stile_count and web < LEAST_WEB:
        raise CannotBuild(
            "mid_stile_width", "The grooves leave the stile too little wood.",
        )  # fmt: skip
    return web


@rule
def panel_opening(
    style: EndStyle, between_posts: Mm, mid_stile_width: Mm, stile_count: Count
) -> Mm:
    """Panels show alike between posts and stiles."""
    opening = (between_posts - stile_count * mid_stile_width) / (stile_count + 1)
    if style == "panel" and opening < LEAST_PANEL:
        raise CannotBuild("mid_stiles", "So many stiles leave no width for the panels.")
    return opening


@rule
def panel_width(panel_opening: Mm, panel_hold: Mm, grid: ShopGrid) -> Mm:
    """A panel reaches into the grooves at both sides; the grid's leftover is more float."""
    return grid.down(panel_opening + 2 * panel_hold)


@rule
def panel_float_built(panel_opening: Mm, panel_width: Mm, panel_groove_depth: Mm) -> Mm:
    """Room for movement at each side of a panel, with what the grid left over."""
    return panel_groove_depth - (panel_width - panel_opening) / 2


@rule
def panel_spans(
    style: EndStyle, post_inner_x: Mm, panel_opening: Mm, mid_stile_width: Mm, stile_count: Count
) -> Spans:
    """Where each panel shows, from stile to stile."""
    starts = [-post_inner_x + i * (panel_opening + mid_stile_width) for i in range(stile_count + 1)]
    return tuple((u, u + panel_opening) for u in starts) if style == "panel" else ()


@rule
def panel_places(panel_spans: Spans, panel_groove_depth: Mm, panel_float_built: Mm) -> Places:
    """Each panel is kept in the middle of its float."""
    return tuple(u - panel_groove_depth + panel_float_built for u, _ in panel_spans)


@rule
def end_stile_spans(panel_spans: Spans) -> Spans:
    """The stiles of the end stand between its panels."""
    return tuple(
        (one[1], other[0]) for one, other in zip(panel_spans, panel_spans[1:], strict=False)
    )


@rule
def end_stile_places(end_stile_spans: Spans) -> Places:
    """Where each stile of the end begins."""
    return tuple(u for u, _ in end_stile_spans)


@rule
def end_stile_length(clear_height: Mm, end_joint_adds: Mm) -> Mm:
    """Stiles are cut as long as the rails stand apart, and both tenons."""
    return clear_height + 2 * end_joint_adds


@rule
def end_stile_bottom(end_rail_top: Mm, end_joint_adds: Mm) -> Mm:
    """A stile's tenon goes down into the end rail."""
    return end_rail_top - end_joint_adds
