"""Mattress sizes as they are sold, and how far a real one may differ from its label.

No chart replaces a tape: a size here is a label, and the measured mattress beats it.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache

from model.materials.table import beside, row_of, shipped
from model.units import Count, Mm


@dataclass(frozen=True, kw_only=True)
class Mattress:
    """One size on sale: width across the bed, length along it, each of one piece.

    `tolerance_mm`: a mattress of this label may be that much smaller or larger.
    """

    key: str
    region: str
    name: str
    pieces: Count
    width_mm: Mm
    length_mm: Mm
    tolerance_mm: Mm
    tolerance_source: str
    source: str
    note: str = ""

    @property
    def whole_width_mm(self) -> Mm:
        """What the pieces measure side by side: two halves rarely equal the whole of that name."""
        return self.pieces * self.width_mm

    @property
    def label(self) -> str:
        """Name and region, because a king is another size in every country."""
        return f"{self.name}, {self.region}"


@lru_cache
def _shipped() -> dict[str, Mattress]:
    return shipped("mattresses.csv", Mattress)


def mattresses(own: tuple[Mattress, ...] = ()) -> Mapping[str, Mattress]:
    """All sizes by key, the maker's own after those of the trade."""
    return beside(_shipped(), own)


def mattress(key: str, own: tuple[Mattress, ...] = ()) -> Mattress:
    """The size with that key."""
    return row_of(mattresses(own), key, "mattress")
