"""A bound that knows how many strips of each lot there are.

The best of a board may hold a lot more often than it is wanted, because each band counts for
itself. Taking something off what that lot is worth, and giving it back once for every strip wanted,
bounds the board from above as well; each board keeps the least of what is tried.
Source: Lagrangian relaxation with Polyak's steps (from memory).
"""

from __future__ import annotations

import numpy as np

from model.cutting.boards.generate import NEW
from model.cutting.boards.search import Search
from model.cutting.lengths.master import FINE, Floats, Ints, fine

ENDLESS = 1 << 30
FIRST_STEP = 0.5  # of a step that would end at the charge: most boards stay above it


def tighten(search: Search, rounds: int, steps: int) -> None:
    """Raise the bound, and add the columns that are found on the way."""
    for _ in range(rounds):
        before = len(search.master.columns)
        _bound(search, steps)
        if len(search.master.columns) == before or search.is_done:
            break
        search.relax()


def _bound(search: Search, steps: int) -> None:
    whole = fine(search.worth)
    prices = search.pricing.prices(whole, search.question.demand)
    most = [
        _most(search, board, whole, int(first), steps)
        if first > (search.charge(board) + NEW) * FINE
        else int(first)
        for board, first in zip(prices.boards, prices.most, strict=True)
    ]
    search.learn(whole, most)


def _most(search: Search, board: int, whole: Ints, first: int, steps: int) -> int:
    """The most that a board can be worth, as near as some steps come to what it is charged."""
    demand: Ints = np.array(search.question.demand)
    charge, least = search.charge(board), first
    off: Floats = np.zeros(len(demand))
    for step in range(steps):
        taken = np.minimum(fine(off), whole)
        prices = search.pricing.prices(whole - taken, demand.tolist(), [board])
        least = min(least, int(prices.most[0]) + int(np.dot(taken, demand)))
        column = search.pricing.column(prices, board, demand.tolist())
        if float(search.worth @ column.counts) > charge + NEW:
            search.master.add(column)
        beyond = search.pricing.column(prices, board, [ENDLESS] * len(demand)).counts - demand
        way = np.where((off > 0) | (beyond > 0), beyond, 0)
        high = least / FINE - charge
        if high <= NEW or not way.any():
            break
        far = FIRST_STEP / (1 + step / 3) * high / float(way @ way)
        off = np.clip(off + far * way, 0.0, search.worth)
    return least
