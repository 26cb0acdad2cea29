"""The checker of plans finds every way in which a plan can be wrong: each is tried."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import pytest

from model.cutting.record import (
    Box,
    Layout,
    LeftOut,
    Piece,
    Plan,
    Region,
    Stock,
    Task,
    Trim,
    Wishes,
)
from tests.checkers.by_hand import crosscut, layout, offcut, piece, rip, strip, waste
from tests.checkers.plans import faults

KERF = 3.0
SHEET = Stock(
    key="sheet",
    length=1000.0,
    width=500.0,
    quantity=1,
    price=40.0,
    trim=Trim(lower=10.0, left=10.0),
    bad=(Box(500.0, 300.0, 560.0, 320.0),),
)
PIECES = (
    Piece(mark="A", length=300.0, width=200.0, quantity=2),
    Piece(mark="B", length=100.0, width=80.0, grain="width"),
    Piece(mark="F", length=120.0, width=90.0, quantity=2, row="fronts"),
    Piece(mark="G", length=60.0, width=90.0, row="fronts"),
    Piece(mark="Z", length=3000.0, width=10.0),
)
TASK = Task(kind="sheets", pieces=PIECES, stock=(SHEET,), kerf=KERF)


def cut(way: Callable[..., object], size: float, *parts: object, is_trim: bool = False) -> object:
    return way(size, *parts, kerf=KERF, is_trim=is_trim)


def sound_tree(fronts: object | None = None) -> object:
    """Trims; a strip of A and A and B (turned); above it the row, and an offcut about the knot."""
    fronts = fronts or strip(
        "fronts",
        cut(
            crosscut, 120.0, piece("F", 1), cut(crosscut, 120.0, piece("F", 2), piece("G", 1))
        ),  # fmt: skip
    )
    b = cut(rip, 100.0, cut(crosscut, 80.0, piece("B", 1, turned=True), waste), waste)
    lower = cut(crosscut, 300.0, piece("A", 1), cut(crosscut, 300.0, piece("A", 2), b))
    upper = cut(rip, 90.0, cut(crosscut, 120.0 + 120.0 + 60.0 + 2 * KERF, fronts, waste), offcut)
    sheet = cut(rip, 200.0, lower, upper)
    trimmed = cut(crosscut, 10.0 - KERF, waste, sheet, is_trim=True)
    return cut(rip, 10.0 - KERF, waste, trimmed, is_trim=True)


def planned(tree: object, task: Task = TASK) -> Plan:
    """A plan of one sheet, with the long strip left out that no sheet holds."""
    left = LeftOut("Z", 1, "Z is longer than every sheet: 3000 mm would do.")
    return Plan(
        task=task,
        layouts=(layout(1, task.stock[0], tree),),  # type: ignore[arg-type]
        left_out=(left,),
        value=1.0,
        lower_bound=1.0,
    )


SOUND = planned(sound_tree())


def with_node(plan: Plan, is_it: Callable[[Region], bool], **change: object) -> Plan:
    """The plan with the first node that is meant changed, whatever becomes of it."""
    done = False

    def changed(region: Region) -> Region:
        nonlocal done
        if not done and is_it(region):
            done = True
            return replace(region, **change)
        low, high = (each and changed(each) for each in (region.low, region.high))
        return replace(region, low=low, high=high)

    tree = changed(plan.layouts[0].tree)
    assert done
    return replace(plan, layouts=(replace(plan.layouts[0], tree=tree),))


def lying(name: str) -> Callable[[Region], bool]:
    return lambda region: region.placed is not None and region.placed.name == name


def moved(plan: Plan, name: str, **change: object) -> Plan:
    """The plan with one piece said to lie elsewhere than its leaf."""
    placed = next(each for each in plan.layouts[0].placed if each.name == name)
    return with_node(plan, lying(name), placed=placed._replace(**change))


def on(plan: Plan, **change: object) -> Plan:
    """The plan with another sheet under it, in the task as well."""
    stock = replace(plan.task.stock[0], **change)
    task = replace(plan.task, stock=(stock,))
    return replace(plan, task=task, layouts=(replace(plan.layouts[0], stock=stock),))


def asking(plan: Plan, *pieces: Piece, **change: object) -> Plan:
    task = replace(plan.task, pieces=pieces or plan.task.pieces, **change)
    return replace(plan, task=task)


def said(plan: Plan) -> str:
    return "\n".join(faults(plan))


def test_a_sound_plan_has_no_faults() -> None:
    assert faults(SOUND) == []


def is_cut(way: str, at: float) -> Callable[[Region], bool]:
    return lambda region: region.cut == way and region.at == at


TWO = replace(SOUND.layouts[0], number=2)
WASTED = cut(rip, 7.0, waste, cut(rip, 300.0, waste, offcut), is_trim=True)
TURNED_FRONTS = strip(
    "fronts",
    cut(crosscut, 60.0, piece("G", 1), cut(crosscut, 120.0, piece("F", 1), piece("F", 2))),
)
TWO_STRIPS = cut(
    crosscut, 120.0, strip("fronts", piece("F", 1)),
    strip("fronts", cut(crosscut, 120.0, piece("F", 2), piece("G", 1))),
)  # fmt: skip
SPOILT: dict[str, tuple[Plan, str]] = {
    "a piece is missing": (asking(SOUND, *PIECES, Piece(mark="C", length=9, width=9)), "1 of C"),
    "left out too often": (replace(SOUND, left_out=SOUND.left_out * 2), "2 are said to be left"),
    "nobody says what is left out": (replace(SOUND, left_out=()), "1 of Z are missing"),
    "no reason given": (replace(SOUND, left_out=(LeftOut("Z", 1, "too big"),)), "no sentence"),
    "cut twice": (moved(SOUND, "A-2", piece=1), "A-1 is cut twice"),
    "never asked for": (asking(SOUND, *PIECES[1:]), "A-1 is cut though nobody"),
    "cut too short": (moved(SOUND, "A-1", length=299.0), "A-1 does not fill its leaf"),
    "asked for longer": (
        asking(SOUND, replace(PIECES[0], length=301.0), *PIECES[1:]),
        "A-1 is 300.0 x 200.0",
    ),
    "outside": (moved(SOUND, "B-1", x=980.0), "B-1 lies outside of the stock"),
    "in the trim": (on(SOUND, trim=Trim(lower=10.0, left=11.0)), "A-1 lies in the trim"),
    "on a bad span": (on(SOUND, bad=(Box(300, 190, 320, 211),)), "A-1 lies on the bad span"),
    "overlap": (moved(SOUND, "A-2", x=305.0), "A-1 and A-2 overlap"),
    "a thin kerf": (
        with_node(SOUND, is_cut("crosscut", 310.0), kerf=2.0),
        "takes only 2.0 of 3.0",
    ),
    "less than a kerf": (asking(SOUND, kerf=3.5), "A-1 and A-2 are 3.0 apart"),
    "a thick kerf": (asking(SOUND, kerf=2.5), "the blade takes 3.0"),
    "a cut beside its wood": (with_node(SOUND, is_cut("rip", 210.0), at=700.0), "lies outside"),
    "a cut elsewhere": (with_node(SOUND, is_cut("rip", 210.0), at=211.0), "not Rect"),
    "not from edge to edge": (
        with_node(SOUND, is_cut("crosscut", 310.0), length=500.0),
        "not Rect(x0=10.0, y0=10.0, x1=510.0",
    ),
    "wood is lost": (with_node(SOUND, is_cut("rip", 303.0), high=None), "loses"),
    "a plunge": (with_node(SOUND, is_cut("rip", 303.0), cut="plunge"), "a cut is called plunge"),
    "begins elsewhere": (with_node(SOUND, is_cut("rip", 7.0), width=499.0), "whole stock"),
    "a leaf without use": (with_node(SOUND, lying("A-1"), use=None), "has no use"),
    "a piece called waste": (with_node(SOUND, lying("A-1"), use="waste"), "is waste, yet holds"),
    "sawn on": (with_node(SOUND, is_cut("rip", 210.0), use="offcut"), "is sawn on"),
    "against the grain": (
        asking(SOUND, PIECES[0], replace(PIECES[1], grain="length"), *PIECES[2:]),
        "B-1 lies against the grain",
    ),
    "more sheets than there are": (
        replace(SOUND, layouts=(*SOUND.layouts, TWO), value=2.0),
        "2 of sheet are cut, and there are 1",
    ),
    "unknown sheet": (
        replace(SOUND, layouts=(replace(TWO, number=1, stock=replace(SHEET, key="other")),)),
        "stock that nobody has",
    ),
    "wrong number": (replace(SOUND, layouts=(TWO,)), "layout 1 is numbered 2"),
    "cut for nothing": (
        replace(SOUND, layouts=(*SOUND.layouts, layout(2, SHEET, WASTED))),
        "layout 2 is cut for nothing",
    ),
    "row out of order": (planned(sound_tree(TURNED_FRONTS)), "row fronts is cut out of order"),
    "row from two strips": (planned(sound_tree(TWO_STRIPS)), "row fronts is cut from 2 strips"),
    "row in part": (
        asking(SOUND, *PIECES, Piece(mark="H", length=9, width=90, row="fronts")),
        "3 of 4 pieces",
    ),
    "row that does not stay whole": (
        with_node(SOUND, lambda region: region.row == "fronts", stays_whole=True),
        "said to stay whole: True",
    ),
    "row with a gap": (moved(SOUND, "G-1", x=280.0), "F-2 and G-1 of row fronts do not lie end"),
    "offcut too small": (asking(SOUND, wishes=Wishes(least_offcut=900.0)), "too small to keep"),
    "wood thrown away": (
        with_node(on(SOUND, bad=()), lambda region: region.use == "offcut", use="waste"),
        "is thrown away",
    ),
    "not strips first": (asking(SOUND, wishes=Wishes(strips=True)), "not cut into strips first"),
    "boards in three stages": (asking(SOUND, kind="boards"), "more than two stages"),
    "boards turned": (
        asking(SOUND, PIECES[0], replace(PIECES[1], grain="free"), *PIECES[2:], kind="boards"),
        "B-1 lies against the grain",
    ),
    "lengths ripped": (asking(SOUND, kind="lengths"), "a length is ripped"),
    "value": (replace(SOUND, value=2.0), "takes 2.0 (stock), and takes 1.0"),
    "price": (replace(SOUND, measure="price", value=41.0, lower_bound=0.0), "and takes 40.0"),
    "no price": (replace(on(SOUND, price=None), measure="price"), "not all of it has one"),
    "length": (replace(SOUND, measure="length", value=900.0), "and takes 1000.0"),
    "area": (replace(SOUND, measure="area", value=1.0), "and takes 500000.0"),
    "on hand is free": (on(SOUND, on_hand=True), "and takes 0.0"),
    "bound above": (replace(SOUND, lower_bound=2.0), "the bound 2.0 is above"),
    "covers nothing": (replace(SOUND, covers=""), "which plans it covers"),
}  # fmt: skip


@pytest.mark.parametrize("name", SPOILT)
def test_what_spoils_a_plan_is_found(name: str) -> None:
    plan, sentence = SPOILT[name]

    assert sentence in said(plan)


def test_lost_area_is_found_by_sum_as_well() -> None:
    """A part of the tree that is left out altogether is missed by the sum of all areas."""
    plan = with_node(SOUND, is_cut("rip", 303.0), high=None)

    assert "short of the whole" in said(plan)


def two_stage(layouts: Layout) -> Plan:
    task = replace(TASK, kind="boards", pieces=(PIECES[0],))
    return Plan(task=task, layouts=(layouts,), value=1.0, lower_bound=1.0)


def test_a_board_may_be_ripped_crosscut_and_trimmed() -> None:
    board = replace(SHEET, trim=Trim(), bad=())
    narrow = cut(rip, 200.0, piece("A", 2), waste)
    first = cut(crosscut, 300.0, cut(rip, 200.0, piece("A", 1), waste), waste)
    tree = cut(rip, 210.0, first, cut(crosscut, 300.0, narrow, waste))
    plan = two_stage(layout(1, board, tree))  # type: ignore[arg-type]

    assert said(on(plan, trim=Trim(), bad=())) == ""
