"""Beds of solid wood to follow over the year, and what the checks say of them."""

from __future__ import annotations

from functools import cache
from typing import Any

from model.bed import Bed, Design, solve
from model.checks.record import Finding

DAMP = {"driest_air": 20.0, "dampest_air": 75.0}  # a house by the sea, heated in winter


@cache
def _built(choices: tuple[tuple[str, Any], ...]) -> Bed:
    return solve(Design().with_choices(dict(choices)))


def built(**choices: Any) -> Bed:
    """The usual bed with some choices; `__` stands for the dot in a full name."""
    named = {name.replace("__", "."): value for name, value in choices.items()}
    return _built(tuple(sorted(named.items())))


def movement(bed: Bed) -> dict[str, Finding]:
    """What is said of movement, by id."""
    return {f.id: f for f in bed.findings if f.group == "movement"}
