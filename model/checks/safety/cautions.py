"""The usual cautions, which go with every plan."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache
from typing import Literal

from model.materials import Material
from model.materials.table import shipped
from model.parts.pieces import Pieces


@dataclass(frozen=True, kw_only=True)
class Caution:
    """One caution: a heading and a sentence or two, in the order in which they are read."""

    key: str
    shown_for: Literal["every bed", "drawers", "sheets"]
    title: str
    text: str
    source: str


@lru_cache
def all_cautions() -> tuple[Caution, ...]:
    """Every caution; the first says whose word counts."""
    return tuple(shipped("cautions.csv", Caution).values())


def cautions(pieces: Pieces, materials: Mapping[str, Material]) -> tuple[Caution, ...]:
    """The cautions for a bed: those on drawers and sheet goods where it has some."""
    has = {"every bed"}
    if len(pieces.groups) > 1:
        has.add("drawers")
    if any(materials[p.material].kind == "sheet" for p in pieces.parts if p.material in materials):
        has.add("sheets")
    return tuple(each for each in all_cautions() if each.shown_for in has)
