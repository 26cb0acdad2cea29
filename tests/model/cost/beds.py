"""Beds of the demos, solved once, and their cutting plans made by hand."""

from __future__ import annotations

from functools import cache
from pathlib import Path
from typing import Any

from model.bed import Bed, solve
from model.cost.costing import Taken, taken
from model.designs import read
from model.shop.plans import CutPlan
from tests.model.cost.plain_plans import plain_plans

FOLDER = Path(__file__).resolve().parents[3] / "resources" / "demos"
DEMOS = ("guest_room_double", "loft_single", "painted_storage_queen", "split_king_foot_drawers")


@cache
def _solved(name: str, changes: tuple[tuple[str, Any], ...]) -> Bed:
    return solve(read(FOLDER / f"{name}.bedwright").with_choices(dict(changes)))


def bed_of(name: str, **changes: Any) -> Bed:
    """A demo with some choices changed; a dot in a name is written `__`."""
    named = {key.replace("__", "."): value for key, value in changes.items()}
    return _solved(name, tuple(sorted(named.items())))


@cache
def plans_of(bed_name: str) -> tuple[CutPlan, ...]:
    return plain_plans(bed_of(bed_name))


@cache
def taken_of(name: str) -> Taken:
    """What a demo takes."""
    return taken(bed_of(name), plans_of(name))
