"""The worthiest way to cut each board, given what every lot is worth."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from model.cutting.boards.bands import Bands, Valued
from model.cutting.boards.pattern import Cut, Pattern
from model.cutting.boards.rack import Board
from model.cutting.lengths.lots import Lot
from model.cutting.lengths.master import Column, Floats
from model.cutting.lengths.sums import Ints, Values


@dataclass(frozen=True)
class Prices:
    """What the blanks of some boards are worth, rip first and crosscut first, and every form of
    these boards in the better way.
    """

    worth: Values
    valued: tuple[Valued, Valued]
    boards: tuple[int, ...]
    forms: tuple[tuple[float, ...], ...]

    @property
    def most(self) -> tuple[float, ...]:
        """The most that each board can be worth, if a lot's limit held in each band alone."""
        return tuple(map(max, self.forms))


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
        numbers = iter(range(len(blanks)))
        self.blanks = [[[next(numbers) for _ in form] for form in x.forms] for x in boards]
        self.ways = (
            Bands("rip", sizes, demand, blanks, kerf),
            Bands("crosscut", sizes, demand, blanks, kerf),
        )

    @property
    def is_exact(self) -> bool:
        return all(way.is_exact for way in self.ways)

    def prices(
        self, worth: Values, limits: Sequence[int], boards: Sequence[int] | None = None
    ) -> Prices:
        """What these boards (or all) can be worth, with at most `limits` of a lot in a band."""
        chosen = tuple(range(len(self.boards)) if boards is None else boards)
        blanks = [blank for board in chosen for form in self.blanks[board] for blank in form]
        rip, crosscut = (way.value(worth, limits, blanks) for way in self.ways)
        best = {blank: max(rip.values[blank], crosscut.values[blank]) for blank in blanks}
        forms = tuple(
            tuple(sum(best[blank] for blank in form) for form in self.blanks[board])
            for board in chosen
        )
        return Prices(worth, (rip, crosscut), chosen, forms)

    def columns(
        self, prices: Prices, limits: Sequence[int], least: Sequence[float] | Floats
    ) -> list[Column[Pattern]]:
        """The worthiest column of every board that may be worth more than its `least`; no lot more
        often than its limit.
        """
        return [
            self.column(prices, board, limits)
            for board, most in zip(prices.boards, prices.most, strict=True)
            if most > least[board]
        ]

    def column(self, prices: Prices, board: int, limits: Sequence[int]) -> Column[Pattern]:
        """A board as it is worth most, in the form that is worth most."""
        form = int(np.argmax(prices.forms[prices.boards.index(board)]))
        left: Ints = np.array(limits, dtype=np.int64)
        cuts = tuple(self._cut(prices, blank, left) for blank in self.blanks[board][form])
        counts: Ints = np.array(limits, dtype=np.int64) - left
        return Column(board, tuple(counts.tolist()), Pattern(board, form, cuts))

    def _cut(self, prices: Prices, blank: int, left: Ints) -> Cut:
        # Crosscut first where both are worth the same: short boards are easier to joint and plane.
        rip, crosscut = (each.values[blank] for each in prices.valued)
        way = 0 if rip > crosscut else 1
        return self.ways[way].cut(prices.valued[way], blank, prices.worth, left)
