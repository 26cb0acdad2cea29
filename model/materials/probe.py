"""Published gaps that hold a head, neck, limb or finger, and what stands out and catches."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache
from typing import Literal

from model.materials.table import shipped
from model.units import Mm

ProbeAt = Literal["mattress", "opening", "slats", "hole", "wall", "moving", "proud", "overhang"]


@dataclass(frozen=True, kw_only=True)
class Probe:
    """One rule: a gap between `low_mm` and `high_mm` (no upper end where empty) is forbidden.

    `at` names the kinds of gap that it looks at, `counts_for` the sleepers for whom this program
    takes it as a limit, `binds` what it binds by its own words. Rows stand worst first.
    """

    key: str
    holds: str
    low_mm: Mm
    high_mm: Mm | None
    at: tuple[str, ...]
    counts_for: tuple[str, ...]
    standard: str
    binds: str
    source: str
    note: str = ""

    @property
    def top(self) -> Mm:
        """The upper end of the band; inf where any wider gap is forbidden too."""
        return math.inf if self.high_mm is None else self.high_mm

    def catches(self, gap: Mm) -> bool:
        """Whether the gap is one that the rule forbids."""
        return self.low_mm < gap < self.top


@lru_cache
def probes() -> Mapping[str, Probe]:
    """All rules by key, worst first."""
    return shipped("probes.csv", Probe)


@lru_cache
def probes_at(at: ProbeAt) -> tuple[Probe, ...]:
    """The rules for one kind of gap, worst first."""
    return tuple(probe for probe in probes().values() if at in probe.at)
