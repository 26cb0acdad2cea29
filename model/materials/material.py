"""Solid wood and sheet goods in one view, for whatever asks what a part weighs and how it moves."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache
from types import MappingProxyType
from typing import Literal

from model.materials.own import NONE, OwnRows
from model.materials.sheet import Sheet, sheets
from model.materials.species import Species, species
from model.materials.table import row_of
from model.units import KgPerM3, Mm


@dataclass(frozen=True, kw_only=True)
class Material:
    """What a part is made of. A sheet has the thickness it is sold as, and the one it mostly has;
    `wood` is the row of a solid wood's species, `flat` that of a sheet.
    """

    key: str
    name: str
    kind: Literal["solid", "sheet"]
    density_kg_m3: KgPerM3
    source: str
    nominal_mm: Mm | None = None
    actual_mm: Mm | None = None
    wood: Species | None = None
    flat: Sheet | None = None


@lru_cache(maxsize=64)
def materials(own: OwnRows = NONE) -> Mapping[str, Material]:
    """All woods, then all sheet goods, by key; the maker's own after those of the trade."""
    solid = (_of_wood(row) for row in species(own.species).values())
    flat = (_of_sheet(row) for row in sheets(own.sheets).values())
    return MappingProxyType({row.key: row for row in (*solid, *flat)})


def material(key: str, own: OwnRows = NONE) -> Material:
    """The wood or sheet with that key."""
    return row_of(materials(own), key, "material")


def _of_wood(row: Species) -> Material:
    return Material(
        key=row.key,
        name=row.name,
        kind="solid",
        density_kg_m3=row.density_kg_m3,
        source=row.source_density_kg_m3,
        wood=row,
    )


def _of_sheet(row: Sheet) -> Material:
    return Material(
        key=row.key,
        name=row.name,
        kind="sheet",
        density_kg_m3=row.density_kg_m3,
        source=row.source_density,
        nominal_mm=row.nominal_mm,
        actual_mm=row.actual_mm,
        flat=row,
    )
