"""Panels that close a face frame: all bays of a closed side, and the bay beside drawers from the
foot.
"""

from model.brief.sides import SideKind
from model.dimensions.joinery import LEAST_WALL
from model.errors import CannotBuild
from model.rules import rule
from model.units import Mm, Places, ShopGrid, snapped


@rule
def closed_bays(side: SideKind, opening_places: Places) -> Places:
    """On a closed side every bay holds a panel."""
    return opening_places if side == "closed frame" else ()


@rule
def blind_bay_from(run_from: Mm, end_stile_least: Mm) -> Mm:
    """The blind bay begins behind its own end stile, at the foot post."""
    return run_from + end_stile_least


@rule
def blind_bays(is_framed: bool, blind_bay: Mm, blind_bay_from: Mm) -> Places:
    """Beside drawers reached from the foot the frame is closed by a panel."""
    if is_framed and blind_bay and blind_bay < 40:
        raise CannotBuild(
            "end_stile_least", "No room is left for the closed bay beside the foot drawers."
        )
    return (blind_bay_from,) if is_framed and blind_bay else ()


@rule
def closing_panel_height(
    opening_height: Mm, panel_groove_depth: Mm, panel_float: Mm, grid: ShopGrid
) -> Mm:
    """The panel reaches into the rails' grooves, but for its float."""
    return grid.down(opening_height + 2 * (panel_groove_depth - panel_float))


@rule
def closing_panel_width(
    opening_width: Mm, panel_groove_depth: Mm, panel_float: Mm, grid: ShopGrid
) -> Mm:
    """The panel reaches into the stiles' grooves, but for its float."""
    return grid.down(opening_width + 2 * (panel_groove_depth - panel_float))


@rule
def blind_panel_width(blind_bay: Mm, panel_groove_depth: Mm, panel_float: Mm, grid: ShopGrid) -> Mm:
    """The panel beside the foot drawers reaches into its stiles' grooves, but for its float."""
    return grid.down(blind_bay + 2 * (panel_groove_depth - panel_float))


@rule
def closing_panel_bottom(opening_bottom: Mm, opening_height: Mm, closing_panel_height: Mm) -> Mm:
    """The panel is kept centred in its grooves."""
    return opening_bottom - (closing_panel_height - opening_height) / 2


@rule
def closing_panel_tuck(closing_panel_width: Mm, opening_width: Mm) -> Mm:
    """How far a panel reaches into each stile."""
    return (closing_panel_width - opening_width) / 2


@rule
def blind_panel_tuck(blind_panel_width: Mm, blind_bay: Mm) -> Mm:
    """How far the panel beside the foot drawers reaches into each stile."""
    return (blind_panel_width - blind_bay) / 2


@rule
def closing_float(
    panel_groove_depth: Mm, closing_panel_height: Mm, opening_height: Mm, grid: ShopGrid
) -> Mm:
    """Room left at a panel's edge, the grid's leftover included."""
    return panel_groove_depth - (closing_panel_height - opening_height) / 2 + grid.step / 2


@rule
def closing_panel_plane(
    front_plane: Mm,
    frame_thickness: Mm,
    panel_thickness: Mm,
    closed_bays: Places,
    blind_bays: Places,
) -> Mm:
    """The panel lies mid-thickness in the frame, a wall of wood on both sides of its groove."""
    wall = snapped((frame_thickness - panel_thickness) / 2)
    if (closed_bays or blind_bays) and wall < LEAST_WALL:
        raise CannotBuild(
            "panel_stock",
            f"The panel's groove would leave walls of {wall:.1f} mm in the frame; 6 mm is the "
            f"least.",
        )
    return front_plane + wall
