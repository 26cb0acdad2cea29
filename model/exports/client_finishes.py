"""The finishes that a client can look at: the wood as it is, and paints of our own names."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache

from model.bed import Bed
from model.materials.colour import wood_colour
from model.materials.table import shipped

_WOOD = {"clear": "Clear wood", "oil": "Oiled wood", "none": "Bare wood", "painted": "Clear wood"}


@dataclass(frozen=True, kw_only=True)
class Paint:
    """A paint by its name; `colour` as six hexadecimal digits."""

    key: str
    name: str
    colour: str


@dataclass(frozen=True, kw_only=True)
class Finish:
    """One to be chosen. `colour` (`#rrggbb`) is None where the wood shows; `swatch` shows it."""

    name: str
    colour: str | None
    swatch: str


@dataclass(frozen=True, kw_only=True)
class Finishes:
    """All that can be chosen, and which of them (index) is worn at first."""

    all: tuple[Finish, ...]
    first: int


def finishes(bed: Bed) -> Finishes:
    """Wood and all paints, beginning with what the maker chose."""
    wood = Finish(
        name=_WOOD[bed["finish"]], colour=None, swatch=f"#{wood_colour(bed['frame_wood'].key)}"
    )
    painted = tuple(
        Finish(name=paint.name, colour=f"#{paint.colour}", swatch=f"#{paint.colour}")
        for paint in paints().values()
    )
    return Finishes(all=(wood, *painted), first=1 if bed["finish"] == "painted" else 0)


@lru_cache
def paints() -> Mapping[str, Paint]:
    """Paints by key, light ones first."""
    return shipped("client/paints.csv", Paint)
