"""Methods that look for boards: by worth, column generation, whole columns, diving."""

from __future__ import annotations

from collections.abc import Sequence
from random import Random

import numpy as np

from model.cutting.boards.pattern import Pattern
from model.cutting.boards.search import Search
from model.cutting.lengths.master import Column, Floats

NEW = 1e-7  # a column must promise this much of the dearest board to be worth adding


def fill_by_worth(search: Search, worth: Floats, start: Sequence[Column[Pattern]] = ()) -> None:
    """Board after board, each the worthiest for its cost of what is still wanted."""
    boards = search.question.boards
    left = np.array(search.question.demand)
    have = [board.quantity for board in boards]
    chosen: list[Column[Pattern]] = []
    for column in start:
        left = np.maximum(left - np.array(column.counts), 0)
        have[column.source] = _less(have[column.source])
        chosen.append(column)
    while left.any() and not search.stop():
        never = [np.inf if count == 0 else 0.0 for count in have]
        prices = search.pricing.prices(worth, left.tolist())
        columns = search.pricing.columns(prices, left.tolist(), never)
        usable = [column for column in columns if any(column.counts)]
        if not usable:
            break
        best = min(usable, key=lambda each: (_rate(search, each, worth), each.source))
        search.master.add(best)
        chosen.append(best)
        have[best.source] = _less(have[best.source])
        left = left - np.array(best.counts)
    search.offer(each.what for each in chosen)


def varied_fills(search: Search, worth: Floats, tries: int, seed: int = 1) -> None:
    """Fill again and again with the worth shaken a little."""
    random = Random(seed)
    for number in range(tries):
        if search.is_done:
            return
        shake = [1 + (0.3 * random.random() - 0.15) * (number > 0) for _ in worth]
        fill_by_worth(search, worth * np.array(shake))


def generate(search: Search, rounds: int) -> None:
    """Columns until no more would lower the cost; leaves behind what each lot is worth."""
    ask, master = search.question, search.master
    quantity = [board.quantity for board in ask.boards]
    for _ in range(rounds):
        priced = master.priced(ask.demand, quantity)
        search.worth, search.relaxed = priced.worth, priced.value
        if search.stop():
            break
        prices = search.pricing.prices(priced.worth, ask.demand)
        columns = search.pricing.columns(prices, ask.demand, least_of(search))
        if not any([master.add(column) for column in columns]):
            break


def whole_columns(search: Search, node_limit: int, gap: float) -> None:
    """The best plan of the columns found so far."""
    whole = search.master.chosen(node_limit, gap)
    if whole is not None:
        search.offer(used_columns(search.master.columns, whole.used))


def used_columns(columns: Sequence[Column[Pattern]], used: Sequence[int]) -> list[Pattern]:
    """The boards of a whole plan."""
    return [column.what for column, times in zip(columns, used, strict=True) for _ in range(times)]


def least_of(search: Search) -> list[float]:
    """What a column of each board must be worth to be of use at all."""
    return [source.cost / search.master.dearest + NEW for source in search.master.sources]


def _rate(search: Search, column: Column[Pattern], worth: Floats) -> float:
    cost = search.question.boards[column.source].cost / search.master.dearest
    return (cost + 1e-6) / float(np.dot(worth, column.counts))


def _less(have: int | None) -> int | None:
    return None if have is None else have - 1
