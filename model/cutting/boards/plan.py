"""Plans of boards: a shelf plan at once, then patterns chosen together for the whole rack."""

from __future__ import annotations

from collections.abc import Callable
from random import Random

import numpy as np

from model.cutting.boards.bound import tighten
from model.cutting.boards.dive import dive, dive_again
from model.cutting.boards.generate import fill_by_worth, generate
from model.cutting.boards.parts import improve_parts
from model.cutting.boards.rack import Board, measure, rack, unit
from model.cutting.boards.reasons import holds, reasons
from model.cutting.boards.search import Question, Search
from model.cutting.boards.sets import bound_by_sets
from model.cutting.boards.shelf import MANNERS, shelf
from model.cutting.boards.small import solve_small
from model.cutting.boards.tree import layouts
from model.cutting.lengths.lots import Lot, at_least, lots
from model.cutting.record import Effort, Plan, Task

ROUNDS = 100  # of column generation
MOVES_A_START = 1000  # a plan from scratch and its parts take as long as so many small changes
FRESH = 3  # plans that begin with no board of the best
PARTS = 10  # of each plan made from scratch, that are made anew
NODES_A_SET = 50  # of the effort: one condition for sets of boards
PAIRS_A_NODE = 24_000  # of the effort: work on the bound, for all boards and again for sets
STEPS = 3  # of cutting planes, in a close look
SEED = 5

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
    fill_by_worth(search, area / area.max())
    if search.is_done:
        return
    generate(search, ROUNDS)
    solve_small(search)
    if not search.is_done:
        work, starts = effort.nodes * PAIRS_A_NODE, 1 + effort.moves // MOVES_A_START
        # The first plans are made while columns still differ, the others from sharp prices.
        for share, rounds, some in ((4, 2, (starts + 1) // 2), (1, ROUNDS, starts // 2)):
            search.work = work // share
            tighten(search, rounds, STEPS)
            _make_starts(search, some)
        search.work = work
        bound_by_sets(search, effort.nodes // NODES_A_SET, ROUNDS)


def _make_starts(search: Search, starts: int) -> None:
    """Plans from the relaxation, each with parts made anew; later ones begin with boards of the
    best.
    """
    random = Random(SEED)
    for start in range(starts):
        if search.is_done:
            return
        plan = dive(search, skip=start) if start < FRESH else dive_again(search, random)
        improve_parts(search, plan or search.patterns, PARTS, random)


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
