"""A plan cut as far as it was when the design changed, and what is left of its boards."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from model.cutting.record import Box, Layout, Measure, Piece, Plan, Region, Stock, Trim
from model.shop.tracking_cuts import CutDone, cuts
from model.stock.progress import Progress
from model.units import Mm


def as_begun(plan: Plan, progress: Progress, name: str) -> Plan:
    """A plan cut as far as it was, under another name: its begun boards, what is not cut yet left
    as it lies.
    """
    made = {(cut.layout, cut.region) for cut in cuts_made(plan, progress)}
    begun = {layout for layout, _ in made}
    layouts = tuple(
        replace(layout, tree=_as_cut(layout.tree, layout.number, made))
        for layout in plan.layouts
        if layout.number in begun
    )
    freed = {(placed.mark, placed.piece) for each in layouts for placed in each.placed}
    pieces = tuple(p for piece in plan.task.pieces for p in _only(piece, freed))
    value = sum(_taken(layout.stock, plan.measure) for layout in layouts)
    task = replace(plan.task, pieces=pieces, name=name)
    return replace(plan, task=task, layouts=layouts, left_out=(), value=value, lower_bound=0.0)


def _taken(stock: Stock, measure: Measure) -> float:
    if measure == "length":
        return stock.length
    if measure == "area":
        return stock.length * stock.width
    return 0.0 if stock.on_hand else (stock.price or 0.0) if measure == "price" else 1.0


def cuts_made(plan: Plan, progress: Progress) -> Iterator[CutDone]:
    """The cuts of a plan that are ticked."""
    return (cut for key, cut in cuts(plan).items() if key in progress.cuts_done)


def _as_cut(region: Region, layout: int, made: set[tuple[int, Region]]) -> Region:
    if region.cut is None or region.stays_whole:
        return region
    if (layout, region) in made:
        low = _as_cut(region.low, layout, made) if region.low is not None else None
        high = _as_cut(region.high, layout, made) if region.high is not None else None
        return replace(region, low=low, high=high)
    # Not cut yet: it lies there whole.
    return Region(x=region.x, y=region.y, length=region.length, width=region.width, use="offcut")


def _only(piece: Piece, names: set[tuple[str, int]]) -> Iterator[Piece]:
    everything = range(piece.first, piece.first + piece.quantity)
    others = frozenset((piece.mark, n) for n in everything if (piece.mark, n) not in names)
    yield from without(piece, others)


def left_over(plan: Plan, least: Mm) -> Iterator[Stock]:
    """What is left of begun boards and worth keeping, as stock on hand."""
    for layout in plan.layouts:
        regions = [r for r in layout.tree.all() if r.cut is None and r.use == "offcut"]
        large = [r for r in regions if min(r.length, r.width) >= least or _is_board(plan, r, least)]
        for k, region in enumerate(large, 1):
            yield Stock(
                key=f"left of {plan.task.name}, {layout.number} ({k})",
                length=region.length,
                width=region.width,
                quantity=1,
                on_hand=True,
                has_grain=layout.stock.has_grain,
                trim=Trim(),
                bad=_within(region, layout),
                kg_per_m2=layout.stock.kg_per_m2,
            )


def _is_board(plan: Plan, region: Region, least: Mm) -> bool:
    """What is left of a board is narrow by nature: its length counts."""
    return plan.task.kind != "sheets" and region.length >= least


def _within(region: Region, layout: Layout) -> tuple[Box, ...]:
    """The bad spans of a board that lie in what is left of it, from its own corner."""
    found = []
    for x0, y0, x1, y1 in layout.stock.bad:
        low_x, low_y = max(x0 - region.x, 0.0), max(y0 - region.y, 0.0)
        high_x, high_y = min(x1 - region.x, region.length), min(y1 - region.y, region.width)
        if low_x < high_x and low_y < high_y:
            found.append(Box(low_x, low_y, high_x, high_y))
    return tuple(found)


def without(piece: Piece, taken: frozenset[tuple[str, int]]) -> Iterator[Piece]:
    """A line of a task without the pieces that are there, as runs of numbers."""
    run: list[int] = []
    for number in range(piece.first, piece.first + piece.quantity + 1):
        is_open = number < piece.first + piece.quantity and (piece.mark, number) not in taken
        if is_open:
            run.append(number)
        elif run:
            yield replace(piece, first=run[0], quantity=len(run))
            run = []
