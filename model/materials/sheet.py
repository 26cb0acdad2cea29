"""Plywood and fibreboard: what a sheet is called, and what it measures.

A sheet sold as 3/4 in is seldom 19 mm. Grooves and boxes follow `actual_mm`, or better the
maker's own caliper; the nominal is for asking at the counter.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache
from typing import Literal

from model.errors import BadInput
from model.materials.table import beside, row_of, shipped
from model.units import KgPerM3, Mm, Mpa


@dataclass(frozen=True, kw_only=True)
class Sheet:
    """One product in one thickness.

    `along` and `across` are directions of the face grain, which runs along the sheet's length.
    `family` is a key of `sheet_families()`; bending strength `strength_is` the least that a mill
    promises (fifth percentile), or an average.
    `sheet_sizes_mm` are `length x width` as sold. Densities are on the nominal thickness.
    """

    key: str
    product: str
    family: str
    nominal: str
    nominal_mm: Mm
    actual_mm: Mm
    least_mm: Mm
    most_mm: Mm
    density_kg_m3: KgPerM3
    moe_along_mpa: Mpa
    moe_across_mpa: Mpa
    mor_along_mpa: Mpa
    mor_across_mpa: Mpa
    strength_is: Literal["least", "average"]
    sheet_sizes_mm: tuple[str, ...]
    source: str
    source_density: str
    source_strength: str
    note: str = ""

    @property
    def name(self) -> str:
        """As asked for at the counter: `Birch plywood, sanded, 18 mm`."""
        return f"{self.product}, {self.nominal}"

    @property
    def has_grain(self) -> bool:
        """Whether a part looks wrong, or bends more, when it is cut turned."""
        return self.family.endswith("ply")

    @property
    def sizes(self) -> tuple[tuple[Mm, Mm], ...]:
        """Whole sheets as sold: (length, width), the grain along the length."""
        return tuple(_size(text, self.key) for text in self.sheet_sizes_mm)


def _size(text: str, key: str) -> tuple[Mm, Mm]:
    length, _, width = text.partition("x")
    try:
        return float(length), float(width)
    except ValueError:
        raise BadInput(
            "sheet", f"The sheet size “{text}” of {key} is not length x width."
        ) from None


@lru_cache
def _shipped() -> dict[str, Sheet]:
    return shipped("sheets.csv", Sheet)


def sheets(own: tuple[Sheet, ...] = ()) -> Mapping[str, Sheet]:
    """All sheet goods by key, the maker's own after those of the trade."""
    return beside(_shipped(), own)


def sheet(key: str, own: tuple[Sheet, ...] = ()) -> Sheet:
    """The sheet with that key."""
    return row_of(sheets(own), key, "sheet")
