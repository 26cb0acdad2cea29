"""From which height on a standard calls a bed a bunk or high bed."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache
from typing import Literal

from model.materials.table import shipped
from model.units import Mm


@dataclass(frozen=True, kw_only=True)
class HighBed:
    """One rule: it begins at `from_mm`, floor to the deck's underside or to its top.

    `is_law` tells regulations from standards that nobody must follow. The highest come first.
    """

    key: str
    measured_to: Literal["underside", "top"]
    from_mm: Mm
    standard: str
    is_law: Literal["yes", "no"]
    source: str
    note: str = ""


@lru_cache
def high_beds() -> Mapping[str, HighBed]:
    """All rules by key, the highest first."""
    return shipped("high_beds.csv", HighBed)
