"""The cuts of a plan one after the other, told apart by board and number."""

from dataclasses import replace

from model.cutting.record import Layout, Placed, Region, Stock
from model.drawings.cut_steps import freed_by, sawn_plan
from model.drawings.cut_told import sawn
from tests.model.drawings.sample_layout import cut_plan, sheet, small_sheet

TWO = cut_plan(small_sheet(1), small_sheet(2))


def test_every_cut_is_a_step_and_has_one_number() -> None:
    plan = sawn_plan(TWO, "mm")

    numbers = [step.number for step in plan.steps]

    assert numbers == list(range(1, 15))  # seven cuts on each of two sheets
    assert len(plan.keys) == 14


def test_no_cut_comes_before_the_one_that_makes_its_blank() -> None:
    plan = sawn_plan(cut_plan(sheet(1), sheet(2)), "mm")

    place = {(step.layout, id(step.region)): k for k, step in enumerate(plan.steps)}

    for step in plan.steps:
        for part in step.region.parts:
            if part.cut is not None:
                assert place[step.layout, id(step.region)] < place[step.layout, id(part)]


def test_the_numbers_on_a_drawing_are_those_of_the_steps() -> None:
    plan = sawn_plan(TWO, "mm")

    for layout in plan.layouts:
        of_step = {id(s.region): s.number for s in plan.steps if s.layout == layout.number}
        assert plan.numbers(layout) == tuple(of_step[id(each)] for each in sawn(layout))


def test_sheets_cut_alike_may_share_one_tree() -> None:
    one = small_sheet(1)
    other = Layout(number=2, stock=one.stock, tree=one.tree)

    plan = sawn_plan(cut_plan(one, other), "mm")

    assert set(plan.numbers(one)).isdisjoint(plan.numbers(other))
    assert len({*plan.numbers(one), *plan.numbers(other)}) == 14


def test_every_piece_is_freed_by_the_last_cut_beside_it() -> None:
    plan = sawn_plan(TWO, "mm")

    freed = freed_by(plan.steps)

    assert set(freed) == {p.name for layout in TWO.plan.layouts for p in layout.placed}
    for name, place in freed.items():
        parts = plan.steps[place].region.parts
        assert any(part.placed is not None and part.placed.name == name for part in parts)


def test_stock_that_is_a_piece_already_is_a_step_without_a_cut() -> None:
    post = Placed("H1", 1, 0.0, 0.0, 900.0, 90.0, False)
    tree = Region(x=0.0, y=0.0, length=900.0, width=90.0, use="piece", placed=post)
    ready = Layout(number=1, stock=Stock(key="post", length=900.0, width=90.0), tree=tree)

    plan = sawn_plan(cut_plan(ready), "mm")

    assert [(step.number, step.frees) for step in plan.steps] == [(0, ("H1-1",))]


def test_lengths_in_the_sentences_are_in_the_makers_unit() -> None:
    plan = sawn_plan(TWO, "inch")

    assert any('"' in step.setting for step in plan.steps)
    assert not any(" mm" in step.setting for step in plan.steps)


def test_a_piece_is_found_on_its_board() -> None:
    plan = sawn_plan(TWO, "mm")

    assert plan.holding("B2-1") is TWO.plan.layouts[0]
    assert plan.holding("B9-1") is None


def test_a_plan_of_the_same_cuts_is_the_same() -> None:
    assert sawn_plan(TWO, "mm") == sawn_plan(replace(TWO), "mm")
