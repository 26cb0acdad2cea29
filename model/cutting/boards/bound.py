"""A bound that knows how many strips of each lot there are.

The best of a board may hold a lot more often than it is wanted, because each band counts for
itself. Taking something off what that lot is worth, and giving it back once for every strip wanted,
bounds the board from above as well. How much to take off is found by cutting planes; what gap stays
is closed by looking at all that might lie in it.
Source: Lagrangian relaxation; Kelley, The cutting-plane method for solving convex programs, Journal
of the Society for Industrial and Applied Mathematics 8(4), 1960.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

import numpy as np
from scipy.optimize import linprog

from model.cutting.boards.generate import NEW
from model.cutting.boards.pricing import Prices
from model.cutting.boards.search import Search
from model.cutting.lengths.master import FINE, Floats, Ints, fine

ENDLESS = 1 << 30
FEW = 2  # new columns of a round that are worth another round, before boards are looked at closely
PAIRS_A_LOT = 30_000  # what cutting planes for one board take beside its exact worth, per lot
ALMOST = 1e-4  # of the dearest board: no more can be gained by taking something else off


class Cut(NamedTuple):
    """What a board is worth at least, whatever is taken off: `worth`, and `slope` for each lot."""

    worth: float
    slope: Ints


def tighten(search: Search, rounds: int, steps: int) -> None:
    """Raise the bound, and add the columns that are found on the way."""
    everywhere = range(len(search.question.boards))
    for _ in range(rounds):
        if search.is_done:
            break
        charges = [search.charge(board) for board in everywhere]
        most, is_new = priced_closely(search, search.worth, charges, everywhere, steps)
        search.learn(fine(search.worth), most)
        if not is_new:
            break
        search.relax()


def priced_closely(
    search: Search,
    worth: Floats,
    charges: Sequence[float],
    there: Sequence[int],
    steps: int,
) -> tuple[list[int], bool]:
    """The most that each board can be worth, as near as that is found, and whether columns came
    in. Only the boards that are `there`, and worth more than they are charged, are looked at, as
    long as the search has work left.
    """
    whole, demand = fine(worth), search.question.demand
    prices = search.pricing.prices(whole, demand)
    most, new, close = [int(each) for each in prices.most], 0, []
    for board in there:
        if most[board] > _target(charges[board]):
            if _added(search, prices, board, worth, charges[board]):
                new += 1
            else:
                close.append(board)
    if new < FEW:
        for board in close:
            if search.work <= 0 or search.stop():
                break
            most[board], more = _most(search, board, worth, charges[board], steps, prices)
            new += more
    return most, new > 0


def _target(charge: float) -> int:
    return int((charge + NEW) * FINE)


def _added(search: Search, prices: Prices, board: int, worth: Floats, charge: float) -> bool:
    column = search.pricing.column(prices, board, search.question.demand)
    return float(worth @ column.counts) > charge + NEW and search.master.add(column)


def _most(
    search: Search, board: int, worth: Floats, charge: float, steps: int, prices: Prices
) -> tuple[int, int]:
    """The most that one board can be worth, and how many columns came in; `prices` take nothing
    off.
    """
    whole, demand = fine(worth), np.array(search.question.demand)
    search.work -= PAIRS_A_LOT * len(demand)
    off: Floats = np.zeros(len(demand))
    best, kept, new = off, prices, 0
    least = int(prices.most[prices.boards.index(board)])
    cuts: list[Cut] = []
    for _ in range(steps):
        counts = search.pricing.column(prices, board, [ENDLESS] * len(demand)).counts
        cuts.append(Cut(float(worth @ counts), demand - np.array(counts)))
        lowest, lowest_at = _lowest(cuts, worth)
        if least <= _target(charge) or least / FINE - lowest < ALMOST:
            break
        off = (lowest_at + best) / 2
        taken = np.minimum(fine(off), whole)
        prices = search.pricing.prices(whole - taken, demand.tolist(), [board])
        value = int(prices.most[0]) + int(taken @ demand)
        if value < least:
            best, least, kept = off, value, prices
        new += _added(search, prices, board, worth, charge)
    if least <= _target(charge):
        return least, new
    taken = np.minimum(fine(best), whole)
    before = search.exact.pairs
    most, column = search.exact.most(kept, board, taken, _target(charge))
    search.work -= search.exact.pairs - before
    return min(most, least), new + (column is not None and search.master.add(column))


def _lowest(cuts: Sequence[Cut], worth: Floats) -> tuple[float, Floats]:
    """The least that all cuts allow, and what is taken off there."""
    slopes = np.array([cut.slope for cut in cuts])
    some = np.flatnonzero((slopes < 0).any(axis=0))
    rows = np.hstack((slopes[:, some], np.full((len(cuts), 1), -1.0)))
    bounds = [(0.0, float(worth[lot])) for lot in some] + [(None, None)]
    goal = np.zeros(len(some) + 1)
    goal[-1] = 1.0
    amounts = [-cut.worth for cut in cuts]
    answer = linprog(goal, A_ub=rows, b_ub=amounts, bounds=bounds, method="highs")
    off: Floats = np.zeros(len(worth))
    if answer.x is None:
        return -np.inf, off
    off[some] = answer.x[:-1]
    return float(answer.fun), off
