"""Solid woods: how heavy, how stiff, how strong, and how much they move across the grain.

Strengths are averages of small clear pieces, not allowable stresses: a check divides them first.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache
from typing import Literal

from model.materials.table import beside, row_of, shipped
from model.units import KgPerM3, Mpa


@dataclass(frozen=True, kw_only=True)
class Species:
    """One wood at 12 % moisture.

    `specific_gravity` is oven-dry mass on volume at 12 %. `movement_...` is the change of size per
    1 % of moisture, as a share of the size, from 6 to 14 %; shrinkage is green to oven-dry, % of
    the green size. Each figure has its own `source_...`.
    """

    key: str
    name: str
    botanical_name: str
    kind: Literal["hardwood", "softwood"]
    density_kg_m3: KgPerM3
    specific_gravity: float
    moe_mpa: Mpa
    mor_mpa: Mpa
    compression_across_mpa: float | None
    shear_mpa: float | None
    shrinkage_radial_pct: float
    shrinkage_tangential_pct: float
    shrinkage_volume_pct: float
    movement_radial: float
    movement_tangential: float
    fibre_saturation_pct: float
    source_density_kg_m3: str
    source_specific_gravity: str
    source_moe_mpa: str
    source_mor_mpa: str
    source_compression_across_mpa: str
    source_shear_mpa: str
    source_shrinkage_radial_pct: str
    source_shrinkage_tangential_pct: str
    source_shrinkage_volume_pct: str
    source_movement_radial: str
    source_movement_tangential: str
    source_fibre_saturation_pct: str
    source: str
    note: str = ""

    def source_of(self, figure: str) -> str:
        """Where a figure comes from; `figure` is the name of its field."""
        return str(getattr(self, f"source_{figure}"))


@lru_cache
def _shipped() -> dict[str, Species]:
    return shipped("species.csv", Species)


def species(own: tuple[Species, ...] = ()) -> Mapping[str, Species]:
    """All woods by key, the maker's own after those of the handbook."""
    return beside(_shipped(), own)


def wood(key: str, own: tuple[Species, ...] = ()) -> Species:
    """The wood with that key."""
    return row_of(species(own), key, "wood")
