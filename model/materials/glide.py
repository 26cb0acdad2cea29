"""What stands under a post: glides and levellers, whose height counts in the floor gap."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache

from model.materials.table import beside, row_of, shipped
from model.units import Mm


@dataclass(frozen=True, kw_only=True)
class Glide:
    """One foot; a leveller can be set between its least and most height, a plain glide cannot."""

    key: str
    name: str
    height_mm: Mm
    height_least_mm: Mm
    height_most_mm: Mm
    diameter_mm: Mm
    hole_diameter_mm: Mm
    hole_depth_mm: Mm
    source: str
    note: str = ""


@lru_cache
def _shipped() -> dict[str, Glide]:
    return shipped("glides.csv", Glide)


def glides(own: tuple[Glide, ...] = ()) -> Mapping[str, Glide]:
    """All glides and levellers by key, the maker's own after those of the trade."""
    return beside(_shipped(), own)


def glide(key: str, own: tuple[Glide, ...] = ()) -> Glide:
    """The glide with that key."""
    return row_of(glides(own), key, "glide")
