"""Whole plans out of the relaxation: fix the surest board, price the rest anew, and so on.

The patterns for what is left are made for what is left, which those of the relaxation are not.
Source: diving heuristics of column generation, as in Sadykov, Vanderbeck, Pessoa, Tahiri, Uchoa,
Primal heuristics for branch and price, INFORMS Journal on Computing 31(2), 2019 (from memory).
"""

from __future__ import annotations

from collections.abc import Sequence
from random import Random

import numpy as np

from model.cutting.boards.generate import NEW
from model.cutting.boards.pattern import Pattern
from model.cutting.boards.search import Search
from model.cutting.lengths.master import Column, Master, Priced, Source

ROUNDS = 8  # of column generation after each board that is fixed
LOOKED_AT = 3  # boards that might be fixed next, each tried by its relaxation


def dive(search: Search, kept: Sequence[Column[Pattern]] = (), skip: int = 0) -> None:
    """One plan, from the boards that are `kept` on. The first board fixed is the surest, or with
    `skip` one further down.
    """
    fixed = list(kept)
    while not search.stop():
        part = remaining(search, fixed)
        if not any(part.demand):
            break
        priced = relaxed(search, part, ROUNDS)
        spent = sum(search.question.boards[each.source].cost for each in fixed)
        if priced.missing.max() > 1e-6 or spent + priced.value * part.dearest >= _enough(search):
            return
        fixed += _surest(part, priced, skip if len(fixed) == len(kept) else 0)
    search.offer(each.what for each in fixed)


def dive_again(search: Search, times: int, seed: int = 5) -> None:
    """Boards of the best plan are kept at random, about half of them, and the rest made anew."""
    random = Random(seed)
    for _ in range(times):
        if search.is_done or len(search.patterns) < 2:
            return
        share = random.choice((0.3, 0.45, 0.6))
        kept = [each for each in _columns(search) if random.random() < share]
        dive(search, kept, skip=random.choice((0, 0, 1, 2)))


def _columns(search: Search) -> list[Column[Pattern]]:
    """The best plan's boards."""
    lots = range(len(search.question.demand))
    return [
        Column(each.board, tuple(each.counts[lot] for lot in lots), each)
        for each in search.patterns
    ]


def remaining(search: Search, fixed: Sequence[Column[Pattern]]) -> Master[Pattern]:
    """What is still wanted once some boards are fixed, what is there for it, and the columns."""
    ask = search.question
    left = np.array(ask.demand)
    have = [board.quantity for board in ask.boards]
    for column in fixed:
        left = left - np.array(column.counts)
        quantity = have[column.source]
        have[column.source] = None if quantity is None else quantity - 1
    sources = tuple(
        Source(board.cost, quantity, board.own_cost)
        for board, quantity in zip(ask.boards, have, strict=True)
    )
    part: Master[Pattern] = Master(tuple(np.maximum(left, 0).tolist()), sources)
    for column in search.master.columns:
        if have[column.source] != 0:
            part.add(column)
    return part


def relaxed(search: Search, part: Master[Pattern], rounds: int) -> Priced:
    """The relaxation of what is left, with columns made for it; the whole search learns them."""
    quantity = [source.quantity for source in part.sources]
    there = [number for number, count in enumerate(quantity) if count != 0]
    priced = part.priced(part.demand, quantity)
    for _ in range(rounds):
        prices = search.pricing.prices(priced.worth, part.demand, there)
        costs = [source.cost / part.dearest for source in part.sources]
        found = search.pricing.columns(prices, part.demand, (costs + priced.rent + NEW).tolist())
        if not any([part.add(column) for column in found]):
            break
        for column in found:
            search.master.add(column)
        priced = part.priced(part.demand, quantity)
    return priced


def _surest(part: Master[Pattern], priced: Priced, skip: int) -> list[Column[Pattern]]:
    """The columns to fix: all that are whole, or of those used most the one that leaves the
    cheapest rest.
    """
    order = np.argsort(-priced.used, kind="stable").tolist()
    used = [number for number in order if priced.used[number] > 1e-6]
    whole = [number for number in used if priced.used[number] > 1 - 1e-6]
    if whole and not skip:
        return [part.columns[number] for number in whole]
    looked_at = used[skip : skip + LOOKED_AT] or used[-1:]
    return [part.columns[min(looked_at, key=lambda number: (_after(part, number), number))]]


def _after(part: Master[Pattern], number: int) -> float:
    """What the relaxation costs once a column is used."""
    column = part.columns[number]
    left = np.maximum(np.array(part.demand) - np.array(column.counts), 0)
    have = [source.quantity for source in part.sources]
    quantity = have[column.source]
    have[column.source] = None if quantity is None else quantity - 1
    own = part.sources[column.source].cost / part.dearest
    return own + part.priced(left.tolist(), have).value


def _enough(search: Search) -> float:
    """A plan that costs as much is of no use."""
    return float(search.cost) if not any(search.missing) else float("inf")
