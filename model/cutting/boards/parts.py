"""Part of a plan made anew, exactly: some boards are freed, and the cheapest boards that hold
their strips are sought among these and all unused ones.

Source: large neighbourhood search, Shaw, Using constraint programming and local search methods to
solve vehicle routing problems, Principles and Practice of Constraint Programming, 1998 (from
memory).
"""

from __future__ import annotations

from collections.abc import Sequence
from math import prod
from random import Random

import numpy as np

from model.cutting.boards.cover import SURE, Cover
from model.cutting.boards.lattice import Lattice
from model.cutting.boards.pattern import Pattern
from model.cutting.boards.search import Search
from model.cutting.boards.small import as_crosscut
from model.cutting.lengths.sums import Ints

MOST_POINTS = 5000
MOST_RESTS = 1000
FREED = (2, 3, 3, 4, 5)  # boards
FRUGAL = 0.05  # of the dearest board: what a board without any waste counts


def improve_parts(search: Search, plan: Sequence[Pattern], moves: int, random: Random) -> None:
    """So many parts of a plan, chosen at random, one after the other."""
    plan = tuple(plan)
    tried: set[tuple[Pattern, ...]] = set()
    for _ in range(moves):
        if search.is_done or len(plan) < 2:
            break
        freed = _freed(search, plan, random)
        if freed in tried:
            continue
        tried.add(freed)
        made = made_anew(search, plan, freed)
        if made is not None:
            plan = tuple(sorted((*(each for each in plan if each not in freed), *made)))
            search.offer(plan)
            tried.clear()


def made_anew(
    search: Search, plan: Sequence[Pattern], freed: Sequence[Pattern]
) -> tuple[Pattern, ...] | None:
    """Cheaper boards for the strips of those that are freed."""
    budget = sum(search.price(each.board) for each in freed)
    kept = [each.board for each in plan]
    for each in freed:
        kept.remove(each.board)
    total = sum(counts(search, each) for each in freed)
    return cheapest_rest(search, kept, np.asarray(total), budget - SURE)


def cheapest_rest(
    search: Search, used: Sequence[int], wanted: Ints, budget: float
) -> tuple[Pattern, ...] | None:
    """The cheapest boards below the budget for what is wanted, when some boards are used."""
    ask = search.question
    lots = np.flatnonzero(wanted).tolist()
    numbers = _left(search, used, int(wanted.sum()), budget)
    boards = [as_crosscut(ask.boards[number]) for number in numbers]
    lattice = Lattice(ask.sizes, wanted.tolist(), lots, ask.kerf)
    fillings = lattice.fillings(boards)
    prices = [search.price(number) for number in numbers]
    cover = Cover(lattice.points, fillings, prices, search.worth[lots], search.stop)
    found = cover.cheapest(budget, MOST_RESTS)
    if found.choices is None:
        return None
    return tuple(
        lattice.pattern(numbers[c.board], boards[c.board], fillings[c.board], c.filling, c.counts)
        for c in found.choices
    )


def is_short(wanted: Ints) -> bool:
    """Whether a list is short enough to be looked at as a whole."""
    points: int = prod((wanted + 1).tolist())
    return points <= MOST_POINTS


def counts(search: Search, pattern: Pattern) -> Ints:
    """Strips of each lot on a board."""
    each = pattern.counts
    return np.array([each[lot] for lot in range(len(search.question.demand))], dtype=np.int64)


def _freed(search: Search, plan: Sequence[Pattern], random: Random) -> tuple[Pattern, ...]:
    """Some boards whose strips are few enough together, the wasteful ones more often."""
    order = sorted(plan, key=lambda each: -(random.random() ** (1 / _waste(search, each))))
    most = random.choice(FREED)
    freed: list[Pattern] = []
    total: Ints = np.zeros(len(search.question.demand), dtype=np.int64)
    for each in order:
        more = total + counts(search, each)
        if len(freed) < most and is_short(more):
            freed.append(each)
            total = more
    return tuple(sorted(freed))


def _waste(search: Search, pattern: Pattern) -> float:
    """What a board costs beyond the worth of its strips."""
    cost = search.question.boards[pattern.board].cost / search.master.dearest
    return FRUGAL + max(0.0, cost - float(search.worth @ counts(search, pattern)))


def _left(search: Search, used: Sequence[int], strips: int, budget: float) -> list[int]:
    """Boards that are not used, by their numbers, each as often as it may be of use."""
    found = []
    for number, board in enumerate(search.question.boards):
        price = search.price(number)
        enough = min(strips, int(budget / price)) if price else strips
        left = enough if board.quantity is None else board.quantity - used.count(number)
        found += [number] * min(left, enough)
    return found
