"""Whether a rack holds a list, by the linear relaxation of its plans.

A rack that fails holds the list in no plan of rips then crosscuts, or crosscuts then rips (but for
what column generation leaves unfound); one that passes may need a little more than its boards,
because the relaxation may cut a share of a board.
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from model.cutting.boards.pattern import Pattern
from model.cutting.boards.pricing import Pricing
from model.cutting.boards.rack import Board
from model.cutting.lengths.lots import Lot
from model.cutting.lengths.master import Floats, Master, Source

ROUNDS = 12
STARTS = (1.0, 0.75, 1.25)  # powers of the area by which lots are worth something at first
SHORT = 1e-4  # strips that may be missing: floating point


class Enough:
    """The boards of a rack in the order in which they are laid out; columns are kept between
    questions.
    """

    def __init__(self, sizes: Sequence[Lot], boards: Sequence[Board], kerf: int) -> None:
        self.demand = tuple(lot.demand for lot in sizes)
        self.boards = boards
        sources = tuple(Source(board.own_cost, 1) for board in boards)
        self.master: Master[Pattern] = Master(self.demand, sources)
        self.pricing = Pricing(sizes, boards, self.demand, kerf)
        area = np.array([lot.area for lot in sizes], dtype=np.float64)
        for power in STARTS:
            self._add((area / area.max()) ** power, list(range(len(boards))), 0.0)

    def holds(self, count: int) -> bool:
        """Whether the first `count` boards do."""
        there = list(range(count))
        quantity = [1 if number < count else 0 for number in range(len(self.boards))]
        for _ in range(ROUNDS):
            priced = self.master.priced(self.demand, quantity)
            if priced.missing.max() < SHORT:
                return True
            if not self._add(priced.worth, there, priced.rent):
                return False
        return False

    def _add(self, worth: Floats, boards: Sequence[int], rent: Floats | float) -> bool:
        costs = np.array([source.cost / self.master.dearest for source in self.master.sources])
        prices = self.pricing.prices(worth, self.demand, boards)
        least = (costs + rent) * (0.0 if isinstance(rent, float) else 1.0) + 1e-6
        columns = self.pricing.columns(prices, self.demand, least.tolist())
        return any([self.master.add(column) for column in columns])
