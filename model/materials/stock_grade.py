"""How sound the boards are that a maker picks: what knots and slanting grain leave of clear wood's
strength.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache

from model.materials.table import row_of, shipped
from model.units import Share


@dataclass(frozen=True, kw_only=True)
class StockGrade:
    """One way of picking boards; each ratio is the share of clear, straight wood's figure."""

    key: str
    name: str
    bending: Share
    shear: Share
    compression_along: Share
    compression_across: Share
    stiffness: Share
    source: str
    note: str = ""


@lru_cache
def stock_grades() -> Mapping[str, StockGrade]:
    """Grades by key, the soundest first."""
    return shipped("stock_grades.csv", StockGrade)


def stock_grade(key: str) -> StockGrade:
    """The grade with that key."""
    return row_of(stock_grades(), key, "stock grade")
