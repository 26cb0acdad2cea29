"""Boards as a yard sells them: rough thickness classes, and what is left of them when dressed."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache
from typing import Literal

from model.errors import CannotBuild
from model.materials.table import row_of, shipped
from model.units import Mm

Family = Literal["hardwood", "softwood"]
State = Literal[
    "rough",
    "surfaced two sides, least",
    "surfaced four sides, retail",
    "dressed dry",
    "dressed green",
]


@dataclass(frozen=True, kw_only=True)
class LumberSize:
    """What a nominal thickness or width of a board really measures in one state.

    `nominal` is the yard's word: `8/4` for hardwood, inches (`2`) for softwood.
    """

    key: str
    family: Family
    dimension: Literal["thickness", "width"]
    nominal: str
    state: State
    actual_mm: Mm
    source: str
    note: str = ""


@lru_cache
def lumber() -> Mapping[str, LumberSize]:
    """All board sizes by key."""
    return shipped("lumber.csv", LumberSize)


def lumber_size(key: str) -> LumberSize:
    """The board size with that key."""
    return row_of(lumber(), key, "lumber")


def sizes(family: Family, dimension: str, state: State) -> tuple[LumberSize, ...]:
    """The sizes of one kind, thinnest or narrowest first."""
    rows = lumber().values()
    chosen = (r for r in rows if (r.family, r.dimension, r.state) == (family, dimension, state))
    return tuple(sorted(chosen, key=lambda row: row.actual_mm))


def rough_stock(finished: Mm) -> LumberSize:
    """The thinnest rough hardwood that mills to a finished thickness.

    A class serves when its least surfaced thickness still holds the finished one.
    Source: common practice, no source.
    """
    surfaced = sizes("hardwood", "thickness", "surfaced two sides, least")
    for size in surfaced:
        if size.actual_mm >= finished - 1e-6:
            return lumber_size(size.key.removesuffix("_s2s") + "_rough")
    raise CannotBuild(
        "thickness",
        "No rough board is thick enough to mill to this; glue it up from layers.",
    )
