"""What sheets of one family have in common: shear between their layers, bearing on their face,
safety.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache
from typing import Literal

from model.materials.table import row_of, shipped
from model.units import Mpa


@dataclass(frozen=True, kw_only=True)
class SheetFamily:
    """One family. Planar shear, fifth percentile, and its modulus, mean, are those of a sheet that
    is bent flat, in the weaker direction; `twist_modulus_mpa`, mean, is that of one twisted as a
    plate, empty for a sheet that is as stiff in all directions; `face_bearing_mpa` is allowed as it
    stands; `safety` is the partial factor of the material.
    """

    key: str
    name: str
    product: Literal["plywood", "fibreboard"]
    planar_shear_mpa: Mpa
    shear_modulus_mpa: Mpa
    twist_modulus_mpa: Mpa | None
    face_bearing_mpa: Mpa
    safety: float
    source: str
    source_planar_shear: str
    source_face_bearing: str
    source_safety: str
    source_twist_modulus: str


@lru_cache
def sheet_families() -> Mapping[str, SheetFamily]:
    """Families by key: `birch_ply`, `mdf` and their like."""
    return shipped("sheet_families.csv", SheetFamily)


def sheet_family(key: str) -> SheetFamily:
    """The family with that key."""
    return row_of(sheet_families(), key, "sheet family")
