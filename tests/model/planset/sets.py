"""Plan sets that many tests look at: beds of every kind, one without and one with twelve drawers.

Each is drawn once. The storage queen is not among them: that with twelve drawers is the same bed
with more of them.
"""

from __future__ import annotations

from functools import cache

from model.bed import Bed
from model.planset.book import PlanSet
from model.planset.page import Page
from tests.model.building.beds import DEMOS, QUEEN, demo, turned

METRIC = {
    "paper": "A4",
    "shown_unit": "mm",
    "sizes_in": "mm and inches",
    "views_stand": "first angle",
}
BEDS = (*(name for name in DEMOS if name != QUEEN), "no drawers", "twelve drawers")


@cache
def bed_of(name: str) -> Bed:
    if name == "no drawers":
        return turned(QUEEN, left__drawers=0, right__drawers=0, beam="legs", **METRIC)
    if name == "twelve drawers":
        return turned(QUEEN, left__drawers=6, right__drawers=6, pull="none")
    return demo(name)


@cache
def plan_of(name: str) -> PlanSet:
    return PlanSet(bed_of(name))


@cache
def pages_of(name: str) -> tuple[Page, ...]:
    return tuple(plan_of(name).pages())
