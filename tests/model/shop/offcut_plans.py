"""Plans of the guest room that leave offcuts of sizes that a test names."""

from __future__ import annotations

from dataclasses import replace
from functools import cache

from model.bed import Bed, solve
from model.cutting.record import Box, Layout, Plan, Region, Stock
from model.designs import read
from model.shop.plans import CutPlan, cut_plan
from model.shop.tasks import tasks
from tests.model.cost.beds import FOLDER
from tests.model.cost.plain_plans import one_each

# Three blocks R1 and three R2, 160 x 51 mm as sawn, are milled as three strips of two with a kerf
# of 3.2 mm between: 323.2 mm long. Side by side they are 3 x 51 + 2 x 3.2 = 159.4 mm wide.
LONG, WIDE = 323.2, 159.4
THIN, THICK, OTHER = "european_oak-31.75", "european_oak-38.1", "european_oak-25.4"


@cache
def guest_room() -> Bed:
    return solve(read(FOLDER / "guest_room_double.bedwright"))


def plan_of(bed: Bed, key: str) -> CutPlan:
    """Every piece on a board of its own; nothing of it is worth keeping."""
    task = next(each for each in tasks(bed) if each.key == key)
    return cut_plan(task, one_each(task.task))


def leaving(plan: CutPlan, *sizes: tuple[float, float], bad: tuple[Box, ...] = ()) -> CutPlan:
    """The plan of a thicker class, of which these offcuts are left and nothing else is told."""
    layouts = tuple(
        Layout(
            number=number,
            stock=Stock(key=f"board {number}", length=long, width=wide, bad=bad),
            tree=Region(x=0, y=0, length=long, width=wide, use="offcut"),
        )
        for number, (long, wide) in enumerate(sizes, 1)
    )
    return replace(plan, plan=Plan(task=plan.plan.task, layouts=layouts))
