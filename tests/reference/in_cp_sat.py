"""Small cutting tasks as models of OR-tools' CP-SAT, a general solver: what is the least possible?

Kerfs are folded in: a piece and the stock's room both count one kerf more. Lengths are counted in
tenths of a millimetre, so tasks must lie on that grid. One worker, a fixed seed and a bound on
counted work, so that the answer is the same every time.
"""

from __future__ import annotations

from ortools.sat.python import cp_model

from model.cutting.record import Piece, Stock, Task

EFFORT = 20.0  # deterministic seconds, as CP-SAT counts them
Sides = tuple[int, int]
Var = cp_model.IntVar


def least(model: cp_model.CpModel) -> int | None:
    """The proven least of what the model minimizes; None where the effort ran out."""
    solver = _solver()
    if solver.solve(model) != cp_model.OPTIMAL:
        return None
    return round(solver.objective_value)


def _solver() -> cp_model.CpSolver:
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = 1
    solver.parameters.random_seed = 1
    solver.parameters.max_deterministic_time = EFFORT
    return solver


def tenths(length: float) -> int:
    return round(10 * length)


def single(task: Task) -> list[tuple[Piece, Sides]]:
    """Every piece by itself, kerf folded in: along its length, across it."""
    kerf = task.kerf
    return [
        (piece, (tenths(piece.length + kerf), tenths(piece.width + kerf)))
        for piece in task.pieces
        for _ in range(piece.quantity)
    ]


def room(stock: Stock, kerf: float) -> Sides:
    trim = stock.trim
    along = stock.length - trim.left - trim.right + kerf
    return tenths(along), tenths(stock.width - trim.lower - trim.upper + kerf)


# ---------------------------------------------------------------- sheets, any layout


def is_impossible(task: Task, count: int) -> bool:
    """Proven that so many sheets of the first stock hold not all, whatever the layout: cuts need
    not go through. False where they do, or where the effort ran out.
    """
    if count == 0:
        return bool(task.pieces)
    model = cp_model.CpModel()
    along, across = room(task.stock[0], task.kerf)
    lying: list[list[tuple[cp_model.IntervalVar, cp_model.IntervalVar]]] = [
        [] for _ in range(count)
    ]
    taken: list[list[object]] = [[] for _ in range(count)]
    for at, (piece, sides) in enumerate(single(task)):
        there = [model.new_bool_var("there") for _ in range(count)]
        model.add_exactly_one(there[: at + 1])  # sheets are alike: the first piece names the first
        size = _sides(model, piece, sides, task.stock[0])
        reach = [
            _reach(model, one, whole) for one, whole in zip(size, (along, across), strict=True)
        ]
        for sheet, here in enumerate(there):
            taken[sheet].append(sides[0] * sides[1] * here)
            spans = (
                model.new_optional_interval_var(start, one, end, here, "span")
                for one, (start, end) in zip(size, reach, strict=True)
            )
            lying[sheet].append(tuple(spans))  # type: ignore[arg-type]
    for areas, spans in zip(taken, lying, strict=True):
        model.add(sum(areas) <= along * across)  # nothing new, but soon seen
        model.add_no_overlap_2d([one for one, _ in spans], [other for _, other in spans])
    return _solver().solve(model) == cp_model.INFEASIBLE


def _reach(model: cp_model.CpModel, size: object, whole: int) -> tuple[Var, Var]:
    """Where a piece begins and ends on one axis of the sheet."""
    start, end = (model.new_int_var(0, whole, name) for name in ("start", "end"))
    model.add(start + size == end)  # type: ignore[operator]
    return start, end


def _sides(model: cp_model.CpModel, piece: Piece, sides: Sides, stock: Stock) -> list[object]:
    """How far a piece reaches along and across the sheet; variables where it may turn."""
    free = piece.grain == "free" or not stock.has_grain
    if not free:
        return list(sides if piece.grain == "length" else sides[::-1])
    turned = model.new_bool_var("turned")
    more = sides[1] - sides[0]
    return [sides[0] + more * turned, sides[1] - more * turned]


# ---------------------------------------------------------------- boards, two stages


def least_area(task: Task, *, only_rips_first: bool = False) -> int | None:
    """Square millimetres of boards used, each piece of stock once: every board ripped into strips
    that are crosscut, or crosscut into sections that are ripped, and pieces trimmed to size.
    """
    model = cp_model.CpModel()
    pieces = [sides for _, sides in single(task)]
    holders: list[list[Var]] = [[] for _ in pieces]
    costs = []
    for stock in task.stock:
        used = model.new_bool_var("used")
        rips_first = model.new_bool_var("rips first")
        if only_rips_first:
            model.add(rips_first == 1)
        size = room(stock, task.kerf)
        _strips(model, pieces, size, holders, [used, rips_first])
        turned = [(across, along) for along, across in pieces]
        _strips(model, turned, size[::-1], holders, [used, rips_first.negated()])
        costs.append(round(stock.length * stock.width) * used)
    for holder in holders:
        model.add_exactly_one(holder)
    model.minimize(sum(costs))
    return least(model)


def _strips(
    model: cp_model.CpModel,
    pieces: list[Sides],
    size: Sides,
    holders: list[list[Var]],
    needs: list[Var],
) -> None:
    """Strips as wide as the piece that leads them; whatever is as narrow may lie in them."""
    leads = [model.new_bool_var("leads") for _ in pieces]
    model.add(sum(side[1] * lead for side, lead in zip(pieces, leads, strict=True)) <= size[1])
    for leader, lead in enumerate(leads):
        for need in needs:
            model.add_implication(lead, need)
        inside = []
        for at, (along, across) in enumerate(pieces):
            narrower = (across, at) <= (pieces[leader][1], leader)
            if at == leader or narrower:
                here = lead if at == leader else model.new_bool_var("here")
                model.add_implication(here, lead)
                holders[at].append(here)
                inside.append(along * here)
        model.add(sum(inside) <= size[0])


# ---------------------------------------------------------------- lengths


def least_length(task: Task, most: int) -> int | None:
    """Tenths of a millimetre of stock, at most `most` sticks of each length that is not limited."""
    model = cp_model.CpModel()
    lots = [(tenths(piece.length + task.kerf), piece.quantity) for piece in task.pieces]
    sticks: list[list[Var]] = []
    costs = []
    for stock in task.stock:
        along, _ = room(stock, task.kerf)
        before = None
        for _ in range(most if stock.quantity is None else stock.quantity):
            used = model.new_bool_var("used")
            counts = [model.new_int_var(0, quantity, "count") for _, quantity in lots]
            taken = sum(length * n for (length, _), n in zip(lots, counts, strict=True))
            model.add(taken <= along * used)
            if before is not None:
                model.add_implication(used, before)
            before = used
            sticks.append(counts)
            costs.append(tenths(stock.length) * used)
    for at, (_, quantity) in enumerate(lots):
        model.add(sum(counts[at] for counts in sticks) == quantity)
    model.minimize(sum(costs))
    return least(model)
