"""The cutting plans of a bed: one for each task, the stored one where the maker has accepted it."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace

from model.bed import Bed
from model.cutting.plan import AT_ONCE, USUAL, Stop, plan
from model.cutting.record import Effort, Plan, Task
from model.shop.remembered import Remembered
from model.shop.tasks import CutTask
from model.shop.tracking_rest import OnTask, going
from model.units import Mm

_REMEMBERED = 400  # plans: a bed has about ten tasks, so some forty beds of an afternoon


@dataclass(frozen=True, kw_only=True)
class CutPlan:
    """How one material in one thickness is cut; `is_stored` where it is the plan in use that the
    design keeps. `notes` are sentences for the maker, the plan's own among them.
    """

    key: str
    material: str
    material_name: str
    thickness: Mm
    plan: Plan
    is_stored: bool = False
    notes: tuple[str, ...] = ()

    @property
    def sold_width(self) -> Mm | None:
        """How wide its boards are where they are used at the width they are sold in: plans of one
        thickness are told apart by it.
        """
        task = self.plan.task
        return task.stock[0].width if task.kind == "lengths" and task.stock else None


Improved = Callable[[CutPlan], None]


def first_plans(bed: Bed) -> tuple[CutPlan, ...]:
    """Sound plans at once, to be improved."""
    return plans(bed, AT_ONCE)


def plans(
    bed: Bed,
    effort: Effort = USUAL,
    better: Improved = lambda _: None,
    stop: Stop = lambda: False,
) -> tuple[CutPlan, ...]:
    """The plan of every task. Each better one on the way is told to `better`; `stop` is asked
    often, and what it stops has the best plan so far.

    A plan that the design keeps is taken as it is, as long as it holds. What was cut before the
    design changed comes before the plan for the rest.
    """
    return tuple(
        each
        for on_task in going(bed).tasks
        for each in (*_begun(on_task), *_planned(on_task, effort, better, stop))
    )


def still_to_cut(bed: Bed) -> tuple[CutTask, ...]:
    """The tasks as they now stand: what is cut already and serves is not in them."""
    return tuple(each.task for each in going(bed).tasks if each.kept or each.task.task.pieces)


def cut_plan(task: CutTask, plan: Plan, is_stored: bool = False) -> CutPlan:
    """A plan with what its task is about."""
    return CutPlan(
        key=task.key,
        material=task.material,
        material_name=task.material_name,
        thickness=task.thickness,
        plan=plan,
        is_stored=is_stored,
        notes=(*task.notes, *plan.notes),
    )


def _begun(on_task: OnTask) -> Iterator[CutPlan]:
    """Boards and sheets that were begun before the design changed, as they were cut."""
    for begun in on_task.begun:
        yield cut_plan(replace(on_task.task, key=begun.task.name), begun, is_stored=True)


def _planned(on_task: OnTask, effort: Effort, better: Improved, stop: Stop) -> Iterator[CutPlan]:
    """The plan in use, or the best; none where all is cut."""
    task = on_task.task
    if on_task.kept is not None:
        found = cut_plan(task, on_task.kept, is_stored=True)
        better(found)
        yield found
    elif task.task.pieces:
        yield cut_plan(task, best_plan(task, effort, better, stop))


def best_plan(
    task: CutTask, effort: Effort = USUAL, better: Improved = lambda _: None,
    stop: Stop = lambda: False,
) -> Plan:  # fmt: skip
    """The best plan that a search finds for a task, whatever is stored; once found, remembered."""
    known = _PLANS.get((task.task, effort))
    if known is not None:
        better(cut_plan(task, known))
        return known
    stopped = False

    def asked() -> bool:
        nonlocal stopped
        stopped = stopped or stop()
        return stopped

    found = plan(task.task, effort, lambda each: better(cut_plan(task, each)), asked)
    if not stopped:  # half a search is not what the next one asks for
        _PLANS.keep((task.task, effort), found)
    return found


_PLANS: Remembered[tuple[Task, Effort], Plan] = Remembered(_REMEMBERED)
