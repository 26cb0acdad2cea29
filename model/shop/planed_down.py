"""Parts for which no board need be bought: offcuts of a thicker class hold them, planed down.

It is only told. The plans stay as they are: whether so much is planed away is for the maker to say.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace
from functools import lru_cache

from model.bed import Design
from model.cutting.plan import first_plan
from model.cutting.record import Stock, Task
from model.shop.cut_list import CutPiece
from model.shop.order.say import listed
from model.shop.plans import CutPlan
from model.shop.tracking_begun import left_over
from model.stock.cells import shown_thickness
from model.units import Mm, show_length, tape_grid

MOST_PLANED: Mm = 13.0  # 1/2 in: thicker stock is resawn and not planed away; common practice


def planed_down(
    design: Design, pieces: Iterable[CutPiece], plans: Sequence[CutPlan]
) -> tuple[CutPlan, ...]:
    """The plans, those with a note more whose pieces could all be planed down from offcuts that the
    plan of one thicker class of the same wood leaves. `pieces` is the cut list of the bed.

    An offcut serves one class only, and is as long as jointer and planer ask for.
    """
    shortest: Mm = design.value("shortest_milled")
    rough = {piece.task for piece in pieces if piece.source and not piece.source.is_planed}
    left = {each.key: tuple(left_over(each.plan, shortest)) for each in plans if each.key in rough}
    notes: dict[str, str] = {}
    giving: set[str] = set()
    for plan in plans:
        if plan.key not in left or plan.key in giving or not _is_bought(plan):
            continue
        for other in _thicker(plan, plans):
            used = () if other.key in notes else _holding(plan, left.get(other.key, ()))
            if used:
                left[other.key] = tuple(each for each in left[other.key] if each not in used)
                giving.add(other.key)
                notes[plan.key] = _note(plan, other, used, design.value("shown_unit"))
                break
    return tuple(
        replace(plan, notes=(*plan.notes, notes[plan.key])) if plan.key in notes else plan
        for plan in plans
    )


def _is_bought(plan: CutPlan) -> bool:
    """Whether it takes boards that the maker has not; what he keeps he has made up his mind on."""
    lacks = any(not each.stock.on_hand for each in plan.plan.layouts)
    return not plan.is_stored and (lacks or bool(plan.plan.left_out))


def _thicker(plan: CutPlan, plans: Iterable[CutPlan]) -> list[CutPlan]:
    """The plans of thicker classes of the same wood, the nearest first."""
    found = [
        other
        for other in plans
        if other.material == plan.material and 0 < other.thickness - plan.thickness <= MOST_PLANED
    ]
    return sorted(found, key=lambda other: other.thickness)


def _holding(plan: CutPlan, left: Sequence[Stock]) -> tuple[Stock, ...]:
    """The offcuts that hold all pieces of a plan; none where they do not."""
    task = plan.plan.task
    area = sum(piece.length * piece.width * piece.quantity for piece in task.pieces)
    if area > sum(each.length * each.width for each in left):
        return ()
    return _cut_from(replace(task, stock=tuple(left)))


@lru_cache(maxsize=64)  # asked again at every tick, of the same offcuts and pieces
def _cut_from(task: Task) -> tuple[Stock, ...]:
    found = first_plan(task)
    return () if found.left_out else tuple(layout.stock for layout in found.layouts)


def _note(plan: CutPlan, other: CutPlan, used: Iterable[Stock], unit: str) -> str:
    marks = tuple(dict.fromkeys(piece.mark for piece in plan.plan.task.pieces))
    thick = shown_thickness(other.thickness, True, unit)
    sizes = listed(tuple(_sizes(used, unit)))
    return f"{listed(marks)} could be planed down from what is left of {thick}: it leaves {sizes}."


def _sizes(used: Iterable[Stock], unit: str) -> Iterator[str]:
    tape = tape_grid(unit)
    for each in used:
        long, wide = (show_length(tape.near(side), unit) for side in (each.length, each.width))
        yield f"{long} x {wide}"
