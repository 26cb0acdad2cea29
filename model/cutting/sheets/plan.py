"""The planner for sheets: what can be cut, the cheapest stock for it, then what suits the shop."""

from __future__ import annotations

from collections.abc import Callable

from model.cutting.record import Effort, LeftOut, Plan, Task
from model.cutting.sheets.blank import Blank, blanks
from model.cutting.sheets.cheapest import FIRST_TRIES, area_floor, at_once, floor, improved
from model.cutting.sheets.depot import Depot
from model.cutting.sheets.first_cut import Handling, handling
from model.cutting.sheets.judge import Judge, in_order
from model.cutting.sheets.refused import left_out, rows_apart, unfit
from model.cutting.sheets.regions import Laid, layouts
from model.cutting.sheets.search import Floor
from model.cutting.sheets.tidier import Tidied, Tidier
from model.cutting.whole import Whole, whole

MOVES_TO_TIDY = 6  # of the moves that an effort allows, one in so many is spent on tidying
TIDIED = 30  # pieces; of longer lists each move takes longer, and so many fewer are made

Better = Callable[[Plan], None]
Stop = Callable[[], bool]


def sheet_plan(task: Task, effort: Effort, better: Better, stop: Stop) -> Plan:
    """The best plan found for sheets; `better` is told the first one and each better one."""
    made = whole(task)
    forms = blanks(made)
    made, notes = rows_apart(task, made, unfit(made, forms))
    forms = blanks(made) if notes else forms  # the lengths left may share a larger step
    too_large = unfit(made, forms)
    refused = left_out(made, ((size, size.demand) for size in too_large), False)
    sizes = tuple(size for size in made.sizes if size not in too_large)
    writer = _Writer(task, refused, (*notes, *_kerf_notes(task)))
    if not sizes:
        plan = writer.nothing(made)
        better(plan)
        return plan
    return _planned(Depot(made.only(sizes), forms), writer, effort, better, stop)


def _planned(depot: Depot, writer: _Writer, effort: Effort, better: Better, stop: Stop) -> Plan:
    held = at_once(depot, min(effort.tries, FIRST_TRIES))
    low = area_floor(depot, held)
    tidier = Tidier(depot, Judge(depot.whole, depot.blanks, limits(depot)))
    best = tidier.start(held.sheets)
    plan = writer.plan(depot, best, held.unplaced, low)
    better(plan)
    if held.cost > low.cost and effort.nodes and not stop():
        by_area, low = low, floor(depot, held)
        if low != by_area:
            plan = writer.plan(depot, best, held.unplaced, low)
            better(plan)
    for found, bound in improved(depot, held, low, effort, stop):
        if found is held and bound == low:
            continue
        if found is not held:
            best = tidier.start(found.sheets)
        held, low = found, bound
        plan = writer.plan(depot, best, held.unplaced, low)
        better(plan)
    for tidied in tidier.better(best, _moves_to_tidy(depot, effort), stop):
        plan = writer.plan(depot, tidied, held.unplaced, low)
        better(plan)
    return plan


def _moves_to_tidy(depot: Depot, effort: Effort) -> int:
    pieces = max(TIDIED, sum(depot.demand))
    return effort.moves * TIDIED // (MOVES_TO_TIDY * pieces)


class _Writer:
    """Turns what the search holds into plans."""

    def __init__(self, task: Task, refused: tuple[LeftOut, ...], notes: tuple[str, ...]) -> None:
        self.task = task
        self.refused = refused
        self.notes = notes

    def nothing(self, made: Whole) -> Plan:
        return Plan(task=self.task, left_out=self.refused, measure=made.measure, notes=self.notes)

    def plan(self, depot: Depot, best: Tidied, unplaced: list[int], low: Floor) -> Plan:
        made = depot.whole
        used_up = left_out(made, zip(made.sizes, unplaced, strict=True), True)
        ordered = zip(best.cuts, in_order(best.cuts), strict=True)
        return Plan(
            task=self.task,
            layouts=layouts(made, [Laid(depot.blanks[cut.blank], trees) for cut, trees in ordered]),
            left_out=(*self.refused, *used_up),
            measure=made.measure,
            value=best.cost * made.worth,
            lower_bound=low.cost * made.worth,
            covers=low.covers,
            notes=self.notes,
        )


def limits(depot: Depot) -> list[Handling]:
    """What may be handled of each blank; where bad spans are cut out first, anything may."""
    made = depot.whole
    return [_limit(made, blank) for blank in depot.blanks]


def _limit(made: Whole, blank: Blank) -> Handling:
    stock = made.task.stock[made.sheets[blank.sheet].stock]
    limit = handling(stock, made.task.wishes, blank.length * blank.width, made.kerf)
    return limit if len(blank.rooms) == 1 else limit._replace(most=1.0)


def _kerf_notes(task: Task) -> tuple[str, ...]:
    thin = [each.mark for each in task.pieces if min(each.length, each.width) < task.kerf]
    if not thin:
        return ()
    marks = ", ".join(dict.fromkeys(thin))
    return (
        f"The kerf of {task.kerf:g} mm is wider than {marks}: cutting them makes more sawdust than "
        "pieces.",
    )
