"""What makes one plan better than another: each rank against one that is better in the next."""

from dataclasses import replace

import pytest

from model.cutting.merit import gain_words, is_better
from model.cutting.record import Layout, LeftOut, Plan, Region, Stock, Task, Wishes

STOCK = Stock(key="sheet", length=1000.0, width=500.0)
TASK = Task(kind="sheets", pieces=(), stock=(STOCK,), kerf=3.0)


def leaf(x: float, length: float, use: str) -> Region:
    return Region(x=x, y=0.0, length=length, width=500.0, use=use)  # type: ignore[arg-type]


def crosscut(at: float, use: str = "waste") -> Layout:
    """One crosscut; what is behind it is kept or thrown away."""
    rest = leaf(at + 3.0, 997.0 - at, use)
    tree = Region(
        x=0.0, y=0.0, length=1000.0, width=500.0, cut="crosscut", at=at, kerf=3.0,
        low=leaf(0.0, at, "waste"), high=rest,
    )  # fmt: skip
    return Layout(number=1, stock=STOCK, tree=tree)


def plan(*layouts: Layout, value: float = 1.0, **more: object) -> Plan:
    return Plan(task=TASK, layouts=layouts, value=value, **more)  # type: ignore[arg-type]


ALIKE = plan(crosscut(400.0), replace(crosscut(400.0), number=2), value=2.0)
TWO_SETTINGS = plan(crosscut(400.0), replace(crosscut(300.0), number=2), value=2.0)
OFFCUT = plan(crosscut(400.0), replace(crosscut(300.0, "offcut"), number=2), value=2.0)
CHEAPER = plan(crosscut(400.0), crosscut(300.0), crosscut(200.0), value=1.0)
LEAVES_OUT = plan(value=0.0, left_out=(LeftOut("B1", 2, "Too long."),))


@pytest.mark.parametrize(
    ("one", "other", "words"),
    [
        (CHEAPER, LEAVES_OUT, "leaves fewer pieces out"),
        (CHEAPER, ALIKE, "takes 1 sheet fewer"),
        (ALIKE, OFFCUT, "needs fewer settings"),
        (OFFCUT, TWO_SETTINGS, "leaves a larger offcut"),
    ],
)
def test_each_rank_goes_before_the_next(one: Plan, other: Plan, words: str) -> None:
    assert is_better(one, other) and not is_better(other, one)
    assert gain_words(one, other) == words
    assert gain_words(other, one) == ""


def test_the_maker_may_put_the_offcut_before_the_settings() -> None:
    wished = replace(TASK, wishes=Wishes(offcut_before_settings=True))
    one, other = replace(OFFCUT, task=wished), replace(ALIKE, task=wished)

    assert is_better(one, other)
    assert gain_words(one, other) == "leaves a larger offcut"


def test_floating_point_dust_makes_no_plan_better() -> None:
    area = 2_301_285.72
    one = replace(ALIKE, value=area, measure="area")

    assert not is_better(one, replace(one, value=area * (1 + 1e-12)))
    assert is_better(one, replace(one, value=area * 1.01))
    assert gain_words(one, replace(one, value=area * 1.01)) == "takes 1.0% less"


def test_what_costs_less_says_so() -> None:
    one = replace(ALIKE, value=80.0, measure="price")

    assert gain_words(one, replace(one, value=95.0)) == "costs less"


def test_boards_that_are_spared_are_called_so() -> None:
    boards = replace(ALIKE, task=replace(TASK, kind="boards"), value=2.0)

    assert gain_words(boards, replace(boards, value=4.0)) == "takes 2 boards fewer"
