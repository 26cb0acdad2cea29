"""Cutting plans made by hand: every piece alone on a sheet or board of its own. Wasteful, sound."""

from __future__ import annotations

from model.bed import Bed
from model.cutting.record import Layout, LeftOut, Piece, Placed, Plan, Region, Stock, Task
from model.shop.plans import CutPlan, cut_plan
from model.shop.tasks import tasks


def plain_plans(bed: Bed) -> tuple[CutPlan, ...]:
    """A plan for every task of a bed."""
    return tuple(cut_plan(task, one_each(task.task)) for task in tasks(bed))


def one_each(task: Task) -> Plan:
    """Each piece on the first stock that it fits; the stock's quantity is not looked at."""
    layouts: list[Layout] = []
    left: list[LeftOut] = []
    for piece in task.pieces:
        stock = next((each for each in task.stock if fits(piece, each)), None)
        if stock is None:
            left.append(LeftOut(piece.mark, piece.quantity, "No stock is large enough."))
            continue
        for number in range(piece.first, piece.first + piece.quantity):
            tree = alone(piece, number, stock, task.kerf)
            layouts.append(Layout(number=len(layouts) + 1, stock=stock, tree=tree))
    return Plan(task=task, layouts=tuple(layouts), left_out=tuple(left), value=len(layouts))


def fits(piece: Piece, stock: Stock) -> bool:
    return piece.length <= stock.length and piece.width <= stock.width


def alone(piece: Piece, number: int, stock: Stock, kerf: float) -> Region:
    """A rip, then a crosscut; what the rip leaves is an offcut, what the crosscut leaves waste."""
    placed = Placed(piece.mark, number, 0.0, 0.0, piece.length, piece.width, False)
    leaf = Region(x=0, y=0, length=piece.length, width=piece.width, use="piece", placed=placed)
    strip = leaf
    if stock.length > piece.length:
        start = min(piece.length + kerf, stock.length)
        rest = Region(x=start, y=0, length=stock.length - start, width=piece.width, use="waste")
        strip = Region(
            x=0, y=0, length=stock.length, width=piece.width, cut="crosscut", at=piece.length,
            kerf=start - piece.length, low=leaf, high=rest if rest.length else None,
        )  # fmt: skip
    if stock.width <= piece.width:
        return strip
    start = min(piece.width + kerf, stock.width)
    above = Region(x=0, y=start, length=stock.length, width=stock.width - start, use="offcut")
    return Region(
        x=0, y=0, length=stock.length, width=stock.width, cut="rip", at=piece.width,
        kerf=start - piece.width, low=strip, high=above if above.width else None,
    )  # fmt: skip
