"""Plans of sticks: a first one at once, then bounds and exact methods until it is proven."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np

from model.cutting.lengths.costs import kinds as kinds_of
from model.cutting.lengths.costs import measure, unit
from model.cutting.lengths.fill import first_fit
from model.cutting.lengths.generate import dive, generate, varied_fills, whole_columns
from model.cutting.lengths.lots import Lot, at_least, lots
from model.cutting.lengths.patterns import solve_all
from model.cutting.lengths.reasons import reasons
from model.cutting.lengths.search import Question, Search
from model.cutting.lengths.sticks import Kind, layouts
from model.cutting.record import Effort, Plan, Task

ROUNDS = 300  # of column generation; what a maker asks for takes 10 to 40
FIRST_FILLS = 4
TRIES_A_FILL = 20  # a filled plan takes as long as so many simple ones


def length_plan(
    task: Task, effort: Effort, better: Callable[[Plan], None], stop: Callable[[], bool]
) -> Plan:
    """The best plan found; each better one on the way is told to `better`, the first at once."""
    sizes, kinds, kerf = lots(task, across_matters=False), kinds_of(task), at_least(task.kerf)
    demand = tuple(lot.demand if _fits(lot, kinds) else 0 for lot in sizes)
    question = Question(sizes, kinds, kerf, demand)
    search = Search(question, lambda found: better(_plan(task, found)), stop)
    search.first_bound()
    search.offer(first_fit(kinds, sizes, demand, kerf)[0])
    if any(demand):
        _improve(search, effort)
    return _plan(task, search)


def _improve(search: Search, effort: Effort) -> None:
    tries = effort.tries // TRIES_A_FILL
    worth = np.array(search.question.weights) / max(search.question.weights)
    varied_fills(search, worth, min(tries, FIRST_FILLS))
    if search.is_done or not effort.nodes:
        return
    generate(search, ROUNDS)
    methods: tuple[Callable[[], None], ...] = (
        lambda: varied_fills(search, search.worth + 1e-9, tries // 2, seed=2),
        lambda: whole_columns(search, effort.nodes),
        lambda: solve_all(search, effort.nodes),
        lambda: dive(search, rounds=10),
        lambda: varied_fills(search, worth, tries, seed=3),
        lambda: whole_columns(search, effort.nodes),
    )
    for method in methods:
        if search.is_done:
            return
        method()


def _fits(lot: Lot, kinds: tuple[Kind, ...]) -> bool:
    return any(high - low >= lot.along for kind in kinds for low, high in kind.segments)


def _plan(task: Task, search: Search) -> Plan:
    question = search.question
    missing = tuple(
        lot.demand - wanted + gone
        for lot, wanted, gone in zip(question.sizes, question.demand, search.missing, strict=True)
    )
    return Plan(
        task=task,
        layouts=layouts(task, question.kinds, question.sizes, search.sticks),
        left_out=reasons(question.kinds, question.sizes, missing),
        measure=measure(task.stock),
        value=search.cost / unit(task.stock),
        lower_bound=min(search.bound, search.cost) / unit(task.stock),
    )
