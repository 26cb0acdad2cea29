"""Beds that the checks on fasteners are asked of, each built once."""

from __future__ import annotations

from functools import cache
from typing import Any

from model.bed import Bed, Design, solve
from model.checks.record import Finding
from model.structure.record import Carried


@cache
def bed(**choices: Any) -> Bed:
    """The bed of some choices; `left__side` stands for `left.side`."""
    return solve(Design().with_choices({k.replace("__", "."): v for k, v in choices.items()}))


def carried(of: Bed) -> Carried:
    """What its frame bears."""
    assert isinstance(of.strength, Carried)
    return of.strength


def said(of: Bed, name: str) -> Finding:
    """What one check says of it."""
    (finding,) = [each for each in of.findings if each.id == name]
    return finding


def silent(of: Bed, name: str) -> bool:
    """Whether a check says nothing of it."""
    return not [each for each in of.findings if each.id.startswith(name)]
