"""Layouts made by hand: rips into strips, each crosscut from left to right."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from model.cutting.record import Layout, Piece, Placed, Plan, Region, Stock, Task, Trim, Use
from model.shop.plans import CutPlan

KERF = 3.2
Strip = tuple[float, Sequence[tuple[str, int, float]]]  # width; mark, number, length of each

SHEET = Stock(key="sheet 2440x1220", length=2440.0, width=1220.0, trim=Trim(6.0, 0.0, 6.0, 0.0))
STRIPS: tuple[Strip, ...] = (
    (300.0, [("B1", 1, 695.0), ("B1", 2, 695.0), ("B1", 3, 695.0), ("B2", 1, 180.0)]),
    (300.0, [("B1", 4, 695.0), ("B3", 1, 540.0), ("B3", 2, 540.0), ("B3", 3, 540.0)]),
    (120.0, [*(("B4", n, 400.0) for n in range(1, 6)), *(("S3", n, 60.0) for n in (1, 2, 3))]),
    (40.0, [("U7", n, 60.0) for n in range(1, 12)]),
    (25.0, [("U8", n, 30.0) for n in (1, 2, 3)]),
)


def sheet(number: int = 1, stock: Stock = SHEET, strips: Sequence[Strip] = STRIPS) -> Layout:
    """Two edges trimmed off, then strips from below, then pieces from the left."""
    trim = stock.trim
    x, y = trim.left, trim.lower
    length, width = stock.length - x, stock.width - y
    tree = _ripped(x, y, length, width, strips)
    if trim.lower:
        edge = _leaf(x, 0.0, length, y - KERF)
        tree = Region(
            x=x, y=0.0, length=length, width=stock.width, cut="rip", at=y - KERF, kerf=KERF,
            low=edge, high=tree, is_trim=True,
        )  # fmt: skip
    if trim.left:
        edge = _leaf(0.0, 0.0, x - KERF, stock.width)
        tree = Region(
            x=0.0, y=0.0, length=stock.length, width=stock.width, cut="crosscut", at=x - KERF,
            kerf=KERF, low=edge, high=tree, is_trim=True,
        )  # fmt: skip
    return Layout(number=number, stock=stock, tree=tree)


def small_sheet(number: int = 1) -> Layout:
    """Two strips of two pieces, four cuts and the trims: few enough to count."""
    strips = ((300.0, [("B1", 1, 900.0), ("B1", 2, 900.0)]), (200.0, [("B2", 1, 700.0)]))
    return sheet(number, SHEET, strips)


def plan_of(*layouts: Layout) -> Plan:
    """A plan of these layouts, its bound the same as its value."""
    placed = [each for layout in layouts for each in layout.placed]
    pieces = tuple(
        Piece(mark=each.mark, length=each.length, width=each.width, first=each.piece)
        for each in placed
    )
    task = Task(kind="sheets", pieces=pieces, stock=(SHEET,), kerf=KERF, name="ply-18")
    return Plan(
        task=task, layouts=layouts, value=float(len(layouts)), lower_bound=float(len(layouts))
    )


def cut_plan(*layouts: Layout, key: str = "ply-18", **more: object) -> CutPlan:
    """The same as a plan for a material."""
    plan = replace(plan_of(*layouts), **more)  # type: ignore[arg-type]
    plan = replace(plan, task=replace(plan.task, name=key))
    return CutPlan(
        key=key, material="birch_ply_18", material_name="Birch plywood, 18 mm", thickness=18.0,
        plan=plan,
    )  # fmt: skip


def _ripped(x: float, y: float, length: float, width: float, strips: Sequence[Strip]) -> Region:
    if not strips:
        return _leaf(x, y, length, width)
    wide, pieces = strips[0]
    return Region(
        x=x, y=y, length=length, width=width, cut="rip", at=y + wide, kerf=KERF,
        low=_crosscut(x, y, length, wide, pieces),
        high=_ripped(x, y + wide + KERF, length, width - wide - KERF, strips[1:]),
    )  # fmt: skip


def _crosscut(
    x: float, y: float, length: float, width: float, pieces: Sequence[tuple[str, int, float]]
) -> Region:
    if not pieces:
        return _leaf(x, y, length, width)
    mark, number, long = pieces[0]
    placed = Placed(mark, number, x, y, long, width, False)
    piece = Region(x=x, y=y, length=long, width=width, use="piece", placed=placed)
    rest = length - long - KERF
    return Region(
        x=x, y=y, length=length, width=width, cut="crosscut", at=x + long, kerf=KERF, low=piece,
        high=_crosscut(x + long + KERF, y, rest, width, pieces[1:]),
    )  # fmt: skip


def _leaf(x: float, y: float, length: float, width: float) -> Region:
    use: Use = "offcut" if min(length, width) >= 150.0 else "waste"
    return Region(x=x, y=y, length=length, width=width, use=use)
