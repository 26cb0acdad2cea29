"""How far the work is: what the maker ticks, which plan is followed, what a change leaves of it.

All are plain functions that give a new design; nothing that was ticked is lost by any of them but
by taking the same tick away again.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from model.bed import Bed, Design
from model.cutting.record import Plan
from model.errors import BadInput
from model.shop.cut_list import CutPiece, cut_list
from model.shop.order.record import WorkOrder
from model.shop.plans import CutPlan
from model.shop.tracking_bench import Bench
from model.shop.tracking_cuts import cuts, with_following, with_needed
from model.shop.tracking_fit import Fit, fit
from model.shop.tracking_parts import by_name, is_of, sawn
from model.shop.tracking_recut import Recut
from model.shop.tracking_recut import recut as recut_part
from model.shop.tracking_rest import BY_HAND, OnTask, going, is_begun
from model.stock.progress import CutPart, Progress

# ---------------------------------------------------------------- plans


def accepted(bed: Bed, cut: CutPlan) -> Design:
    """The design with a plan kept as the one in use.

    Refused with BadInput: a plan of another bed; one in the place of a plan that is begun.
    """
    now = going(bed)
    task = _task_of(now.tasks, cut)
    if task.kept == cut.plan:
        return replace(bed.design, progress=now.progress)
    if task.kept is not None and is_begun(now.progress, task.kept):
        raise BadInput(
            cut.key,
            "Cuts of the plan in use are ticked already, so no other can take its place. Untick "
            "them first if they are not made.",
        )
    others = (plan for plan in now.progress.plans if plan.task.name != cut.key)
    return replace(bed.design, progress=replace(now.progress, plans=(*others, cut.plan)))


def _task_of(tasks: Iterable[OnTask], cut: CutPlan) -> OnTask:
    task = next((each for each in tasks if each.task.key == cut.key), None)
    if task is None or (task.task.task.pieces != cut.plan.task.pieces and task.kept != cut.plan):
        raise BadInput(
            cut.material_name,
            f"The plan of {cut.material_name} was made for the bed as it was before; look at the "
            "plan for what is still to be cut.",
        )
    return task


# ---------------------------------------------------------------- cuts


def ticked(bed: Bed, cut: CutPlan, key: str, is_made: bool = True) -> Design:
    """The design with a cut of a plan ticked, and all that must have been made before it; or
    unticked, with all that needs it. The first tick keeps the plan.

    Refused with BadInput: a cut of a plan that is not followed.
    """
    return all_ticked(bed, cut, (key,), is_made)


def all_ticked(bed: Bed, cut: CutPlan, keys: Iterable[str], is_made: bool = True) -> Design:
    """The design with several cuts of one plan ticked or unticked, such as those of a setting."""
    design = accepted(bed, cut) if is_made else _followed(bed, cut)
    progress, plan = design.progress, cut.plan
    moved: dict[str, None] = {}
    for key in keys:
        if key not in cuts(plan):
            raise BadInput(key, f"There is no cut {key} in this plan.")
        moved |= dict.fromkeys(with_needed(plan, key) if is_made else with_following(plan, key))
    if is_made:
        return replace(design, progress=_with_cuts(bed, progress, plan, moved))
    return replace(design, progress=_without_cuts(progress, moved))


def _followed(bed: Bed, cut: CutPlan) -> Design:
    now = going(bed)
    if _task_of(now.tasks, cut).kept != cut.plan:
        raise BadInput(cut.key, "This is not the plan in use, so none of its cuts is ticked.")
    return replace(bed.design, progress=now.progress)


def _with_cuts(bed: Bed, progress: Progress, plan: Plan, keys: Iterable[str]) -> Progress:
    new = [key for key in keys if key not in progress.cuts_done]
    pieces, parts = by_name(cut_list(bed)), list(progress.parts)
    for key in new:
        for placed in cuts(plan)[key].frees:
            piece = pieces[placed.mark]
            place = _place(parts, piece, placed.piece)
            if place is None:
                parts.append(sawn(piece, placed.piece, key))
            else:  # a step was ticked before its cut
                parts[place] = replace(parts[place], cut=key)
    return replace(progress, cuts_done=progress.cuts_done | set(new), parts=tuple(parts))


def _place(parts: list[CutPart], piece: CutPiece, number: int) -> int | None:
    """Where the record of a piece stands that was not freed by any cut yet."""
    return next(
        (
            k
            for k, part in enumerate(parts)
            if is_of(part, piece) and part.piece == number and not part.cut
        ),
        None,
    )


def _without_cuts(progress: Progress, keys: Iterable[str]) -> Progress:
    """A piece that a step was ticked for stays on record, though nobody says what freed it."""
    gone = set(keys)
    parts = tuple(
        replace(part, cut="") if part.cut in gone else part
        for part in progress.parts
        if part.cut not in gone or part.steps
    )
    return replace(progress, cuts_done=progress.cuts_done - gone, parts=parts)


# ---------------------------------------------------------------- steps of the work order


def step_ticked(bed: Bed, order: WorkOrder, key: str, is_done: bool = True) -> Design:
    """The design with a step of the work order ticked or unticked; its pieces are on record then.

    A key that the order does not have (any more) can only be unticked. Refused with BadInput: to
    tick such a one.
    """
    design = bed.design
    found = next(((b, n) for b in order.batches for n in b.lines if n.key == key), None)
    progress = design.progress
    if not is_done:
        progress = replace(progress, steps_done=progress.steps_done - {key})
    elif found is None or not found[1].mark:
        raise BadInput(key, f"There is no step {key} in the work order of this bed.")
    else:
        progress = replace(progress, steps_done=progress.steps_done | {key})
    if found is not None and found[1].mark:
        parts = Bench(bed, order, progress).parts_after(*found, is_done)
        progress = replace(progress, parts=parts)
    return replace(design, progress=progress)


# ---------------------------------------------------------------- bought


def bought_ticked(design: Design, key: str, is_bought: bool = True) -> Design:
    """The design with a row of the buying list ticked or unticked."""
    bought = design.progress.bought - {key}
    if is_bought:
        bought |= {key}
    return replace(design, progress=replace(design.progress, bought=bought))


# ---------------------------------------------------------------- what a change leaves


def outdated(bed: Bed) -> Fit:
    """Which pieces that are cut still serve, which do not and why, which can be recut from what,
    and what is to be cut anew.
    """
    return fit(bed, bed.design.progress.parts)


def recut(bed: Bed, offer: Recut) -> Design:
    """The design with a piece that no longer fits put down for another part."""
    progress = going(bed).progress
    place = next((k for k, part in enumerate(progress.parts) if _is_same(part, offer.part)), None)
    if place is None:
        raise BadInput(offer.part.mark, "This piece is not on record any more.")
    part = replace(recut_part(progress.parts[place], offer.need), steps=(), work="")
    part = replace(part, cut=part.cut or BY_HAND)
    parts = (*progress.parts[:place], part, *progress.parts[place + 1 :])
    return replace(bed.design, progress=replace(progress, parts=parts))


def _is_same(one: CutPart, other: CutPart) -> bool:
    return replace(one, cut="") == replace(other, cut="")
