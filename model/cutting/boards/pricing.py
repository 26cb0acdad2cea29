"""The worthiest way to cut each board, given what every lot is worth."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from model.cutting.boards.bands import Bands, Valued
from model.cutting.boards.pattern import Cut, Pattern
from model.cutting.boards.rack import Board
from model.cutting.lengths.lots import Lot
from model.cutting.lengths.master import Column
from model.cutting.lengths.sums import Ints, Values


@dataclass(frozen=True)
class Prices:
    """What each blank is worth in each way, rip first then crosscut first: (2, blanks)."""

    worth: Values
    valued: tuple[Valued, Valued]
    blanks: Values


class Pricing:
    """All boards of a rack at once."""

    def __init__(
        self,
        sizes: Sequence[Lot],
        boards: Sequence[Board],
        demand: Sequence[int],
        kerf: int,
    ) -> None:
        self.boards = boards
        self.lots = len(sizes)
        blanks = [blank for board in boards for form in board.forms for blank in form]
        self._first: list[list[int]] = []  # the number of each form's first blank
        number = 0
        for board in boards:
            self._first.append([])
            for form in board.forms:
                self._first[-1].append(number)
                number += len(form)
        self.ways = (
            Bands("rip", sizes, demand, blanks, kerf),
            Bands("crosscut", sizes, demand, blanks, kerf),
        )

    @property
    def is_exact(self) -> bool:
        return all(way.is_exact for way in self.ways)

    def prices(self, worth: Values, limits: Sequence[int]) -> Prices:
        """What every blank can be worth, with at most `limits` of a lot in a band."""
        rip, crosscut = (way.value(worth, limits) for way in self.ways)
        return Prices(worth, (rip, crosscut), np.array((rip.values, crosscut.values)))

    def most(self, prices: Prices) -> list[float]:
        """The most that each board can be worth, if a lot's limit held in each band alone."""
        best = prices.blanks.max(axis=0)
        return [max(self._forms(best, number)) for number in range(len(self.boards))]

    def columns(
        self, prices: Prices, limits: Sequence[int], least: Sequence[float]
    ) -> list[Column[Pattern]]:
        """The worthiest column of every board that may be worth more than its `least`; no lot more
        often than its limit.
        """
        best = prices.blanks.max(axis=0)
        found = []
        for number in range(len(self.boards)):
            values = self._forms(best, number)
            if max(values) > least[number]:
                found.append(self.column(prices, number, int(np.argmax(values)), limits))
        return found

    def beyond(self, prices: Prices, demand: Sequence[int]) -> dict[int, Ints]:
        """By how much the best of a board goes beyond the demand of each lot, where it does."""
        endless = [1 << 30] * self.lots
        best = prices.blanks.max(axis=0)
        found = {}
        for number in range(len(self.boards)):
            form = int(np.argmax(self._forms(best, number)))
            counts = self.column(prices, number, form, endless).counts
            over: Ints = np.maximum(np.array(counts) - np.array(demand), 0)
            if over.any():
                found[number] = over
        return found

    def _forms(self, best: Values, number: int) -> list[float]:
        forms = self.boards[number].forms
        return [
            best[first : first + len(form)].sum()
            for first, form in zip(self._first[number], forms, strict=True)
        ]

    def column(
        self, prices: Prices, number: int, form: int, limits: Sequence[int]
    ) -> Column[Pattern]:
        """A board in one of its forms, as it is worth most."""
        left: Ints = np.array(limits, dtype=np.int64)
        first = self._first[number][form]
        cuts = tuple(
            self._cut(prices, first + each, left)
            for each in range(len(self.boards[number].forms[form]))
        )
        counts: NDArray[np.int64] = np.array(limits, dtype=np.int64) - left
        return Column(number, tuple(counts.tolist()), Pattern(number, form, cuts))

    def _cut(self, prices: Prices, blank: int, left: Ints) -> Cut:
        # Crosscut first where both are worth the same: short boards are easier to joint and plane.
        way = 0 if prices.blanks[0, blank] > prices.blanks[1, blank] else 1
        return self.ways[way].cut(prices.valued[way], blank, prices.worth, left)
