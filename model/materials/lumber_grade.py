"""Grades of lumber bought by the board foot: how much of a board is clear."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache

from model.materials.table import shipped
from model.units import Mm, Share


@dataclass(frozen=True, kw_only=True)
class LumberGrade:
    """One grade; `clear_share` is the least share of a board's face that yields clear cuttings,
    none of them shorter than `least_clear_mm`.
    """

    key: str
    name: str
    clear_share: Share
    least_clear_mm: Mm
    source: str
    source_least_clear_mm: str
    note: str = ""


@lru_cache
def lumber_grades() -> Mapping[str, LumberGrade]:
    """Grades by key, the clearest that a yard sells first."""
    return shipped("lumber_grades.csv", LumberGrade)
