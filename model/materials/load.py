"""Loads that standards test beds with, each with its source."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache

from model.materials.table import row_of, shipped
from model.mechanics.duration import LoadTime
from model.units import Kg, Mm, Newton


@dataclass(frozen=True, kw_only=True)
class PublishedLoad:
    """One load: a force, or a mass that falls, on a pad `across_mm` wide; what it has not is zero.

    `time` is how long it lies, for the strength of wood.
    """

    key: str
    name: str
    force_n: Newton
    mass_kg: Kg
    drop_mm: Mm
    across_mm: Mm
    time: LoadTime
    source: str
    note: str = ""


@lru_cache
def published_loads() -> Mapping[str, PublishedLoad]:
    """All loads by key."""
    return shipped("loads.csv", PublishedLoad)


def published_load(key: str) -> PublishedLoad:
    """The load with that key."""
    return row_of(published_loads(), key, "load")
