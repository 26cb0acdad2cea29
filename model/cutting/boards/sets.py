"""A bound that knows that boards are used whole: which sets of boards can hold the list at all.

Given what strips are worth, the boards of a plan must together be able to hold all that the list is
worth. The cheapest set of whole boards that meets all such conditions found so far is no dearer
than any plan; as long as the linear relaxation says that this set cannot hold the list, its prices
are the next condition.
Source: Benders, Partitioning procedures for solving mixed-variables programming problems,
Numerische Mathematik 4, 1962.
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from heapq import heappop, heappush
from typing import NamedTuple

import numpy as np
from scipy.optimize import linprog

from model.cutting.boards.generate import NEW
from model.cutting.boards.search import Search
from model.cutting.boards.small import SURE, copies
from model.cutting.lengths.master import Floats, fine

ROUNDS = 10  # of column generation for one set
SHORT = 1e-4  # strips that may be missing: floating point
SURELY = 1 - 1e-9


class _Node(NamedTuple):
    """Boards between limits: what they cost at least, and how many of each that takes."""

    least: float
    number: int
    used: tuple[float, ...]
    limits: tuple[tuple[int, int], ...]


def bound_by_sets(search: Search, conditions: int, node_limit: int) -> None:
    """Raise the bound by so many conditions; nothing where the rack does not hold the list."""
    most = [copies(search).count(number) for number in range(len(search.question.boards))]
    rows = [_held(search, search.worth)]
    for _ in range(conditions):
        if search.is_done or any(search.missing):
            return
        chosen = _cheapest(search, rows, most, node_limit)
        row = None if chosen is None else _condition(search, chosen)
        if row is None:
            return
        rows.append(row)


def _held(search: Search, worth: Floats) -> Floats:
    """Which share of all that the list is worth each board can hold."""
    whole = fine(worth)
    prices = search.pricing.prices(whole, search.question.demand)
    wanted = int(np.dot(whole, search.question.demand)) or 1
    return np.array([float(most) for most in prices.most]) / wanted


def _cheapest(
    search: Search, rows: Sequence[Floats], most: Sequence[int], node_limit: int
) -> list[int] | None:
    """How many of each board the cheapest set has, by branch and bound; None where that takes too
    many nodes. The bound follows in any case.
    """
    dearest = search.master.dearest
    costs = np.array([board.cost / dearest for board in search.question.boards])
    waiting: list[_Node] = []
    _push(waiting, costs, rows, [(0, each) for each in most], 0)
    for number in range(node_limit):
        if not waiting:
            return None
        node = heappop(waiting)
        part = np.abs(np.array(node.used) - np.round(node.used))
        if part.max() < 1e-6 or number == node_limit - 1:
            if search.pricing.is_exact:
                search.raise_bound((Fraction(node.least) - SURE) * dearest)
            return [round(each) for each in node.used] if part.max() < 1e-6 else None
        board = int(part.argmax())
        low, high = node.limits[board]
        for side, limits in enumerate(
            ((low, int(node.used[board])), (int(node.used[board]) + 1, high))
        ):
            divided = [*node.limits[:board], limits, *node.limits[board + 1 :]]
            _push(waiting, costs, rows, divided, 2 * number + side + 1)
    return None


def _push(
    waiting: list[_Node],
    costs: Floats,
    rows: Sequence[Floats],
    limits: Sequence[tuple[int, int]],
    number: int,
) -> None:
    wanted = np.full(len(rows), -SURELY)
    answer = linprog(costs, A_ub=-np.array(rows), b_ub=wanted, bounds=limits, method="highs")
    if answer.x is not None:
        used = tuple(answer.x.tolist())
        heappush(waiting, _Node(float(answer.fun), number, used, tuple(limits)))


def _condition(search: Search, chosen: Sequence[int]) -> Floats | None:
    """Prices by which the chosen boards are too few; None where none are found."""
    ask = search.question
    there = [number for number, count in enumerate(chosen) if count]
    costs = np.array([board.cost / search.master.dearest for board in ask.boards])
    for _ in range(ROUNDS):
        priced = search.master.priced(ask.demand, chosen)
        if search.stop() or priced.missing.max() < SHORT:
            return None
        held = _held(search, priced.worth)
        if float(held @ chosen) < SURELY:
            return held
        prices = search.pricing.prices(priced.worth, ask.demand, there)
        least = (costs + priced.rent + NEW).tolist()
        columns = search.pricing.columns(prices, ask.demand, [least[n] for n in range(len(least))])
        if not any([search.master.add(column) for column in columns]):
            return None
    return None
