"""Drawer fronts and bottoms over the year. Read for left, right and foot."""

from __future__ import annotations

from model.brief.drawers import FrontStyle
from model.materials import Material
from model.materials.movement import Way, growth
from model.rules import rule
from model.units import Mm, Percent, Places


@rule
def outside_moves(front_style: FrontStyle, front_material: Material, frame_wood: Material) -> bool:
    """A front's outside moves where the slab, or the frame round its panel, is of solid wood."""
    return (front_material if front_style == "slab" else frame_wood).kind == "solid"


@rule
def front_swell_up(
    front_height: Mm,
    front_style: FrontStyle,
    front_material: Material,
    width_way: Way,
    bench_moisture: Percent,
    wood_wettest: Percent,
) -> Mm:
    """How much higher a front gets in the dampest weeks; stiles keep a framed front's height.

    Source: Wood Handbook 2010 (FPL-GTR-190), eq 13-2, and 13-3 beyond 6 to 14 %
    """
    higher = growth(front_height, front_material, width_way, bench_moisture, wood_wettest)
    return higher if front_style == "slab" else 0.0


@rule
def front_swell_across(
    front_stile_width: Mm,
    front_style: FrontStyle,
    frame_wood: Material,
    width_way: Way,
    bench_moisture: Percent,
    wood_wettest: Percent,
) -> Mm:
    """How much wider a front gets in the dampest weeks: by its stiles; along the grain it is still.

    Source: Wood Handbook 2010 (FPL-GTR-190), eq 13-2, and 13-3 beyond 6 to 14 %
    """
    wider = growth(2 * front_stile_width, frame_wood, width_way, bench_moisture, wood_wettest)
    return wider if front_style != "slab" else 0.0


@rule
def front_gap_damp(
    front_lap: Mm, front_lap_up: Mm, front_swell_up: Mm, front_swell_across: Mm
) -> Mm:
    """The narrowest gap round an inset front when it is widest, kept in the middle of it."""
    return min(-front_lap_up - front_swell_up / 2, -front_lap - front_swell_across / 2)


@rule
def front_screw_slip(
    front_screw_heights: Places,
    front_style: FrontStyle,
    front_material: Material,
    width_way: Way,
    bench_moisture: Percent,
    wood_driest: Percent,
    wood_wettest: Percent,
) -> Mm:
    """How far a slab front moves past each of its screws, from where it was fixed.

    Source: Wood Handbook 2010 (FPL-GTR-190), eq 13-2, and 13-3 beyond 6 to 14 %
    """
    if front_style != "slab" or not front_screw_heights:
        return 0.0
    apart = max(front_screw_heights) - min(front_screw_heights)
    wet = growth(apart, front_material, width_way, bench_moisture, wood_wettest)
    dry = growth(apart, front_material, width_way, bench_moisture, wood_driest)
    return max(wet, -dry) / 2


@rule
def front_panel_swell(
    front_panel_height: Mm,
    front_panel_material: Material,
    width_way: Way,
    bench_moisture: Percent,
    wood_wettest: Percent,
) -> Mm:
    """How much higher the panel of a framed front gets in the dampest weeks; a sheet keeps still.

    Source: Wood Handbook 2010 (FPL-GTR-190), eq 13-2, and 13-3 beyond 6 to 14 %
    """
    return growth(front_panel_height, front_panel_material, width_way, bench_moisture, wood_wettest)


@rule
def front_panel_shrink(
    front_panel_height: Mm,
    front_panel_material: Material,
    width_way: Way,
    bench_moisture: Percent,
    wood_driest: Percent,
) -> Mm:
    """How much lower the panel of a framed front gets in the driest weeks; a sheet keeps still.

    Source: Wood Handbook 2010 (FPL-GTR-190), eq 13-2, and 13-3 beyond 6 to 14 %
    """
    return -growth(front_panel_height, front_panel_material, width_way, bench_moisture, wood_driest)


@rule
def front_panel_room_damp(front_panel_float_up: Mm, front_panel_swell: Mm) -> Mm:
    """Room that is left above and below the panel of a framed front when it is widest."""
    return front_panel_float_up - front_panel_swell / 2


@rule
def front_panel_hold_dry(front_panel_tuck_up: Mm, front_panel_shrink: Mm) -> Mm:
    """How deep the panel of a framed front still sits in its rails when it is narrowest."""
    return front_panel_tuck_up - front_panel_shrink / 2


@rule
def bottom_swell(
    bottom_along: Mm,
    bottom_sheet: Material,
    width_way: Way,
    bench_moisture: Percent,
    wood_wettest: Percent,
) -> Mm:
    """How much deeper a box bottom of solid wood gets in the dampest weeks; a sheet keeps still.

    Its grain runs from side to side, so that it moves from front to back.
    Source: Wood Handbook 2010 (FPL-GTR-190), eq 13-2, and 13-3 beyond 6 to 14 %
    """
    return growth(bottom_along, bottom_sheet, width_way, bench_moisture, wood_wettest)
