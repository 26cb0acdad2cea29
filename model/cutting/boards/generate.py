"""Methods that look for boards: by worth, and column generation."""

from __future__ import annotations

import numpy as np

from model.cutting.boards.pattern import Pattern
from model.cutting.boards.search import Search
from model.cutting.lengths.master import Column, Floats, fine

NEW = 1e-7  # a column must promise this much of the dearest board to be worth adding


def fill_by_worth(search: Search, worth: Floats) -> None:
    """Board after board, each the worthiest for its cost of what is still wanted."""
    boards = search.question.boards
    left = np.array(search.question.demand)
    have = [board.quantity for board in boards]
    chosen: list[Column[Pattern]] = []
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
    learn(search)


def learn(search: Search) -> None:
    """The bound that follows from what lots are worth now."""
    whole = fine(search.worth)
    prices = search.pricing.prices(whole, search.question.demand)
    search.learn(whole, [int(most) for most in prices.most])


def _rate(search: Search, column: Column[Pattern], worth: Floats) -> float:
    cost = search.question.boards[column.source].cost / search.master.dearest
    return (cost + 1e-6) / float(np.dot(worth, column.counts))


def _less(have: int | None) -> int | None:
    return None if have is None else have - 1
