"""What a plan makes of its stock: offcuts, stages, and what it says that it takes."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import groupby

from model.cutting.record import Plan, Region, Stock, Task
from tests.checkers.sawn import NEAR, Node, Rect, Sawn


def offcut_faults(plan: Plan) -> Iterator[str]:
    """What is kept is worth keeping, and on sheets nothing worth keeping is thrown away."""
    least = plan.task.wishes.least_offcut
    for layout in plan.layouts:
        for region in layout.tree.all():
            shorter = min(region.length, region.width)
            if plan.task.kind == "lengths":
                shorter = region.length
            if region.use == "offcut" and shorter < least - NEAR:
                yield f"an offcut of {region.length} x {region.width} is too small to keep"
            thrown = region.use == "waste" and plan.task.kind == "sheets"
            if thrown and shorter >= least and not _is_spoilt(region, layout.stock):
                yield f"{region.length} x {region.width} is thrown away"


def _is_spoilt(region: Region, stock: Stock) -> bool:
    x, y = region.x, region.y
    rect = Rect(x, y, x + region.length, y + region.width)
    return any(rect.apart(Rect(*bad)) < -NEAR for bad in stock.bad)


def stage_faults(task: Task, sheets: list[Sawn]) -> Iterator[str]:
    """How often the saw may change between rips and crosscuts, trims left aside."""
    for sawn in sheets:
        for path in _paths(sawn.tree, ()):
            ways = [way for way, _ in groupby(path)]
            if task.kind == "lengths" and "rip" in path:
                yield f"{sawn.name}: a length is ripped"
            if task.kind == "boards" and len(ways) > 2:
                yield f"{sawn.name}: cut in more than two stages: {ways}"
            if task.kind == "sheets" and task.wishes.strips and ways not in _STRIPS:
                yield f"{sawn.name}: not cut into strips first: {ways}"


_STRIPS = ([], ["rip"], ["crosscut"], ["rip", "crosscut"])


def _paths(node: Node, path: tuple[str, ...]) -> Iterator[tuple[str, ...]]:
    """The ways of the cuts that every piece or row has seen, first cut first, without trims."""
    if node.lying is not None or node.row:
        yield path
        return
    seen = path if node.is_trim or _trims_one_piece(node) else (*path, node.cut)
    for part in node.parts:
        yield from _paths(part, seen)


def _trims_one_piece(node: Node) -> bool:
    """A last cut that takes a piece, or a row, out of what is only a little larger."""
    kept = [part for part in node.parts if part.lying is not None or part.row]
    return len(kept) <= 1 and all(part.cut is None for part in node.parts if part not in kept)


def value_faults(plan: Plan) -> Iterator[str]:
    value = measured(plan)
    if value is None:
        yield f"the plan is measured by {plan.measure}, and not all of it has one"
    elif abs(value - plan.value) > NEAR * max(1.0, value):
        yield f"the plan says that it takes {plan.value} ({plan.measure}), and takes {value}"
    if plan.lower_bound > plan.value * (1 + 1e-9) + NEAR:
        yield f"the bound {plan.lower_bound} is above the plan's own {plan.value}"
    proven = plan.value - plan.lower_bound <= 1e-6 * max(1.0, plan.value)
    if plan.is_proven and not proven:
        yield f"the plan calls itself proven, with {plan.value} against {plan.lower_bound}"
    if not plan.covers:
        yield "the bound does not say which plans it covers"


def measured(plan: Plan) -> float | None:
    """What the plan takes, counted from its layouts; None where a price is missing.

    What is on hand costs nothing more. Boards and lengths that are all on hand count all the same,
    else no plan of them would be better than another.
    """
    stocks = [layout.stock for layout in plan.layouts]
    can_buy = any(not each.on_hand and each.quantity != 0 for each in plan.task.stock)
    if can_buy or plan.task.kind == "sheets":
        stocks = [stock for stock in stocks if not stock.on_hand]
    if plan.measure == "stock":
        return float(len(stocks))
    if plan.measure == "length":
        return sum(stock.length for stock in stocks)
    if plan.measure == "area":
        return sum(stock.length * stock.width for stock in stocks)
    if any(stock.price is None for stock in stocks):
        return None
    return sum(stock.price or 0.0 for stock in stocks)
