"""One door to all planners: a task goes in, the best plan found so far comes out."""

from __future__ import annotations

from collections.abc import Callable

from model.cutting.boards.plan import board_plan
from model.cutting.lengths.plan import length_plan
from model.cutting.record import Effort, Kind, Plan, Task
from model.cutting.sheets.plan import sheet_plan

Better = Callable[[Plan], None]
Stop = Callable[[], bool]

AT_ONCE = Effort(tries=12, moves=0, nodes=0, racks=0)
USUAL = Effort()

_PLANNERS: dict[Kind, Callable[[Task, Effort, Better, Stop], Plan]] = {
    "sheets": sheet_plan,
    "boards": board_plan,
    "lengths": length_plan,
}


def first_plan(task: Task) -> Plan:
    """A sound plan at once (under 100 ms for 80 parts), never worse than a simple shelf rule."""
    return plan(task, AT_ONCE)


def plan(
    task: Task,
    effort: Effort = USUAL,
    better: Better = lambda _: None,
    stop: Stop = lambda: False,
) -> Plan:
    """The best plan found; each better one on the way is told to `better`, the first at once.

    `stop` is asked often; once it says yes, the best plan so far is the answer. What cannot be
    cut at all is in `left_out` with a sentence; nothing is raised for it.
    """
    return _PLANNERS[task.kind](task, effort, better, stop)
