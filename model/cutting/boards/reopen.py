"""A plan made better by opening a few of its boards again, together with all unused ones."""

from __future__ import annotations

from collections.abc import Sequence
from random import Random

import numpy as np

from model.cutting.boards.generate import used_columns
from model.cutting.boards.pattern import Pattern
from model.cutting.boards.search import Search
from model.cutting.lengths.master import Column, Master, Source

ROUNDS = 6  # of column generation for what is opened
NODES = 200  # of the exact solver for what is opened


def reopen(search: Search, moves: int, seed: int = 5) -> None:
    """Some boards of the best plan, cut anew; kept where it costs less."""
    random = Random(seed)
    for _ in range(moves):
        if search.is_done or len(search.patterns) < 2:
            return
        count = min(len(search.patterns), random.choice((2, 3, 3, 4, 4, 5)))
        opened = set(random.sample(range(len(search.patterns)), count))
        _cut_anew(search, opened)


def _cut_anew(search: Search, opened: set[int]) -> None:
    kept = [each for number, each in enumerate(search.patterns) if number not in opened]
    part = _part(search, kept)
    cost = sum(search.question.boards[search.patterns[number].board].cost for number in opened)
    relaxed = _relaxed(search, part)
    if relaxed * part.dearest >= cost * (1 - 1e-9):
        return
    whole = part.chosen(NODES, gap=1e-4)
    if whole is not None:
        for column in part.columns:
            search.master.add(column)
        search.offer(kept + used_columns(part.columns, whole.used))


def _part(search: Search, kept: Sequence[Pattern]) -> Master[Pattern]:
    """What is still wanted once some boards are kept, and what is there for it."""
    ask = search.question
    left = np.array(ask.demand)
    have = [board.quantity for board in ask.boards]
    for pattern in kept:
        for lot, count in pattern.counts.items():
            left[lot] -= count
        quantity = have[pattern.board]
        have[pattern.board] = None if quantity is None else quantity - 1
    sources = tuple(
        Source(board.cost, quantity, board.own_cost)
        for board, quantity in zip(ask.boards, have, strict=True)
    )
    part: Master[Pattern] = Master(tuple(np.maximum(left, 0).tolist()), sources)
    for column in search.master.columns:
        if have[column.source] != 0:
            part.add(column)
    return part


def _relaxed(search: Search, part: Master[Pattern]) -> float:
    """Columns for what is opened, and what their linear relaxation costs in the end."""
    quantity = [source.quantity for source in part.sources]
    least = [
        np.inf if source.quantity == 0 else source.cost / part.dearest + 1e-7
        for source in part.sources
    ]
    value = 0.0
    for _ in range(ROUNDS):
        priced = part.priced(part.demand, quantity)
        value = priced.value
        prices = search.pricing.prices(priced.worth, part.demand)
        columns: list[Column[Pattern]] = search.pricing.columns(prices, part.demand, least)
        if not any([part.add(column) for column in columns]):
            break
    return value
