"""How dry and how damp the wood gets in the house, against the day it was cut."""

from __future__ import annotations

from model.brief.climate import BoardCut
from model.materials.moisture import equilibrium_moisture
from model.materials.movement import Way
from model.rules import rule
from model.units import Celsius, Percent


@rule
def moisture_in_dry_air(driest_air: Percent, driest_air_warmth: Celsius) -> Percent:
    """Wood left in the driest air of the year comes to this moisture, within a tenth.

    Source: Wood Handbook 2021 (FPL-GTR-282), eq 4-5
    """
    return round(equilibrium_moisture(driest_air, driest_air_warmth), 1)


@rule
def moisture_in_damp_air(dampest_air: Percent, dampest_air_warmth: Celsius) -> Percent:
    """Wood left in the dampest air of the year comes to this moisture, within a tenth.

    Source: Wood Handbook 2021 (FPL-GTR-282), eq 4-5
    """
    return round(equilibrium_moisture(dampest_air, dampest_air_warmth), 1)


@rule
def wood_driest(
    moisture_in_dry_air: Percent, moisture_in_damp_air: Percent, bench_moisture: Percent
) -> Percent:
    """The driest that the wood gets: in the house, or on the bench if it is drier there."""
    return min(moisture_in_dry_air, moisture_in_damp_air, bench_moisture)


@rule
def wood_wettest(
    moisture_in_dry_air: Percent, moisture_in_damp_air: Percent, bench_moisture: Percent
) -> Percent:
    """The wettest that the wood gets: in the house, or on the bench if it is wetter there."""
    return max(moisture_in_dry_air, moisture_in_damp_air, bench_moisture)


@rule
def width_way(board_cut: BoardCut) -> Way:
    """The width of a flat-sawn board runs along the year rings, that of a quarter-sawn across."""
    return "tangential" if board_cut == "flat-sawn" else "radial"


@rule
def thickness_way(board_cut: BoardCut) -> Way:
    """The thickness of a flat-sawn board runs across the year rings, the other way round for a
    quarter-sawn one."""
    return "radial" if board_cut == "flat-sawn" else "tangential"
