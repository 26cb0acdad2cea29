"""Methods that look for boards: by worth, column generation, whole columns, diving."""

from __future__ import annotations

from collections.abc import Sequence
from random import Random

import numpy as np

from model.cutting.boards.pattern import Pattern
from model.cutting.boards.search import Search
from model.cutting.lengths.master import Column, Floats

MOST_COLUMNS = 400  # that an exact solver gets through
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
    for _ in range(rounds):
        search.relax()
        if search.stop():
            break
        prices = search.pricing.prices(search.worth, ask.demand)
        least = [search.charge(number) + NEW for number in range(len(ask.boards))]
        columns = search.pricing.columns(prices, ask.demand, least)
        if not any([master.add(column) for column in columns]):
            break


def whole_columns(search: Search, node_limit: int, gap: float) -> None:
    """The best plan of those columns found so far that a better plan can use at all."""
    quantity = [board.quantity for board in search.question.boards]
    priced = search.master.priced(search.question.demand, quantity)
    over = search.cost / search.master.dearest - priced.value
    part = search.master if any(search.missing) else search.master.near(priced, over, MOST_COLUMNS)
    whole = part.chosen(node_limit, gap)
    if whole is not None:
        search.offer(used_columns(part.columns, whole.used))


def used_columns(columns: Sequence[Column[Pattern]], used: Sequence[int]) -> list[Pattern]:
    """The boards of a whole plan."""
    return [column.what for column, times in zip(columns, used, strict=True) for _ in range(times)]


def _rate(search: Search, column: Column[Pattern], worth: Floats) -> float:
    cost = search.question.boards[column.source].cost / search.master.dearest
    return (cost + 1e-6) / float(np.dot(worth, column.counts))


def _less(have: int | None) -> int | None:
    return None if have is None else have - 1
