"""Which saw a cut of a sheet is given to."""

from __future__ import annotations

import re
from dataclasses import replace

import pytest

from model.cutting.record import Layout, Placed, Plan, Region, Stock, Task, Way
from model.shop.order.sawing import sawing, stock_name
from model.shop.plans import CutPlan

SHEET = Stock(key="sheet", length=2440.0, width=1220.0)


def cut(length: float, width: float, way: Way, at: float) -> CutPlan:
    """One cut of what was left of a sheet: the piece lies before it, an offcut behind."""
    along, across = (length, at) if way == "rip" else (at, width)
    placed = Placed("B1", 1, 0.0, 0.0, along, across, False)
    low = Region(x=0.0, y=0.0, length=along, width=across, use="piece", placed=placed)
    tree = Region(
        x=0.0, y=0.0, length=length, width=width, cut=way, at=at, kerf=0.0, low=low,
        high=Region(x=0.0, y=0.0, length=1.0, width=1.0, use="offcut"),
    )  # fmt: skip
    task = Task(kind="sheets", pieces=(), stock=(SHEET,), kerf=0.0)
    plan = Plan(task=task, layouts=(Layout(number=1, stock=SHEET, tree=tree),))
    return CutPlan(key="ply", material="ply", material_name="Plywood", thickness=12.0, plan=plan)


@pytest.mark.parametrize(
    ("length", "width", "way", "at", "machine"),
    [
        (900.0, 400.0, "rip", 300.0, "table saw, rip fence"),
        (600.0, 1200.0, "rip", 190.0, "table saw, rip fence"),
        # Wider beside the fence than long: it turns on the table, and the blade throws it.
        (560.0, 1500.0, "rip", 600.0, "guided saw"),
        (1000.0, 1400.0, "rip", 1300.0, "guided saw"),
        (900.0, 400.0, "crosscut", 300.0, "table saw, crosscut sled with a stop"),
        (2400.0, 130.0, "crosscut", 870.0, "table saw, crosscut sled with a stop"),
        (2400.0, 500.0, "crosscut", 2000.0, "guided saw"),
        (900.0, 700.0, "crosscut", 300.0, "guided saw"),
        (2440.0, 1220.0, "rip", 300.0, "guided saw, or table saw with a helper"),
    ],
)
def test_a_cut_is_given_to_a_saw_that_holds_the_sheet(
    length: float, width: float, way: Way, at: float, machine: str
) -> None:
    """Bounds of fence and sled: common practice, from memory."""
    (batch,) = sawing(cut(length, width, way, at), "mm")

    assert batch.machine == machine


def test_what_a_rough_board_has_over_by_less_than_the_blade_may_stay_on() -> None:
    """A board 127 mm wide for a piece of 125.4 mm: the cut would only make dust."""
    placed = Placed("S1", 1, 0.0, 0.0, 2000.0, 125.4, False)
    low = Region(x=0.0, y=0.0, length=2000.0, width=125.4, use="piece", placed=placed)
    tree = Region(
        x=0.0, y=0.0, length=2000.0, width=127.0, cut="rip", at=125.4, kerf=1.6, low=low, high=None
    )
    board = Stock(key="M1", length=2000.0, width=127.0)
    task = Task(kind="boards", pieces=(), stock=(board,), kerf=3.2)
    plan = Plan(task=task, layouts=(Layout(number=1, stock=board, tree=tree),))
    cut_plan = CutPlan(key="oak", material="oak", material_name="Oak", thickness=38.1, plan=plan)

    ((line,),) = (batch.lines for batch in sawing(cut_plan, "inch"))

    assert line.detail.endswith('leaves S1-1; only 1/16" over, which may stay on')


def test_a_short_crosscut_is_held_by_a_clamp() -> None:
    (short,), (long,) = (sawing(cut(900.0, 100.0, "crosscut", at), "mm") for at in (90.0, 300.0))

    assert any("clamp" in said for said in short.cautions)
    assert long.cautions == ()


def test_stock_of_one_thickness_and_two_widths_is_called_by_both() -> None:
    """Each width has a plan of its own whose boards are numbered from 1."""
    board = Stock(key="board 2100x160", length=2100.0, width=160.0)
    task = Task(kind="lengths", pieces=(), stock=(board,), kerf=3.2)
    cut = CutPlan(
        key="beech-30x160", material="beech", material_name="European beech", thickness=30.0,
        plan=Plan(task=task),
    )  # fmt: skip
    wide = replace(cut, plan=Plan(task=replace(task, kind="boards")))

    assert stock_name(cut, "mm") == "European beech, 30 mm x 160 mm"
    assert stock_name(wide, "mm") == "European beech, 30 mm"


@pytest.mark.parametrize(
    ("name", "thickness", "unit", "told"),
    [
        ("MDF, medium density, 1/4 in", 6.4, "inch", "MDF, medium density, 1/4 in"),
        ("MDF, medium density, 3/4 in", 19.05, "inch", "MDF, medium density, 3/4 in"),
        ("Birch plywood, sanded, 12 mm", 12.0, "mm", "Birch plywood, sanded, 12 mm"),
        ("Birch plywood, sanded, 12 mm", 11.9, "mm", "Birch plywood, sanded, 12 mm, 11.9 mm"),
        ("Birch plywood, sanded, 12 mm", 11.9, "inch", 'Birch plywood, sanded, 12 mm, ~15/32"'),
    ],
)
def test_a_sheet_whose_name_tells_its_thickness_is_not_told_it_twice(
    name: str, thickness: float, unit: str, told: str
) -> None:
    task = Task(kind="sheets", pieces=(), stock=(SHEET,), kerf=3.2)
    cut = CutPlan(
        key="ply", material="ply", material_name=name, thickness=thickness, plan=Plan(task=task)
    )

    assert stock_name(cut, unit) == told


def test_what_is_left_of_a_sheet_is_told_no_closer_than_a_tape_reads() -> None:
    """2440 x 1220 mm: 96 1/16 in and a hair, 48 in and a thirty-second, told as it is bought and
    drawn; what the cut leaves of its width, 36 3/32, by the sixteenth. What is set is told true:
    300 mm are 11 13/16 in, a hair less.
    """
    (batch,) = sawing(cut(2440.0, 1220.0, "rip", 11.8125 * 25.4), "inch")

    assert batch.setting == 'Fence at 11 13/16"'
    assert batch.lines[0].detail.startswith('whole (sheet) ~96 1/16" x ~48 1/32": ')
    assert re.search(r'/32"|/64"', batch.lines[0].detail.partition(": ")[2]) is None
    (metric,) = sawing(cut(2440.0, 1220.0, "rip", 300.0), "mm")
    assert metric.lines[0].detail.startswith("whole (sheet) 2440 mm x 1220 mm: ")


def test_what_a_trim_takes_off_a_board_and_what_it_leaves_add_up() -> None:
    """9 ft less 173.6 mm leaves 2569.6 mm: 2743, 174 and 2570 would not add up on paper."""
    low = Region(x=0.0, y=0.0, length=170.4, width=150.0, use="waste")
    high = Region(x=173.6, y=0.0, length=2569.6, width=150.0, use="offcut")
    tree = Region(
        x=0.0, y=0.0, length=2743.2, width=150.0, cut="crosscut", at=170.4, kerf=3.2,
        low=low, high=high, is_trim=True,
    )  # fmt: skip
    board = Stock(key="M1", length=2743.2, width=150.0)
    task = Task(kind="boards", pieces=(), stock=(board,), kerf=3.2)
    plan = Plan(task=task, layouts=(Layout(number=1, stock=board, tree=tree),))
    cut_plan = CutPlan(key="oak", material="oak", material_name="Oak", thickness=38.1, plan=plan)

    (batch,) = sawing(cut_plan, "mm")

    assert batch.setting == "Take 173 mm off the end, the kerf with it"
    assert "2743 mm x 150 mm: leaves waste and an offcut 2570 mm x 150 mm" in batch.lines[0].detail
