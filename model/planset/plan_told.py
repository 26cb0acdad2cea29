"""A cutting plan in a few sentences, for somebody who saws by it and has stock of their own."""

from __future__ import annotations

from collections.abc import Iterator

from model.brief.words import in_unit
from model.cutting.record import Plan
from model.drawings.cut_steps import SawnPlan
from model.drawings.plan_words import counted, left_out_words, offcut_words, settings_count

_CUT = {
    "sheets": "layout of straight cuts through the sheet",
    "boards": "layout of rips then crosscuts, or of crosscuts then rips,",
    "lengths": "layout of crosscuts",
}


def plan_told(sawn: SawnPlan, unit: str) -> Iterator[str]:
    """What is left out, how much it takes, and how good that is known to be."""
    plan = sawn.cut.plan
    yield from left_out_words(plan, unit)
    if not plan.layouts:
        return
    yield _takes(sawn, plan)
    settings, cuts = settings_count(sawn), sum(step.number > 0 for step in sawn.steps)
    if cuts:
        yield f"{counted(settings, 'setting')} of fence or stop for {counted(cuts, 'cut')}."
    yield offcut_words(plan, unit)
    yield from (in_unit(note, unit) for note in sawn.cut.notes)


def _takes(sawn: SawnPlan, plan: Plan) -> str:
    """`3 sheets: no layout of straight cuts through the sheet needs fewer.`; no more is said of a
    plan that could be bettered.
    """
    told, kind = counted(len(plan.layouts), sawn.stock_word), _CUT[plan.task.kind]
    if sawn.is_begun or not plan.is_proven or not _is_told(plan) or plan.measure == "price":
        return f"{told}."  # a price is the maker's own
    if plan.measure != "stock":
        return f"{told}; no {kind} uses less of this wood."
    if any(each.stock.on_hand for each in plan.layouts):
        return f"{told}; beside what was on hand, no {kind} needs fewer."
    return f"{told}; no {kind} needs fewer."


def _is_told(plan: Plan) -> bool:
    """Whether the bound speaks of all layouts that are named with it."""
    return plan.covers == "any plan" or plan.task.kind == "boards"
