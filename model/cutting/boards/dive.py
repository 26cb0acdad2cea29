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
from model.cutting.boards.parts import cheapest_rest, is_short
from model.cutting.boards.pattern import Pattern
from model.cutting.boards.search import Search, without_extra
from model.cutting.boards.small import ENDLESS
from model.cutting.lengths.master import Column, Ints, Master, Priced, Source

ROUNDS = 6  # of column generation after each board that is fixed
NEARLY = 1.04  # times the best plan: what is dearer is not finished


def dive(
    search: Search, kept: Sequence[Column[Pattern]] = (), skip: int = 0
) -> tuple[Pattern, ...] | None:
    """One plan, from the boards that are `kept` on; a rest that is short enough is solved exactly.

    The first board fixed is the surest, or with `skip` one further down. A plan is nothing where it
    promises to be much dearer than the best.
    """
    fixed = list(kept)
    budget = _enough(search)
    while not search.stop():
        wanted = _wanted(search, fixed)
        if not wanted.any():
            return _offered(search, fixed, ())
        if is_short(wanted):
            return _finished(search, fixed, wanted, budget)
        part = remaining(search, fixed)
        priced = relaxed(search, part, ROUNDS)
        spent = sum(search.price(each.source) for each in fixed)
        if priced.missing.max() > 1e-6 or spent + _value(search, part, priced) >= budget:
            return None
        fixed += _surest(part, priced, skip if len(fixed) == len(kept) else 0)
    return None


def dive_again(search: Search, random: Random) -> tuple[Pattern, ...] | None:
    """Boards of the best plan are kept at random, about half of them, and the rest made anew."""
    share = random.choice((0.3, 0.45, 0.6))
    kept = [each for each in _columns(search) if random.random() < share]
    return dive(search, kept, skip=random.choice((0, 0, 1, 2)))


def _finished(
    search: Search, fixed: Sequence[Column[Pattern]], wanted: Ints, budget: float
) -> tuple[Pattern, ...] | None:
    spent = sum(search.price(each.source) for each in fixed)
    used = [each.source for each in fixed]
    rest = cheapest_rest(search, used, wanted, budget - spent)
    return None if rest is None else _offered(search, fixed, rest)


def _offered(
    search: Search, fixed: Sequence[Column[Pattern]], rest: Sequence[Pattern]
) -> tuple[Pattern, ...]:
    plan = without_extra((*(each.what for each in fixed), *rest), search.question.demand)
    search.offer(plan)
    return plan


def _wanted(search: Search, fixed: Sequence[Column[Pattern]]) -> Ints:
    left: Ints = np.array(search.question.demand, dtype=np.int64)
    for column in fixed:
        left = left - np.array(column.counts)
    return np.maximum(left, 0)


def _value(search: Search, part: Master[Pattern], priced: Priced) -> float:
    return priced.value * part.dearest / search.master.dearest


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
    have = [board.quantity for board in ask.boards]
    for column in fixed:
        quantity = have[column.source]
        have[column.source] = None if quantity is None else quantity - 1
    sources = tuple(
        Source(board.cost, quantity, board.own_cost)
        for board, quantity in zip(ask.boards, have, strict=True)
    )
    part: Master[Pattern] = Master(tuple(_wanted(search, fixed).tolist()), sources)
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
    """The columns to fix: all that are whole, or the one that is used most."""
    order = np.argsort(-priced.used, kind="stable").tolist()
    used = [number for number in order if priced.used[number] > 1e-6]
    whole = [number for number in used if priced.used[number] > 1 - 1e-6]
    if whole and not skip:
        return [part.columns[number] for number in whole]
    return [part.columns[(used[skip:] or used[-1:])[0]]]


def _enough(search: Search) -> float:
    """A plan that costs as much is of no use, not even to be improved."""
    if any(search.missing):
        return ENDLESS
    return NEARLY * sum(search.price(each.board) for each in search.patterns)
