"""What a hand takes hold of: pulls, knobs and cut-outs."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache
from typing import Literal

from model.materials.table import beside, row_of, shipped
from model.units import Count, Mm

PullKind = Literal["bar", "knob", "cup", "cut-out", "none"]


@dataclass(frozen=True, kw_only=True)
class Pull:
    """One pull: length across the front, height up it, `projection_mm` out of it.

    `hole_spacing_mm` is between the centres of its holes; a knob has one hole, a cut-out none.
    """

    key: str
    kind: PullKind
    name: str
    projection_mm: Mm
    length_mm: Mm
    height_mm: Mm
    hole_spacing_mm: Mm
    holes: Count
    least_thread_mm: Mm
    source: str
    note: str = ""


@lru_cache
def _shipped() -> dict[str, Pull]:
    return shipped("pulls.csv", Pull)


def pulls(own: tuple[Pull, ...] = ()) -> Mapping[str, Pull]:
    """All pulls by key, the maker's own after those of the trade."""
    return beside(_shipped(), own)


def pull(key: str, own: tuple[Pull, ...] = ()) -> Pull:
    """The pull with that key."""
    return row_of(pulls(own), key, "pull")
