"""A bound that knows how many strips of each lot there are.

The best of a board may hold a lot more often than it is wanted, because each band counts for
itself. Taking something off what that lot is worth, and giving it back once for every strip wanted,
bounds the board from above as well; each board keeps the least of what is tried.
Source: Lagrangian relaxation of the demand within a pattern (from memory).
"""

from __future__ import annotations

import numpy as np

from model.cutting.boards.generate import least_of
from model.cutting.boards.pricing import Prices
from model.cutting.boards.search import Search
from model.cutting.lengths.master import FINE, Floats, fine

TAKEN = 0.3  # share of its worth that is taken off a lot at first


def tighten(search: Search, rounds: int, steps: int) -> None:
    """Raise the bound, and add the columns that are found on the way."""
    ask, master = search.question, search.master
    quantity = [board.quantity for board in ask.boards]
    for _ in range(rounds):
        before = len(master.columns)
        _try_prices(search, steps)
        if len(master.columns) == before or search.stop():
            break
        priced = master.priced(ask.demand, quantity)
        search.worth, search.relaxed = priced.worth, priced.value


def _try_prices(search: Search, steps: int) -> None:
    demand = search.question.demand
    whole = fine(search.worth)
    most = [1 << 62] * len(search.question.boards)
    off: Floats = np.zeros(len(demand))
    for step in range(steps):
        taken = np.minimum(fine(off), whole)
        prices = search.pricing.prices(whole - taken, demand)
        given = int(np.dot(taken, demand))
        values = [int(each) + given for each in search.pricing.most(prices)]
        most = [min(pair) for pair in zip(most, values, strict=True)]
        _add(search, prices, given)
        over = _over(search, prices, most)
        if not over.any():
            break
        off += TAKEN / (1 + step) * search.worth * over / over.max()
    search.learn(whole, most)


def _add(search: Search, prices: Prices, given: int) -> None:
    least = [each * FINE - given for each in least_of(search)]
    for column in search.pricing.columns(prices, search.question.demand, least):
        worth = float(np.dot(search.worth, column.counts))
        if worth > least_of(search)[column.source]:
            search.master.add(column)


def _over(search: Search, prices: Prices, most: list[int]) -> Floats:
    """How far the boards that hold the bound down go beyond the demand, on the whole."""
    total: Floats = np.zeros(len(search.question.demand))
    beyond = search.pricing.beyond(prices, search.question.demand)
    for number, over in beyond.items():
        gain = most[number] / FINE - least_of(search)[number]
        if gain > 0:
            total += gain * over
    return total
