"""Plans of boards: a shelf plan at once, then patterns chosen together for the whole rack."""

from __future__ import annotations

from collections.abc import Callable

from model.cutting.boards.pattern import Pattern
from model.cutting.boards.rack import measure, rack, unit
from model.cutting.boards.reasons import reasons
from model.cutting.boards.shelf import MANNERS, shelf
from model.cutting.boards.tree import layouts
from model.cutting.lengths.lots import at_least, lots
from model.cutting.record import Effort, Plan, Task


def board_plan(
    task: Task, effort: Effort, better: Callable[[Plan], None], stop: Callable[[], bool]
) -> Plan:
    """The best plan found; each better one on the way is told to `better`, the first at once."""
    sizes, kerf = lots(task), at_least(task.kerf)
    boards = rack(task, min((lot.across for lot in sizes), default=0))
    demand = tuple(lot.demand for lot in sizes)
    made: list[tuple[int, int, int, tuple[Pattern, ...], tuple[int, ...]]] = []
    for manner in MANNERS[: max(1, effort.tries)]:
        patterns, missing = shelf(boards, sizes, demand, kerf, manner)
        lost = sum(m * lot.area for m, lot in zip(missing, sizes, strict=True))
        made.append(
            (lost, sum(boards[p.board].cost for p in patterns), len(made), patterns, missing)
        )
    _, cost, _, patterns, missing = min(made)
    plan = Plan(
        task=task,
        layouts=layouts(task, boards, sizes, patterns),
        left_out=reasons(boards, sizes, missing),
        measure=measure(task.stock),
        value=cost / unit(task.stock),
    )
    better(plan)
    return plan
