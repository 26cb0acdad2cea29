"""Plans of boards: a shelf plan at once, then patterns chosen together for the whole rack."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np

from model.cutting.boards.bound import tighten
from model.cutting.boards.dive import dive, dive_again
from model.cutting.boards.generate import generate, varied_fills, whole_columns
from model.cutting.boards.rack import Board, measure, rack, unit
from model.cutting.boards.reasons import holds, reasons
from model.cutting.boards.search import Question, Search
from model.cutting.boards.shelf import MANNERS, shelf
from model.cutting.boards.small import solve_small
from model.cutting.boards.tree import layouts
from model.cutting.lengths.lots import Lot, at_least, lots
from model.cutting.record import Effort, Plan, Task

ROUNDS = 100  # of column generation
MOVES_A_DIVE = 300  # a dive takes as long as so many small changes

TWO_WAYS = "any plan of rips then crosscuts, or crosscuts then rips, board by board"
AROUND_BAD = TWO_WAYS + ", around bad spans or between those that are crosscut out"


def board_plan(
    task: Task, effort: Effort, better: Callable[[Plan], None], stop: Callable[[], bool]
) -> Plan:
    """The best plan found; each better one on the way is told to `better`, the first at once."""
    sizes = lots(task)
    boards = rack(task, min((lot.across for lot in sizes), default=0))
    demand = tuple(lot.demand if _fits(lot, boards) else 0 for lot in sizes)
    question = Question(sizes, boards, at_least(task.kerf), demand)
    search = Search(question, lambda found: better(_plan(task, found)), stop)
    search.first_bound()
    for manner in MANNERS[: max(1, effort.tries)]:
        search.offer(shelf(boards, sizes, demand, question.kerf, manner)[0])
    search.first_bound()
    if any(demand) and effort.nodes:
        _improve(search, effort)
    return _plan(task, search)


def _improve(search: Search, effort: Effort) -> None:
    area = np.array([lot.area for lot in search.question.sizes], dtype=np.float64)
    varied_fills(search, area / area.max(), 1)
    if search.is_done:
        return
    solve_small(search, effort.nodes)
    if search.is_done:
        return
    generate(search, ROUNDS)
    tighten(search, rounds=12, steps=12)
    varied_fills(search, search.worth + 1e-9, 1)
    for skip in range(2):
        dive(search, skip=skip)
    whole_columns(search, effort.nodes // 8, gap=0.001)
    dive_again(search, effort.moves // MOVES_A_DIVE)
    whole_columns(search, effort.nodes // 8, gap=0.001)


def _fits(lot: Lot, boards: tuple[Board, ...]) -> bool:
    return any(holds(blank, lot) for board in boards for form in board.forms for blank in form)


def _plan(task: Task, search: Search) -> Plan:
    question = search.question
    missing = tuple(
        lot.demand - wanted + gone
        for lot, wanted, gone in zip(question.sizes, question.demand, search.missing, strict=True)
    )
    is_any = search.cost <= search.any_bound or search.bound <= search.any_bound
    two_ways = AROUND_BAD if any(stock.bad for stock in task.stock) else TWO_WAYS
    return Plan(
        task=task,
        layouts=layouts(task, question.boards, question.sizes, search.patterns),
        left_out=reasons(question.boards, question.sizes, missing),
        measure=measure(task.stock),
        value=search.cost / unit(task.stock),
        lower_bound=min(search.bound, search.cost) / unit(task.stock),
        covers="any plan" if is_any else two_ways,
    )
