"""A bound that knows that boards are used whole: which sets of boards can hold the list at all.

Given what strips are worth, the boards of a plan must together be able to hold all that the list is
worth. The cheapest set of whole boards that meets all such conditions found so far is no dearer
than any plan; as long as the linear relaxation says that this set cannot hold the list, its prices
are the next condition. All sets are looked at where they are not too many, else it
is branch and bound.
Source: Benders, Partitioning procedures for solving mixed-variables programming problems,
Numerische Mathematik 4, 1962.
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from math import prod

import numpy as np

from model.cutting.boards.bound import priced_closely
from model.cutting.boards.branches import SURELY, Branches, Cheapest
from model.cutting.boards.search import Search, shares
from model.cutting.boards.small import SURE, copies
from model.cutting.lengths.master import Floats, Ints, fine

MOST_SETS = 1 << 20
NODES = 60  # of branch and bound for one set
CONDITIONS = 10  # of branch and bound, which is slower than to look at all sets
ROUNDS = 20  # of column generation for one set
STEPS = 3
SHORT = 1e-4  # strips that may be missing: floating point


def bound_by_sets(search: Search, conditions: int, rounds: int) -> None:
    """Raise the bound by so many conditions, for which columns are made in so many rounds; nothing
    where the rack does not hold the list.
    """
    if any(search.missing) or not search.held:
        return
    sets = _sets(search)
    if isinstance(sets, Branches):
        conditions = min(conditions, CONDITIONS)
    for held in search.held:
        sets.keep(held)
    for _ in range(conditions):
        least, chosen = sets.cheapest()
        search.raise_bound((Fraction(least) - SURE) * search.master.dearest)
        if chosen is None or search.is_done:
            return
        held_by, taken = _condition(search, chosen, min(rounds, ROUNDS))
        if held_by is None:
            return
        sets.keep(held_by)
        rounds -= taken


def _sets(search: Search) -> Sets | Branches:
    dearest = search.master.dearest
    costs: Floats = np.array([board.cost / dearest for board in search.question.boards])
    most = [copies(search).count(number) for number in range(len(costs))]
    if prod(each + 1 for each in most) > MOST_SETS:
        return Branches(costs, most, NODES)
    return Sets(costs, most, search.cost / dearest)


class Sets:
    """All sets of boards with these `costs`, at most so many of each, that cost less than `below`
    together.
    """

    def __init__(self, costs: Floats, most: Sequence[int], below: float) -> None:
        self._most, self._below = most, below
        self._costs = self._sums(costs)
        self._left: Ints = np.flatnonzero(self._costs < below - float(SURE))
        self._left = self._left[np.argsort(self._costs[self._left], kind="stable")]

    def keep(self, held: Floats) -> None:
        """Only sets that hold all by this condition: a share of the list for each board."""
        self._left = self._left[self._sums(held)[self._left] >= SURELY]

    def cheapest(self) -> Cheapest:
        """The first set that is left; where none is, no plan costs less than `below`."""
        if not len(self._left):
            return Cheapest(self._below, None)
        number, chosen = int(self._left[0]), []
        least = float(self._costs[number])
        for most in self._most:
            number, count = divmod(number, most + 1)
            chosen.append(count)
        return Cheapest(least, tuple(chosen))

    def _sums(self, each: Floats) -> Floats:
        """The sum of every set; the first board's count changes fastest."""
        sums: Floats = np.zeros(1)
        for value, most in zip(each, self._most, strict=True):
            sums = np.concatenate([sums + count * value for count in range(most + 1)])
        return sums


def _condition(search: Search, chosen: Sequence[int], rounds: int) -> tuple[Floats | None, int]:
    """Which share of the list each board can hold, by prices by which the chosen boards are too
    few, or None where no such prices are found; and how many rounds it took.
    """
    ask = search.question
    there = [number for number, count in enumerate(chosen) if count]
    costs = [board.cost / search.master.dearest for board in ask.boards]
    for number in range(rounds):
        priced = search.master.priced(ask.demand, chosen)
        if search.stop() or priced.missing.max() < SHORT:
            break
        charges = [cost + float(rent) for cost, rent in zip(costs, priced.rent, strict=True)]
        most, is_new = priced_closely(search, priced.worth, charges, there, STEPS)
        held = shares(search, fine(priced.worth), most)
        if float(held @ chosen) < SURELY:
            return held, number + 1
        if not is_new:
            break
    return None, rounds
