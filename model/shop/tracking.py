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
from model.parts.marks import Mark
from model.shop.cut_list import CutPiece, cut_list
from model.shop.order.record import Batch, Line, WorkOrder
from model.shop.plans import CutPlan
from model.shop.tracking_cuts import cuts, with_following, with_needed
from model.shop.tracking_fit import Fit, fit
from model.shop.tracking_parts import (
    by_name,
    glued,
    is_of,
    is_whole_of,
    numbers,
    sawn,
    with_step,
    without_step,
)  # fmt: skip
from model.shop.tracking_recut import Recut
from model.shop.tracking_recut import recut as recut_part
from model.shop.tracking_rest import BY_HAND, OnTask, going, is_begun
from model.stock.progress import CutPart, Progress

Parts = tuple[CutPart, ...]


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
        parts = _Bench(bed, order, progress).parts_after(*found, is_done)
        progress = replace(progress, parts=parts)
    return replace(design, progress=progress)


class _Bench:
    """The records of the pieces, while a step is done to those of one line or undone."""

    def __init__(self, bed: Bed, order: WorkOrder, progress: Progress) -> None:
        self._pieces = cut_list(bed)
        self._marks = {mark.mark: mark for mark in bed.marks}
        self._order = order
        self._progress = progress

    def parts_after(self, batch: Batch, line: Line, is_done: bool) -> Parts:
        """All records, those of the line's mark as they are after it."""
        piece = next(each for each in self._pieces if line.mark in (each.name, each.mark))
        mark = self._marks[piece.mark]
        is_whole = piece.is_glued and line.mark == piece.mark
        if batch.way == "glue" and self._is_last_glue(batch, line):
            return self._together(piece, mark, line) if is_done else self._apart(piece, mark, line)
        kept, own = self._sorted_out(piece, mark, is_whole)
        if is_done:
            own = self._all(piece, mark, is_whole, own)
        done = self._order.of(piece.mark)
        if is_done:
            after = [with_step(part, batch, line, mark, done) for part in own]
        else:
            fresh = glued(piece, mark, 1) if is_whole else sawn(piece, 1, "")
            after = [without_step(part, batch, line, mark, done, fresh) for part in own]
            after = [part for part in after if part.cut or part.steps]
        return (*kept, *after)

    def _sorted_out(
        self, piece: CutPiece, mark: Mark, is_whole: bool
    ) -> tuple[list[CutPart], list[CutPart]]:
        """Records of other pieces, and those of these."""
        kept: list[CutPart] = []
        own: list[CutPart] = []
        for part in self._progress.parts:
            is_own = is_whole_of(part, piece, mark) if is_whole else is_of(part, piece)
            (own if is_own else kept).append(part)
        return kept, own

    def _all(
        self, piece: CutPiece, mark: Mark, is_whole: bool, own: list[CutPart]
    ) -> list[CutPart]:
        """One record for each piece: whoever planes a part has sawn it."""
        known = {part.piece for part in own}
        new = [n for n in numbers(piece, is_whole) if n not in known]
        made = [glued(piece, mark, n) if is_whole else sawn(piece, n, "") for n in new]
        return [*own, *made]

    def _is_last_glue(self, batch: Batch, line: Line) -> bool:
        """Strips are glued before layers; only the last makes the part."""
        all_glue = [each for each, own in self._order.of(line.mark) if each.way == "glue"]
        return not all_glue or all_glue[-1] is batch

    def _together(self, piece: CutPiece, mark: Mark, line: Line) -> Parts:
        """The layers or strips of each part become one piece."""
        kept, loose = self._sorted_out(piece, mark, False)
        kept = [part for part in kept if not is_whole_of(part, piece, mark)]
        by_number = {part.piece: part for part in loose}
        made = []
        for number in numbers(piece, True):
            first = (number - 1) * piece.for_each + 1
            own = [by_number.get(n) for n in range(first, first + piece.for_each)]
            before = [part for part in own if part is not None]
            steps = dict.fromkeys(key for part in before for key in part.steps)
            cut = next((part.cut for part in before if part.cut), "")
            whole = glued(piece, mark, number)
            made.append(replace(whole, steps=(*steps, line.key), cut=cut))
        return (*kept, *made)

    def _apart(self, piece: CutPiece, mark: Mark, line: Line) -> Parts:
        """The glue-up was ticked by mistake: layers and strips lie there again."""
        kept, wholes = self._sorted_out(piece, mark, True)
        lines = [each for each in self._order.of(piece.name) if each[1].mark == piece.name]
        made = []
        for whole in wholes:
            first = (whole.piece - 1) * piece.for_each + 1
            for number in range(first, first + piece.for_each):
                part = sawn(piece, number, self._freed_by(piece.name, number))
                for batch, own in lines:
                    if own.key in whole.steps:
                        part = with_step(part, batch, own, mark, ())
                made.append(part)
        return (*kept, *(part for part in made if part.cut or part.steps))

    def _freed_by(self, name: str, number: int) -> str:
        """The ticked cut that freed a piece, or nothing."""
        for plan in self._progress.plans:
            for key, cut in cuts(plan).items():
                if key in self._progress.cuts_done and any(
                    (placed.mark, placed.piece) == (name, number) for placed in cut.frees
                ):
                    return key
        return ""


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
