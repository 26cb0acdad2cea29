"""A whole plan held against its task: `faults(plan)` is empty where it can be cut as it stands."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from itertools import chain

from model.cutting.record import Layout, Piece, Plan, Region, Stock, Task
from tests.checkers.plan_rows import row_faults
from tests.checkers.plan_use import offcut_faults, stage_faults, value_faults
from tests.checkers.sawn import NEAR, Lying, Node, Rect, Sawn
from tests.checkers.sawn import faults as sawn_faults


def faults(plan: Plan) -> list[str]:
    """All that is wrong with a plan, in sentences."""
    task = plan.task
    sheets = [sawn_of(layout, task) for layout in plan.layouts]
    checks = [
        *(sawn_faults(each) for each in sheets),
        _demand_faults(plan),
        _stock_faults(plan),
        _way_faults(plan),
        row_faults(plan, numbered(task)),
        offcut_faults(plan),
        stage_faults(task, sheets),
        value_faults(plan),
    ]
    return list(chain.from_iterable(checks))


def sawn_of(layout: Layout, task: Task) -> Sawn:
    """A layout in the checker's own terms."""
    stock = layout.stock
    return Sawn(
        name=f"{layout.number} ({stock.key})",
        length=stock.length,
        width=stock.width,
        kerf=task.kerf,
        trim=tuple(stock.trim),
        bad=tuple(Rect(*each) for each in stock.bad),
        tree=_node(layout.tree),
        is_length=task.kind == "lengths",
    )


def _node(region: Region) -> Node:
    x, y = region.x, region.y
    return Node(
        rect=Rect(x, y, x + region.length, y + region.width),
        cut=region.cut,
        at=region.at,
        kerf=region.kerf,
        low=region.low and _node(region.low),
        high=region.high and _node(region.high),
        use=region.use,
        lying=Lying(*region.placed) if region.placed else None,
        is_trim=region.is_trim,
        row=region.row,
        stays_whole=region.stays_whole,
    )


# ---------------------------------------------------------------- every piece, once


def numbered(task: Task) -> dict[tuple[str, int], Piece]:
    """Every single piece that is asked for, by mark and number."""
    each = ((p.mark, p.first + i, p) for p in task.pieces for i in range(p.quantity))
    return {(mark, number): piece for mark, number, piece in each}


def _demand_faults(plan: Plan) -> Iterator[str]:
    asked = numbered(plan.task)
    found = Counter((lying.mark, lying.piece) for layout in plan.layouts for lying in layout.placed)
    for mark, number in found - Counter(asked.keys()):
        much = "twice" if (mark, number) in asked else "though nobody asked for it"
        yield f"{mark}-{number} is cut {much}"
    missing = Counter(mark for mark, number in asked if (mark, number) not in found)
    named: Counter[str] = Counter()
    for left in plan.left_out:
        named[left.mark] += left.quantity
        yield from _sentence_faults(left.mark, left.sentence)
    for mark in sorted({*missing, *named}):
        if missing[mark] != named[mark]:
            yield f"{missing[mark]} of {mark} are missing, {named[mark]} are said to be left out"
    for layout in plan.layouts:
        for lying in layout.placed:
            piece = asked.get((lying.mark, lying.piece))
            if piece and not _is_alike(lying.length, lying.width, piece, plan.task):
                yield f"{lying.name} is {lying.length} x {lying.width} long and wide"


def _sentence_faults(mark: str, sentence: str) -> Iterator[str]:
    if not sentence.endswith(".") or " " not in sentence or not sentence[0].isprintable():
        yield f"why {mark} is left out is no sentence: {sentence!r}"


def _is_alike(length: float, width: float, piece: Piece, task: Task) -> bool:
    as_wide = task.kind == "lengths" or abs(width - piece.width) <= NEAR
    return as_wide and abs(length - piece.length) <= NEAR


# ---------------------------------------------------------------- stock and grain


def _stock_faults(plan: Plan) -> Iterator[str]:
    used = Counter(layout.stock.key for layout in plan.layouts)
    held = {stock.key: stock for stock in plan.task.stock}
    for key, count in used.items():
        most = held[key].quantity if key in held else 0
        if most is not None and count > most:
            yield f"{count} of {key} are cut, and there are {most}"
    for number, layout in enumerate(plan.layouts, 1):
        if layout.number != number:
            yield f"layout {number} is numbered {layout.number}"
        if layout.stock != held.get(layout.stock.key):
            yield f"layout {number} is of stock that nobody has"
        if not layout.placed:
            yield f"layout {number} is cut for nothing"


def _way_faults(plan: Plan) -> Iterator[str]:
    """Grain is kept; boards and lengths are never turned."""
    asked = numbered(plan.task)
    for layout in plan.layouts:
        for lying in layout.placed:
            piece = asked.get((lying.mark, lying.piece))
            if piece and lying.turned not in allowed(piece, layout.stock, plan.task):
                yield f"{lying.name} lies against the grain (turned: {lying.turned})"


def allowed(piece: Piece, stock: Stock, task: Task) -> set[bool]:
    """Whether a piece may lie as it is (False), turned (True), or either way."""
    if task.kind == "lengths":
        return {False}
    if task.kind == "boards":  # their grain always counts; what is free is not turned for it
        return {piece.grain == "width"}
    kept = {"length": {False}, "width": {True}, "free": {False, True}}[piece.grain]
    return kept if stock.has_grain else {False, True}
