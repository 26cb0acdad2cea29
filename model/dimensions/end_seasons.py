"""Panels, planks and slats of an end over the year. Read for head and foot.

Each is taken to be fixed in its middle, and so moves to both sides by half.
"""

from __future__ import annotations

from model.brief.ends import EndStyle
from model.materials import Material
from model.materials.movement import Way, growth
from model.rules import rule
from model.units import Count, Mm, Percent


@rule
def panel_moving_width(panel_width: Mm, stile_web: Mm, stile_count: Count) -> Mm:
    """What moves between two groove bottoms: the panel, and half of the stile at either side."""
    return panel_width + (stile_web if stile_count else 0.0)


@rule
def panel_swell(
    panel_moving_width: Mm,
    panel_material: Material,
    width_way: Way,
    bench_moisture: Percent,
    wood_wettest: Percent,
) -> Mm:
    """How much wider a panel gets from the bench to the dampest weeks; a sheet keeps still.

    Source: Wood Handbook 2010 (FPL-GTR-190), eq 13-2, and 13-3 beyond 6 to 14 %
    """
    return growth(panel_moving_width, panel_material, width_way, bench_moisture, wood_wettest)


@rule
def panel_shrink(
    panel_moving_width: Mm,
    panel_material: Material,
    width_way: Way,
    bench_moisture: Percent,
    wood_driest: Percent,
) -> Mm:
    """How much narrower a panel gets from the bench to the driest weeks; a sheet keeps still.

    Source: Wood Handbook 2010 (FPL-GTR-190), eq 13-2, and 13-3 beyond 6 to 14 %
    """
    return -growth(panel_moving_width, panel_material, width_way, bench_moisture, wood_driest)


@rule
def panel_room_damp(panel_float_built: Mm, panel_swell: Mm) -> Mm:
    """Room that is left at each side of a panel when it is widest."""
    return panel_float_built - panel_swell / 2


@rule
def panel_hold_dry(panel_groove_depth: Mm, panel_float_built: Mm, panel_shrink: Mm) -> Mm:
    """How deep a panel still sits in its grooves when it is narrowest."""
    return panel_groove_depth - panel_float_built - panel_shrink / 2


@rule
def plank_swell(
    plank_cover: Mm,
    edge_plank_cover: Mm,
    frame_wood: Material,
    width_way: Way,
    bench_moisture: Percent,
    wood_wettest: Percent,
) -> Mm:
    """How much wider the widest plank gets from the bench to the dampest weeks.

    Source: Wood Handbook 2010 (FPL-GTR-190), eq 13-2, and 13-3 beyond 6 to 14 %
    """
    wide = max(plank_cover, edge_plank_cover)
    return growth(wide, frame_wood, width_way, bench_moisture, wood_wettest)


@rule
def plank_shrink(
    plank_cover: Mm,
    edge_plank_cover: Mm,
    frame_wood: Material,
    width_way: Way,
    bench_moisture: Percent,
    wood_driest: Percent,
) -> Mm:
    """How much narrower the widest plank gets from the bench to the driest weeks.

    Source: Wood Handbook 2010 (FPL-GTR-190), eq 13-2, and 13-3 beyond 6 to 14 %
    """
    wide = max(plank_cover, edge_plank_cover)
    return -growth(wide, frame_wood, width_way, bench_moisture, wood_driest)


@rule
def plank_gap_damp(plank_gap: Mm, plank_swell: Mm) -> Mm:
    """Room that is left between two planks when they are widest."""
    return plank_gap - plank_swell


@rule
def plank_tongue_dry(plank_tongue: Mm, plank_gap: Mm, plank_shrink: Mm) -> Mm:
    """How deep a plank's tongue still sits in its groove when the planks are narrowest."""
    return plank_tongue - plank_gap - plank_shrink


@rule
def plank_room_damp(plank_float_built: Mm, plank_swell: Mm) -> Mm:
    """Room that is left for the first and last plank in its post's groove when they are widest."""
    return plank_float_built - plank_swell / 2


@rule
def plank_hold_dry(panel_groove_depth: Mm, plank_float_built: Mm, plank_shrink: Mm) -> Mm:
    """How deep the first and last plank still sit in their posts when they are narrowest."""
    return panel_groove_depth - plank_float_built - plank_shrink / 2


@rule
def spindle_gap_damp(
    style: EndStyle,
    spindle_gap: Mm,
    spindle_width: Mm,
    frame_wood: Material,
    width_way: Way,
    bench_moisture: Percent,
    wood_wettest: Percent,
) -> Mm:
    """Between two open slats when they are widest.

    Source: Wood Handbook 2010 (FPL-GTR-190), eq 13-2, and 13-3 beyond 6 to 14 %
    """
    wider = growth(spindle_width, frame_wood, width_way, bench_moisture, wood_wettest)
    return spindle_gap - wider if style == "slats" else 0.0
