"""All ways of cutting, where they are few: the whole question for an exact solver."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction
from itertools import product
from math import prod

from model.cutting.lengths.master import Column, Master
from model.cutting.lengths.search import Cutting, Search
from model.cutting.lengths.sticks import Counts, Stick

MOST_PATTERNS = 3000
_SURE = Fraction(1, 1_000_000)  # a solver's bound may be this share too high


def all_patterns(search: Search) -> list[Column[Cutting]] | None:
    """Every fullest way of cutting each kind; None where there are too many."""
    found: list[Column[Cutting]] = []
    for kind, rooms in enumerate(search.rooms):
        each = [_fullest(search, room, MOST_PATTERNS) for room in rooms]
        if any(ways is None for ways in each):
            return None
        ways = [way for way in each if way is not None]
        if len(found) + prod(map(len, ways)) > MOST_PATTERNS:
            return None
        for cutting in product(*ways):
            total = tuple(map(sum, zip(*cutting, strict=True)))
            found.append(Column(kind, total, cutting))
    return found


def solve_all(search: Search, node_limit: int) -> None:
    """The best plan of all patterns, and the bound that the solver proves on the way."""
    patterns = all_patterns(search)
    if patterns is None:
        return
    master: Master[Cutting] = Master(search.question.demand, search.master.sources)
    for column in patterns:
        master.add(column)
    whole = master.chosen(node_limit, own=0.0)
    if whole is None:
        return
    sticks = (
        Stick(column.source, column.what)
        for column, times in zip(master.columns, whole.used, strict=True)
        for _ in range(times)
    )
    search.offer(sticks)
    if not any(search.missing):
        search.raise_bound(Fraction(whole.least) * master.dearest * (1 - _SURE))


def _fullest(search: Search, room: int, most: int) -> list[Counts] | None:
    """The fillings of a room to which nothing can be added."""
    weights, demand = search.question.weights, search.question.demand
    found: list[Counts] = []
    for counts in _fillings(weights, demand, room, 0):
        found.append(counts)
        if len(found) > most:
            return None
    return found


def _fillings(
    weights: Sequence[int], demand: Sequence[int], room: int, lot: int, smallest: int = 0
) -> Iterator[Counts]:
    if lot == len(weights):
        # Full only if no strip that was held back would still go in.
        if not smallest or room < smallest:
            yield ()
        return
    times = min(demand[lot], room // weights[lot])
    for count in range(times, -1, -1):
        held = smallest
        if count < demand[lot]:
            held = min(smallest or weights[lot], weights[lot])
        left = room - count * weights[lot]
        for rest in _fillings(weights, demand, left, lot + 1, held):
            yield (count, *rest)
