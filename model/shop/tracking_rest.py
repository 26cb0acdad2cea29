"""What is still to be sawn when a plan was begun and the design then changed.

Boards and sheets that were begun stay as they were cut; what is left of them is stock on hand. The
pieces that serve need not be cut again; all others are planned anew.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from model.bed import Bed
from model.cutting.record import Piece, Plan, Stock, Task
from model.shop.cut_list import cut_list
from model.shop.tasks import CutTask, filled_up, tasks
from model.shop.tracking_begun import as_begun, cuts_made, left_over, without
from model.shop.tracking_cuts import CutDone, cuts, task_of
from model.shop.tracking_fit import fit
from model.stock.progress import CutPart, Progress

BY_HAND = "by hand"  # stands for the cut that freed a piece which no plan has
_BEGUN = ", begun "


def is_begun(progress: Progress, plan: Plan) -> bool:
    """Whether any of its cuts is made."""
    name = plan.task.name
    return any(task_of(key) == name for key in progress.cuts_done)


def begun_before(progress: Progress, key: str) -> tuple[Plan, ...]:
    """The plans of a task that were begun before the design changed, cut as far as they were."""
    return tuple(plan for plan in progress.plans if plan.task.name.startswith(key + _BEGUN))


def was_begun(plan: Plan) -> bool:
    """Whether it is one that was begun before the design changed."""
    return _BEGUN in plan.task.name


@dataclass(frozen=True, kw_only=True)
class OnTask:
    """A task as it now stands: `kept` is the stored plan that is followed, None where a plan is
    still to be found; `begun` what was cut before the design changed.
    """

    task: CutTask
    kept: Plan | None = None
    begun: tuple[Plan, ...] = ()


@dataclass(frozen=True, kw_only=True)
class Going:
    """All tasks of a bed as they now stand. `progress` is the design's, with the plans that no
    longer hold cut as far as they were; nothing that was ticked is missing from it.
    """

    tasks: tuple[OnTask, ...]
    progress: Progress

    @property
    def set_aside(self) -> tuple[str, ...]:
        """Of which materials a plan is kept that is followed no more: pieces, stock or kerf are
        others now.
        """
        followed = {each.kept.task.name for each in self.tasks if each.kept is not None}
        kept = {plan.task.name for plan in self.progress.plans} - followed
        return tuple(each.task.material_name for each in self.tasks if each.task.key in kept)


def going(bed: Bed) -> Going:
    """What is still to be sawn, and by which stored plans."""
    progress, spoilt, found = bed.design.progress, _spoilt(bed), []
    for task in tasks(bed):
        kept = progress.plan_of(task.key)
        rest = _still_to_cut(bed, task, progress)
        if kept is not None and not (
            task.key not in spoilt and still_holds(kept, rest.task, progress)
        ):
            if is_begun(progress, kept):
                progress = _closed(bed, task, kept, progress)
                rest = _still_to_cut(bed, task, progress)
            kept = None
        found.append(OnTask(task=rest, kept=kept, begun=begun_before(progress, task.key)))
    return Going(tasks=tuple(found), progress=progress)


def _spoilt(bed: Bed) -> frozenset[str]:
    """The tasks of whose pieces one that is cut serves no more: it has to be cut once more."""
    parts = bed.design.progress.parts
    if not parts:
        return frozenset()
    return frozenset(task_of(each.part.cut) for each in fit(bed, parts).unfit)


def _still_to_cut(bed: Bed, task: CutTask, progress: Progress) -> CutTask:
    return _rest(bed, task, begun_before(progress, task.key), _from_before(progress, task.key))


def _closed(bed: Bed, task: CutTask, kept: Plan, progress: Progress) -> Progress:
    """A plan that no longer holds, cut as far as it was, under a name of its own; all that stands
    for its cuts goes with it. Pieces are called what they now are.
    """
    number = len(begun_before(progress, task.key)) + 1
    begun = as_begun(kept, progress, f"{kept.task.name}{_BEGUN}{number}")
    new_key = {_place(cut): k for k, cut in cuts(begun).items()}
    renamed = {k: new_key[_place(cut)] for k, cut in cuts(kept).items() if _place(cut) in new_key}
    done = frozenset(renamed.get(each, each) for each in progress.cuts_done)
    kept_plans = tuple(plan for plan in progress.plans if plan.task.name != task.key)
    own = {_mark_of(piece.mark) for piece in (*kept.task.pieces, *task.task.pieces)}
    tied = (
        _tied(part, renamed)
        if part.material == task.material and _mark_of(part.mark) in own
        else part
        for part in progress.parts
    )
    parts = adopted(bed, tuple(tied))
    return replace(progress, plans=(*kept_plans, begun), cuts_done=done, parts=parts)


def _place(cut: CutDone) -> tuple[float, ...]:
    region = cut.region
    return (cut.layout, region.x, region.y, region.length, region.width)


def _mark_of(name: str) -> str:
    """The mark in the parts list, of a layer or strip as well."""
    return name.partition("/")[0]


def _tied(part: CutPart, renamed: Mapping[str, str]) -> CutPart:
    return replace(part, cut=renamed.get(part.cut, part.cut) or BY_HAND)


def adopted(bed: Bed, parts: tuple[CutPart, ...]) -> tuple[CutPart, ...]:
    """Pieces that serve under another mark are called by it."""
    names = {id(each.part): (each.mark, each.piece) for each in fit(bed, parts).serves}
    called = ((part, *names.get(id(part), (part.mark, part.piece))) for part in parts)
    return tuple(replace(part, mark=mark, piece=piece) for part, mark, piece in called)


def still_holds(kept: Plan, task: Task, progress: Progress) -> bool:
    """Whether a plan cuts what a task asks for, from stock that is there or begun. What a plan
    leaves out may have found its stock since.
    """
    same = (kept.task.kind, kept.task.kerf, _counted(kept.task.pieces)) == (
        task.kind, task.kerf, _counted(task.pieces),
    )  # fmt: skip
    there = {_form(stock) for stock in task.stock}
    begun = {cut.layout for cut in cuts_made(kept, progress)}
    if kept.left_out and there != {_form(stock) for stock in kept.task.stock}:
        return False
    return same and all(
        _form(layout.stock) in there or layout.number in begun for layout in kept.layouts
    )


def _counted(pieces: Sequence[Piece]) -> Counter[tuple[object, ...]]:
    return Counter(
        (p.mark, number, p.length, p.width, p.grain, p.row, p.stays_whole)
        for p in pieces
        for number in range(p.first, p.first + p.quantity)
    )


def _form(stock: Stock) -> tuple[object, ...]:
    return (stock.key, stock.length, stock.width, stock.has_grain, stock.trim, stock.bad)


def _from_before(progress: Progress, key: str) -> tuple[CutPart, ...]:
    """The pieces that no cut of the plan in use has freed."""
    return tuple(
        part
        for part in progress.parts
        if part.cut == BY_HAND or task_of(part.cut).startswith(key + _BEGUN)
    )


# ---------------------------------------------------------------- the rest of a task


def _rest(bed: Bed, task: CutTask, before: Sequence[Plan], parts: Sequence[CutPart]) -> CutTask:
    """The task less the pieces that serve, with what is left of begun stock in front."""
    if not before and not parts:
        return task
    taken = fit(bed, parts).taken if parts else frozenset()
    if glued := {mark for mark, _ in taken}:
        taken |= _layers_of(bed, glued, taken)
    pieces = tuple(p for piece in task.task.pieces for p in without(piece, taken))
    left = [stock for plan in before for stock in left_over(plan, task.task.wishes.least_offcut)]
    stock = (*left, *_less_begun(task.task.stock, before))
    rest = replace(task.task, pieces=_rows_of_two(pieces), stock=stock)
    own = next(piece for piece in cut_list(bed) if piece.task == task.key)
    whole, notes = filled_up(bed.design, own, rest)
    new = tuple(note for note in notes if note not in task.notes)
    return replace(task, task=whole, notes=(*new, *task.notes))


def _layers_of(
    bed: Bed, marks: set[str], taken: frozenset[tuple[str, int]]
) -> frozenset[tuple[str, int]]:
    """The layers and strips of parts that are glued up already."""
    found = set()
    for piece in cut_list(bed):
        if piece.is_glued and piece.mark in marks:
            for number in range(1, piece.quantity + 1):
                if (piece.mark, (number - 1) // piece.for_each + 1) in taken:
                    found.add((piece.name, number))
    return frozenset(found)


def _rows_of_two(pieces: Sequence[Piece]) -> tuple[Piece, ...]:
    """A row of which one piece is left is no row."""
    sizes: Counter[str] = Counter()
    for piece in pieces:
        sizes[piece.row] += piece.quantity
    return tuple(
        replace(piece, row="", stays_whole=False) if piece.row and sizes[piece.row] == 1 else piece
        for piece in pieces
    )


def _less_begun(stock: Sequence[Stock], before: Sequence[Plan]) -> Iterator[Stock]:
    """What can still be cut from: boards that were begun are gone."""
    used = Counter(_form(layout.stock) for plan in before for layout in plan.layouts)
    for each in stock:
        if each.quantity is None or each.is_assumed:
            yield each
            continue
        gone = min(used[_form(each)], each.quantity)
        used[_form(each)] -= gone
        if each.quantity > gone:
            yield replace(each, quantity=each.quantity - gone)
