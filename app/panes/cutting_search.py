"""One search for cutting plans beside the window: first plans, then better ones, task by task."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import TYPE_CHECKING, NamedTuple

from PySide6.QtCore import QObject, Signal

from app.panes.breath import Breath

if TYPE_CHECKING:
    from model.bed import Bed, Design
    from model.cutting.record import Plan
    from model.drawings.cut_names import CutNames
    from model.drawings.cut_steps import SawnPlan
    from model.shop.plans import CutPlan
    from model.shop.tasks import CutTask
    from model.shop.tracking_fit import Fit, Recut


class Ways(NamedTuple):
    """How cuts are planned and kept."""

    tasks: Callable[[Bed], Sequence[CutTask]]
    first: Callable[[Bed], Sequence[CutPlan]]
    best: Callable[..., Plan]
    keep: Callable[[Bed, CutPlan], Design]
    tick: Callable[[Bed, CutPlan, str, bool], Design]
    fit: Callable[[Bed], Fit]
    recut: Callable[[Bed, Recut], Design]


def built_in_ways() -> Ways:
    """The model's own, imported when the pane is first looked at."""
    from model.shop import plans, tracking

    return Ways(
        plans.still_to_cut, plans.first_plans, plans.best_plan, tracking.accepted, tracking.ticked,
        tracking.outdated, tracking.recut,
    )  # fmt: skip


class Search(Breath):
    """One search for the plans of one bed: what it shares between the window and its thread.

    It `goes_on` after the first plans, or not; `is_over` once all are found.
    """

    def __init__(self, bed: Bed, unit: str, goes_on: bool = True) -> None:
        super().__init__()
        self.bed, self.unit, self.goes_on = bed, unit, goes_on
        self.is_over = False

    def answers(self, bed: Bed, unit: str) -> bool:
        """Whether it is the search for this bed, and has found all or goes on."""
        is_same = self.bed is bed and self.unit == unit
        return is_same and (self.is_over or not self.is_stopped)


class First(NamedTuple):
    """Names and first plans, in the order of the parts list; and what of the pieces that are cut
    still serves, None while none is.
    """

    names: CutNames
    plans: tuple[SawnPlan, ...]
    fit: Fit | None = None


class Found(QObject):
    """Carries what is found on the way from the search's thread to the window's."""

    first = Signal(object, object)  # the search, First
    better = Signal(object, object)  # the search, SawnPlan
    reached = Signal(object, int, int)  # the search, which task of how many


def look(search: Search, ways: Ways, found: Found) -> None:
    """Find plans, tell each as it is found, and leave off as soon as the search is stopped."""
    from model.drawings.cut_names import cut_names
    from model.drawings.cut_steps import sawn_plan

    bed, unit = search.bed, search.unit
    first = tuple(sawn_plan(each, unit) for each in ways.first(bed))
    fit = ways.fit(bed) if bed.design.progress.parts else None
    found.first.emit(search, First(cut_names(bed), first, fit))
    tasks = ways.tasks(bed)
    for place, task in enumerate(tasks):
        if search.stops() or not search.goes_on:
            return
        found.reached.emit(search, place + 1, len(tasks))
        ways.best(
            task,
            better=lambda cut: found.better.emit(search, sawn_plan(cut, unit)),
            stop=search.stops,
        )
    search.is_over = not search.is_stopped  # what was broken off is looked for again
