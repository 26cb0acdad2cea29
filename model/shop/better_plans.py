"""Better plans than those that the design keeps: found, told, and taken only when asked."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from model.bed import Bed
from model.cutting.merit import gain_words, is_better
from model.cutting.plan import USUAL, Stop
from model.cutting.record import Effort
from model.shop.plans import CutPlan, best_plan, cut_plan
from model.shop.tracking_rest import going, is_begun


@dataclass(frozen=True, kw_only=True)
class BetterPlan:
    """A plan that is better than the kept one of its task; `gain` tells in what first."""

    cut: CutPlan
    gain: str


def better_plans(
    bed: Bed, effort: Effort = USUAL, stop: Stop = lambda: False
) -> tuple[BetterPlan, ...]:
    """What a search finds that is better than the kept plans; a plan of which a cut is made keeps
    its place. Takes as long as if no plan were kept.
    """
    return tuple(_found(bed, effort, stop))


def _found(bed: Bed, effort: Effort, stop: Stop) -> Iterator[BetterPlan]:
    now = going(bed)
    for each in now.tasks:
        if each.kept is None or is_begun(now.progress, each.kept):
            continue
        best = best_plan(each.task, effort, stop=stop)
        if is_better(best, each.kept):
            yield BetterPlan(cut=cut_plan(each.task, best), gain=gain_words(best, each.kept))
