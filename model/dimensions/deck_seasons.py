"""Slats and deck panels over the year."""

from __future__ import annotations

from model.materials import Material
from model.materials.movement import Way, growth
from model.rules import rule
from model.units import Mm, Percent


@rule
def slat_swell(
    slat_width: Mm,
    slat_wood: Material,
    width_way: Way,
    bench_moisture: Percent,
    wood_wettest: Percent,
) -> Mm:
    """How much wider a slat gets from the bench to the dampest weeks.

    Source: Wood Handbook 2010 (FPL-GTR-190), eq 13-2, and 13-3 beyond 6 to 14 %
    """
    return growth(slat_width, slat_wood, width_way, bench_moisture, wood_wettest)


@rule
def slat_gap_damp(slat_spacer: Mm, slat_swell: Mm) -> Mm:
    """Between two slats when they are widest, each fixed in its middle."""
    return slat_spacer - slat_swell


@rule
def deck_gap_damp(
    deck_joint_gap: Mm,
    deck_panel_length: Mm,
    deck_sheet: Material,
    width_way: Way,
    bench_moisture: Percent,
    wood_wettest: Percent,
) -> Mm:
    """Between two deck panels of solid wood in the dampest weeks; sheets keep still.

    Source: Wood Handbook 2010 (FPL-GTR-190), eq 13-2, and 13-3 beyond 6 to 14 %
    """
    return deck_joint_gap - growth(
        deck_panel_length, deck_sheet, width_way, bench_moisture, wood_wettest
    )
