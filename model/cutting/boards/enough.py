"""Whether a rack holds a list, by the linear relaxation of its plans.

A rack that fails holds the list in no plan of rips then crosscuts, or crosscuts then rips (but for
what column generation leaves unfound); one that passes may need a little more than its boards,
because the relaxation may cut a share of a board.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import accumulate

import numpy as np

from model.cutting.boards.generate import NEW
from model.cutting.boards.pattern import Pattern
from model.cutting.boards.pricing import Pricing
from model.cutting.boards.rack import Board
from model.cutting.lengths.lots import Lot
from model.cutting.lengths.master import Floats, Master, Source

ROUNDS = 12
STARTS = (1.0, 0.75, 1.25)  # powers of the area by which lots are worth something at first
SHORT = 1e-4  # strips that may be missing: floating point
SURELY = 1 - 1e-9


class Enough:
    """The boards of a rack in the order in which they are laid out; columns are kept between
    questions.
    """

    def __init__(self, sizes: Sequence[Lot], boards: Sequence[Board], kerf: int) -> None:
        self.demand = tuple(lot.demand for lot in sizes)
        self.boards = boards
        sources = tuple(Source(board.own_cost, 1) for board in boards)
        self.master: Master[Pattern] = Master(self.demand, sources)
        self._costs = np.array([each.cost / self.master.dearest for each in sources])
        self.pricing = Pricing(sizes, boards, self.demand, kerf)
        self.least = 0  # boards that cannot be enough, whatever is done with them
        area = np.array([lot.area for lot in sizes], dtype=np.float64)
        for power in STARTS:
            self._start((area / area.max()) ** power)

    def holds(self, count: int) -> bool:
        """Whether the first `count` boards do."""
        if count <= self.least:
            return False
        there = list(range(count))
        quantity = [1 if number < count else 0 for number in range(len(self.boards))]
        for _ in range(ROUNDS):
            priced = self.master.priced(self.demand, quantity)
            if priced.missing.max() < SHORT:
                return True
            prices = self.pricing.prices(priced.worth, self.demand, there)
            if sum(prices.most) < float(priced.worth @ self.demand) * SURELY:
                return False  # worth more than all boards together can hold
            columns = self.pricing.columns(prices, self.demand, self._costs + priced.rent + NEW)
            if not any([self.master.add(column) for column in columns]):
                return False
        return False

    def _start(self, worth: Floats) -> None:
        """First columns, and how many boards cannot hold what all strips are worth."""
        prices = self.pricing.prices(worth, self.demand)
        for column in self.pricing.columns(prices, self.demand, [0.0] * len(self.boards)):
            self.master.add(column)
        wanted = float(worth @ self.demand) * SURELY
        short = (n for n, held in enumerate(accumulate(prices.most), 1) if held < wanted)
        self.least = max(self.least, max(short, default=0))
