"""Beds of the demos without their stock and prices, and cutting plans of them made by hand."""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from pathlib import Path
from typing import Any

from model.bed import Bed, solve
from model.cost.costing import Taken, taken
from model.designs import read
from model.shop.plans import CutPlan
from model.stock.prices import NO_PRICES
from model.stock.progress import NOT_BEGUN
from model.stock.rows import NO_STOCK
from tests.model.cost.plain_plans import plain_plans

FOLDER = Path(__file__).resolve().parents[3] / "resources" / "demos"
DEMOS = ("guest_room_double", "loft_single", "painted_storage_queen", "split_king_foot_drawers")


@cache
def _solved(name: str, changes: tuple[tuple[str, Any], ...]) -> Bed:
    demo = read(FOLDER / f"{name}.bedwright")
    design = replace(demo, prices=NO_PRICES, stock=NO_STOCK, progress=NOT_BEGUN)
    design = design.with_choices({"boards_from": "board foot"})
    return solve(design.with_choices(dict(changes)))


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
