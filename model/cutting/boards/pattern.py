"""How one board is cut, before it becomes a tree: bands of a blank, and what lies in each."""

from __future__ import annotations

from collections import Counter
from typing import NamedTuple

from model.cutting.record import Way


class Lying(NamedTuple):
    """A strip of a lot and where it begins, along its band, from the board's corner."""

    lot: int
    at: int


class Band(NamedTuple):
    """A strip (ripped) or section (crosscut) of a blank, from and to across the cuts."""

    low: int
    high: int
    lying: tuple[Lying, ...]


class Cut(NamedTuple):
    """A blank as it is cut: `way` makes the bands, the other way what lies in them."""

    way: Way
    bands: tuple[Band, ...]


class Pattern(NamedTuple):
    """A board as it is cut: which board, which of its forms, and each blank of that form."""

    board: int
    form: int
    cuts: tuple[Cut, ...]

    @property
    def counts(self) -> Counter[int]:
        """Strips of each lot on the board."""
        lying = (each for cut in self.cuts for band in cut.bands for each in band.lying)
        return Counter(each.lot for each in lying)
