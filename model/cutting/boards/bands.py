"""The worthiest bands of clear blanks, cut in one way: two nested knapsacks.

The inner one fills a band of each class (strips of a width, sections of a length) with all that is
no wider (no longer); the outer one fills the blank with bands. A band's filling depends on the
length (width) of the blank alone, so that all blanks share the inner table.
Source: Gilmore, Gomory, Multistage cutting stock problems of two and more dimensions, Operations
Research 13, 1965.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from model.cutting.boards.around import Around, Found
from model.cutting.boards.pattern import Band, Cut, Lying
from model.cutting.boards.rack import Blank
from model.cutting.lengths.lots import Lot
from model.cutting.lengths.sums import Filled, FilledEach, Ints, Sums, Values
from model.cutting.record import Way


@dataclass(frozen=True)
class Valued:
    """The best of some blanks by their numbers, with the tables to read it from."""

    values: dict[int, float]
    cases: dict[int, int]  # where each clear blank stands in the outer table
    inner: Filled
    outer: FilledEach
    around: dict[int, list[Found]]  # the bands of blanks with bad spans


class Bands:
    """One way of cutting, for all blanks of a rack."""

    def __init__(
        self,
        way: Way,
        sizes: Sequence[Lot],
        demand: Sequence[int],
        blanks: Sequence[Blank],
        kerf: int,
    ) -> None:
        self.way, self.sizes, self.kerf, self.blanks = way, sizes, kerf, blanks
        across = [self._across(lot) for lot in sizes]
        along = [lot.along if way == "rip" else lot.across for lot in sizes]
        self.order = sorted(range(len(sizes)), key=lambda n: (across[n], -along[n]))
        self.along, self.across = along, across
        self.classes = sorted(set(across))
        self._ends = [
            max(i for i, n in enumerate(self.order) if across[n] == c) for c in self.classes
        ]
        rooms = [self._rooms(blank) for blank in blanks]
        longest = max((room for room, _ in rooms), default=0)
        widest = max((room for _, room in rooms), default=0)
        limits = [demand[n] for n in self.order]
        self.inner = Sums([along[n] + kerf for n in self.order], limits, longest)
        times = [widest // (each + kerf) for each in self.classes]
        self.outer = Sums([each + kerf for each in self.classes], times, widest)
        self._inner_at = self.inner.at([room for room, _ in rooms])
        self._outer_at = self.outer.at([room for _, room in rooms])

        self._around = {
            number: Around(way, blank, self.classes, self.inner, kerf)
            for number, blank in enumerate(blanks)
            if blank.bad
        }

    @property
    def is_exact(self) -> bool:
        return self.inner.is_exact and self.outer.is_exact

    def value(self, worth: Values, limits: Sequence[int], blanks: Sequence[int]) -> Valued:
        """What these blanks can be worth; a lot at most `limits` times in each band."""
        inner = self.inner.fill(worth[self.order], [limits[n] for n in self.order], keep=True)
        clear = [blank for blank in blanks if blank not in self._around]
        rooms = self._inner_at[clear]
        outer = self.outer.fill_each(np.array([inner.after[end][rooms] for end in self._ends]))
        values = dict(
            zip(clear, outer.values[self._outer_at[clear], np.arange(len(clear))], strict=True)
        )
        around = {}
        for blank in blanks:
            if blank in self._around:
                values[blank], best, kind = self._around[blank].value(inner, self._ends)
                around[blank] = self._around[blank].bands(best, kind)
        cases = {blank: case for case, blank in enumerate(clear)}
        return Valued(values, cases, inner, outer, around)

    def cut(self, valued: Valued, number: int, worth: Values, left: Ints) -> Cut:
        """The blank as it is worth most, with at most `left` of each lot, which is used up."""
        if number in valued.around:
            return self._cut_around(valued, number, worth, left)
        times = self.outer.counts_of(
            valued.outer, int(self._outer_at[number]), valued.cases[number]
        )
        entry = int(self._inner_at[number])
        bands: list[list[int]] = []
        for kind in reversed(range(len(times))):
            for _ in range(times[kind]):
                counts = self._band(valued.inner, kind, entry, worth, left)
                if any(counts):
                    bands.append(counts)
                    left -= counts
        return self.placed(number, bands)

    def _cut_around(self, valued: Valued, number: int, worth: Values, left: Ints) -> Cut:
        bands = []
        for found in valued.around[number]:
            lying: list[Lying] = []
            for room in found.rooms:
                counts = self._band(valued.inner, found.kind, room.entry, worth, left)
                left -= counts
                lying += self._lying(counts, room.low)
            if lying:
                width = max(self.across[each.lot] for each in lying)
                bands.append(Band(found.low, found.low + width, tuple(lying)))
        return Cut(self.way, tuple(bands))

    def _band(self, filled: Filled, kind: int, entry: int, worth: Values, left: Ints) -> list[int]:
        items = self._ends[kind] + 1
        counts = self._by_lot(self.inner.counts(filled, entry, items))
        if (np.array(counts) <= left).all():
            return counts
        limits = [int(left[n]) if i < items else 0 for i, n in enumerate(self.order)]
        again = self.inner.fill(worth[self.order], limits)
        return self._by_lot(self.inner.counts(again, entry))

    def _by_lot(self, counts: Sequence[int]) -> list[int]:
        by_lot = [0] * len(counts)
        for position, lot in enumerate(self.order):
            by_lot[lot] = counts[position]
        return by_lot

    def rooms(self, number: int) -> tuple[int, int]:
        """What a blank holds along a band and across, of pieces that carry a kerf each."""
        return self._rooms(self.blanks[number])

    def rest(self, valued: Valued, number: int) -> Values | None:
        """What a part of the blank could be worth, for every sum of bands; None where the blank has
        bad spans.
        """
        if number in self._around:
            return None
        return valued.outer.values[:, valued.cases[number]]

    def placed(self, number: int, bands: Sequence[Sequence[int]]) -> Cut:
        """Bands of so many of each lot, side by side from the blank's corner; widest first."""
        rect = self.blanks[number].rect
        low, start = (rect.y0, rect.x0) if self.way == "rip" else (rect.x0, rect.y0)
        made = []
        for counts in sorted(bands, key=lambda each: (-self._widest(each), list(each))):
            made.append(Band(low, low + self._widest(counts), self._lying(counts, start)))
            low += self._widest(counts) + self.kerf
        return Cut(self.way, tuple(made))

    def _lying(self, counts: Sequence[int], at: int) -> tuple[Lying, ...]:
        lying = []
        for lot in sorted(range(len(counts)), key=lambda n: (-self.along[n], n)):
            for _ in range(counts[lot]):
                lying.append(Lying(lot, at))
                at += self.along[lot] + self.kerf
        return tuple(lying)

    def _widest(self, counts: Sequence[int]) -> int:
        return max(self.across[lot] for lot, count in enumerate(counts) if count)

    def _across(self, lot: Lot) -> int:
        return lot.across if self.way == "rip" else lot.along

    def _rooms(self, blank: Blank) -> tuple[int, int]:
        rooms = (blank.length + self.kerf, blank.width + self.kerf)
        return rooms if self.way == "rip" else (rooms[1], rooms[0])
