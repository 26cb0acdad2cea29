"""A planner with no wits, for tests that need a plan and not a good one: one piece (or one row of
pieces) from each sheet or board, in the corner, all else an offcut.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import count
from typing import NamedTuple

from model.bed import Bed
from model.cutting.record import Layout, Piece, Placed, Plan, Region, Stock, Task
from model.shop.plans import CutPlan, cut_plan
from model.shop.tasks import tasks


class One(NamedTuple):
    """One real piece: its line of the task, and its number."""

    piece: Piece
    number: int


def one_each(bed: Bed) -> tuple[CutPlan, ...]:
    return tuple(cut_plan(task, plan(task.task)) for task in tasks(bed))


def plan(task: Task) -> Plan:
    numbers = count(1)
    layouts = [layout(task, run, next(numbers)) for run in runs(task.pieces)]
    return Plan(task=task, layouts=tuple(layouts), value=float(len(layouts)))


def runs(pieces: Sequence[Piece]) -> Iterator[list[One]]:
    rows: dict[str, list[One]] = {}
    for piece in pieces:
        for number in range(piece.first, piece.first + piece.quantity):
            if piece.row:
                rows.setdefault(piece.row, []).append(One(piece, number))
            else:
                yield [One(piece, number)]
    yield from rows.values()


def layout(task: Task, run: list[One], number: int) -> Layout:
    length = sum(each.piece.length for each in run) + task.kerf * (len(run) - 1)
    width = run[0].piece.width
    turned = run[0].piece.grain == "width"
    along, across = (width, length) if turned else (length, width)
    stock = next(
        (each for each in task.stock if fits(each, along, across)), made(task, along, across)
    )
    x, y = stock.trim.left, stock.trim.lower
    inner = strip(task, run, x, y) if not turned else turned_piece(run[0], x, y, along, across)
    tree = inner
    tree = framed(tree, "rip", y + across, stock.width, task.kerf, "high")
    tree = framed(tree, "rip", y, 0.0, 0.0, "low") if y else tree
    tree = framed(tree, "crosscut", x + along, stock.length, task.kerf, "high")
    tree = framed(tree, "crosscut", x, 0.0, 0.0, "low") if x else tree
    return Layout(number=number, stock=stock, tree=tree)


def fits(stock: Stock, along: float, across: float) -> bool:
    return (
        along + stock.trim.left + stock.trim.right <= stock.length
        and across + stock.trim.lower + stock.trim.upper <= stock.width
    )


def made(task: Task, along: float, across: float) -> Stock:
    return Stock(key="as large as asked", length=along + 50, width=across + 50)


def framed(inner: Region, way: str, at: float, end: float, kerf: float, side: str) -> Region:
    """The region with one more cut around it, which takes off what lies beyond `at`."""
    if side == "high" and end - at <= 1e-9:
        return inner
    x0, y0, x1, y1 = inner.x, inner.y, inner.x + inner.length, inner.y + inner.width
    kerf = min(kerf, end - at) if side == "high" else 0.0
    lo, hi = (at + kerf, end) if side == "high" else (end, at)
    if way == "rip":
        rest = Region(x=x0, y=lo, length=x1 - x0, width=hi - lo, use="offcut")
        y0, y1 = min(y0, end), max(y1, end)
    else:
        rest = Region(x=lo, y=y0, length=hi - lo, width=y1 - y0, use="offcut")
        x0, x1 = min(x0, end), max(x1, end)
    parts = (inner, rest if hi - lo > 1e-9 else None)
    low, high = parts if side == "high" else parts[::-1]
    return Region(
        x=x0, y=y0, length=x1 - x0, width=y1 - y0,
        cut=way, at=at, kerf=kerf, low=low, high=high, is_trim=side == "low",
    )  # type: ignore[arg-type]  # fmt: skip


def turned_piece(one: One, x: float, y: float, along: float, across: float) -> Region:
    placed = Placed(one.piece.mark, one.number, x, y, one.piece.length, one.piece.width, True)
    return Region(x=x, y=y, length=along, width=across, use="piece", placed=placed)


def strip(task: Task, run: list[One], x: float, y: float) -> Region:
    first, width = run[0].piece, run[0].piece.width
    placed = Placed(first.mark, run[0].number, x, y, first.length, width, False)
    here = Region(x=x, y=y, length=first.length, width=width, use="piece", placed=placed)
    if len(run) == 1:
        return here
    rest = strip(task, run[1:], x + first.length + task.kerf, y)
    return Region(
        x=x, y=y, length=rest.x + rest.length - x, width=width,
        cut="crosscut", at=x + first.length, kerf=task.kerf, low=here, high=rest,
        row=first.row, stays_whole=first.stays_whole,
    )  # fmt: skip
