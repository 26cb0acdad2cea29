"""Panels that close a face frame over the year. Read for left and right."""

from __future__ import annotations

from model.materials import Material
from model.materials.movement import Way, growth
from model.rules import rule
from model.units import Mm, Percent, Places


@rule
def widest_closing_panel(
    closed_bays: Places, closing_panel_width: Mm, blind_bays: Places, blind_panel_width: Mm
) -> Mm:
    """The widest panel moves most; 0 where the frame holds none."""
    return max(
        closing_panel_width if closed_bays else 0.0, blind_panel_width if blind_bays else 0.0
    )


@rule
def closing_tuck(
    widest_closing_panel: Mm,
    closing_panel_width: Mm,
    closing_panel_tuck: Mm,
    blind_panel_tuck: Mm,
) -> Mm:
    """How far the widest panel reaches into each stile's groove, as built."""
    is_blind = widest_closing_panel != closing_panel_width
    return blind_panel_tuck if is_blind else closing_panel_tuck


@rule
def closing_swell(
    widest_closing_panel: Mm,
    panel_material: Material,
    width_way: Way,
    bench_moisture: Percent,
    wood_wettest: Percent,
) -> Mm:
    """How much wider the widest panel gets in the dampest weeks; a sheet keeps still.

    Source: Wood Handbook 2010 (FPL-GTR-190), eq 13-2, and 13-3 beyond 6 to 14 %
    """
    return growth(widest_closing_panel, panel_material, width_way, bench_moisture, wood_wettest)


@rule
def closing_shrink(
    widest_closing_panel: Mm,
    panel_material: Material,
    width_way: Way,
    bench_moisture: Percent,
    wood_driest: Percent,
) -> Mm:
    """How much narrower the widest panel gets in the driest weeks; a sheet keeps still.

    Source: Wood Handbook 2010 (FPL-GTR-190), eq 13-2, and 13-3 beyond 6 to 14 %
    """
    return -growth(widest_closing_panel, panel_material, width_way, bench_moisture, wood_driest)


@rule
def closing_room_damp(panel_groove_depth: Mm, closing_tuck: Mm, closing_swell: Mm) -> Mm:
    """Room that is left at each side of the widest panel when it is widest."""
    return panel_groove_depth - closing_tuck - closing_swell / 2


@rule
def closing_hold_dry(closing_tuck: Mm, closing_shrink: Mm) -> Mm:
    """How deep the widest panel still sits in its stiles when it is narrowest."""
    return closing_tuck - closing_shrink / 2
