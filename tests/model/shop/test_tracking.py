"""Ticks are kept, plans are followed, and pieces that are cut outlast a change of the design."""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from pathlib import Path
from typing import Any

import pytest

from model import designs
from model.bed import Bed, Design, solve
from model.cutting.plan import first_plan
from model.cutting.record import Piece
from model.errors import BadInput
from model.shop import tracking
from model.shop.order.build import work_order
from model.shop.order.record import WorkOrder
from model.shop.plans import CutPlan, cut_plan, first_plans, still_to_cut
from model.shop.tracking_cuts import cuts
from model.shop.tracking_rest import going
from tests.model.shop.order.one_each import one_each, plan

DEMOS = Path(__file__).resolve().parents[3] / "resources" / "demos"
DEMO = DEMOS / "painted_storage_queen.bedwright"
FRAME = "red_maple-31.75"  # rails, stiles and layers of the posts
BOXES = "birch_ply_12-11.9"
CLEATS = "red_maple-38.1"


@cache
def queen() -> Bed:
    return solve(designs.read(DEMO))


@cache
def queens_plans() -> tuple[CutPlan, ...]:
    return one_each(queen())


def with_design(bed: Bed, design: Design) -> Bed:
    """The same bed, its design ticked; dimensions do not hang on ticks."""
    return replace(bed, design=design)


def changed(bed: Bed, **choices: Any) -> Bed:
    return solve(bed.design.with_choices(choices))


def of(plans: tuple[CutPlan, ...], key: str) -> CutPlan:
    return next(each for each in plans if each.key == key)


def freeing(cut: CutPlan, name: str) -> str:
    return next(k for k, c in cuts(cut.plan).items() if name in {p.name for p in c.frees})


def cut_out(bed: Bed, key: str, *names: str) -> Bed:
    for name in names:
        cut = of(one_each(bed), key)
        bed = with_design(bed, tracking.ticked(bed, cut, freeing(cut, name)))
    return bed


def order_of(bed: Bed) -> WorkOrder:
    return work_order(bed, one_each(bed))


def step(order: WorkOrder, operation: str, mark: str) -> str:
    return next(n.key for b, n in order.of(mark) if b.operation == operation)


def done(bed: Bed, *steps: tuple[str, str]) -> Bed:
    for operation, mark in steps:
        order = order_of(bed)
        bed = with_design(bed, tracking.step_ticked(bed, order, step(order, operation, mark)))
    return bed


def planned_rest(bed: Bed, key: str) -> CutPlan:
    task = next(each for each in still_to_cut(bed) if each.key == key)
    return cut_plan(task, plan(task.task))


# ---------------------------------------------------------------- cuts and plans


def test_the_first_tick_keeps_the_plan_and_all_cuts_before_it() -> None:
    cut = of(queens_plans(), FRAME)
    key = freeing(cut, "H3-1")

    progress = tracking.ticked(queen(), cut, key).progress

    assert progress.plan_of(FRAME) == cut.plan
    assert progress.cuts_done == {*cuts(cut.plan)[key].needs, key}
    assert [(part.mark, part.piece, part.cut) for part in progress.parts] == [("H3", 1, key)]


def test_a_cut_piece_is_kept_as_drawn_and_as_sawn() -> None:
    part = cut_out(queen(), FRAME, "H3-1").design.progress.parts[0]

    rail = next(mark for mark in queen().marks if mark.mark == "H3")
    assert (part.length, part.width, part.thickness) == rail.part.size
    assert part.rough_length > part.length
    assert (part.name, part.material, part.work) == ("end rail", "red_maple", "")


def test_a_sheet_part_leaves_the_saw_with_its_size() -> None:
    part = cut_out(queen(), BOXES, "B1-1").design.progress.parts[0]

    assert (part.rough_length, part.rough_width, part.rough_thickness) == (0, 0, 0)


def test_unticking_a_cut_takes_what_it_freed_and_what_follows_from_it() -> None:
    cut = of(queens_plans(), FRAME)
    last = freeing(cut, "H3-1")
    first = cuts(cut.plan)[last].needs[0]
    ticked = with_design(queen(), tracking.ticked(queen(), cut, last))

    progress = tracking.ticked(ticked, cut, first, False).progress

    assert progress.cuts_done == frozenset()
    assert progress.parts == ()
    assert progress.plan_of(FRAME) == cut.plan, "the plan stays in use"


def test_ticking_and_unticking_is_where_it_began() -> None:
    kept = with_design(queen(), tracking.accepted(queen(), of(queens_plans(), FRAME)))
    cut = of(queens_plans(), FRAME)
    key = freeing(cut, "S1-1")

    ticked = with_design(kept, tracking.ticked(kept, cut, key))

    undone = tracking.ticked(ticked, cut, cuts(cut.plan)[key].needs[0], False)
    assert undone == kept.design


def test_the_plan_in_use_is_what_is_planned() -> None:
    cut = of(queens_plans(), BOXES)
    bed = with_design(queen(), tracking.accepted(queen(), cut))

    found = of(first_plans(bed), BOXES)

    assert found.is_stored
    assert found.plan == cut.plan


def test_a_plan_that_is_begun_gives_its_place_to_no_other() -> None:
    bed = cut_out(queen(), BOXES, "B1-1")
    other = replace(of(queens_plans(), BOXES).plan, notes=("another",))

    with pytest.raises(BadInput, match="Untick them first"):
        tracking.accepted(bed, replace(of(queens_plans(), BOXES), plan=other))


def test_a_better_plan_takes_no_place_by_itself() -> None:
    kept = of(queens_plans(), BOXES)
    bed = with_design(queen(), tracking.accepted(queen(), kept))
    better = of(first_plans(queen()), BOXES)
    assert len(better.plan.layouts) < len(kept.plan.layouts), "else the test tells nothing"

    assert of(first_plans(bed), BOXES).plan == kept.plan


def test_a_change_of_price_leaves_the_plan_in_use() -> None:
    cut = of(queens_plans(), BOXES)
    bed = with_design(queen(), tracking.accepted(queen(), cut))
    dearer = replace(cut.plan, task=replace(cut.plan.task, stock=tuple(
        replace(each, price=99.0) for each in cut.plan.task.stock
    )))  # fmt: skip
    stored = replace(bed.design.progress, plans=(dearer,))

    on_task = going(with_design(bed, replace(bed.design, progress=stored))).tasks

    assert next(each.kept for each in on_task if each.task.key == BOXES) == dearer


def test_a_plan_of_another_bed_is_refused_in_a_sentence() -> None:
    longer, old = changed(queen(), mattress_length=2050.0), of(queens_plans(), FRAME)

    with pytest.raises(BadInput, match="plan of Soft maple .* was made for the bed as it was"):
        tracking.ticked(longer, old, freeing(old, "S1-1"))


# ---------------------------------------------------------------- steps


def test_milling_takes_the_rough_sizes_one_by_one() -> None:
    bed = done(cut_out(queen(), FRAME, "H3-1"), ("Plane to thickness", "H3"))

    part = bed.design.progress.parts[0]
    assert part.rough_thickness == 0
    assert part.rough_width > 0
    assert part.rough_length > 0


def test_a_step_puts_all_pieces_of_its_mark_on_record() -> None:
    bed = done(queen(), ("Crosscut to length", "D1"))

    slats = [part for part in bed.design.progress.parts if part.mark == "D1"]
    assert [part.piece for part in slats] == list(range(1, 15))
    assert all(part.cut == "" for part in slats)


def test_a_step_is_undone_to_where_it_began() -> None:
    before = cut_out(queen(), FRAME, "H3-1", "H4-1")
    order = order_of(before)

    for batch, line in order.of("H3"):
        ticked = with_design(before, tracking.step_ticked(before, order, line.key))
        assert ticked.design != before.design
        undone = tracking.step_ticked(ticked, order, line.key, False)
        assert undone.progress.steps_done == before.design.progress.steps_done, batch.operation
        assert set(undone.progress.parts) == set(before.design.progress.parts), batch.operation


def test_layers_that_are_glued_are_one_piece_and_come_apart_again() -> None:
    layers = cut_out(queen(), FRAME, "H1/1-1", "H1/1-2")
    order = order_of(layers)
    glue = step(order, "Glue up layers", "H1")

    glued = with_design(layers, tracking.step_ticked(layers, order, glue))
    apart = tracking.step_ticked(glued, order, glue, False)

    (post,) = glued.design.progress.parts
    assert (post.mark, post.piece, post.thickness) == ("H1", 1, 50.8)
    assert set(apart.progress.parts) == set(layers.design.progress.parts)


def test_what_is_cut_into_a_piece_is_on_record_and_goes_when_it_is_undone() -> None:
    bed = done(queen(), ("Grooves", "H3"))
    order = order_of(bed)

    undone = tracking.step_ticked(bed, order, step(order, "Grooves", "H3"), False)

    assert bed.design.progress.parts[0].work
    assert undone.progress.parts == ()


def test_a_key_that_no_order_has_is_refused_and_can_still_be_unticked() -> None:
    order = order_of(queen())
    stale = replace(queen().design.progress, steps_done=frozenset({"groove | gone"}))
    bed = with_design(queen(), replace(queen().design, progress=stale))

    with pytest.raises(BadInput, match="no step"):
        tracking.step_ticked(queen(), order, "groove | gone")
    assert not tracking.step_ticked(bed, order, "groove | gone", False).progress.steps_done


def test_a_row_of_the_buying_list_is_ticked_and_unticked() -> None:
    ticked = tracking.bought_ticked(queen().design, "GLIDE")

    assert ticked.progress.bought == {"GLIDE"}
    assert tracking.bought_ticked(ticked, "GLIDE", False) == queen().design


# ---------------------------------------------------------------- the design changes


def test_pieces_that_a_change_does_not_touch_still_serve() -> None:
    bed = cut_out(queen(), FRAME, "H3-1", "S1-1", "S1-2")

    held = tracking.outdated(changed(bed, mattress_width=1600.0))

    assert [(each.part.mark, each.mark) for each in held.serves] == [("S1", "S1"), ("S1", "S1")]
    assert [each.part.mark for each in held.unfit] == ["H3"]


def test_what_no_longer_fits_is_told_with_both_sizes() -> None:
    bed = cut_out(queen(), FRAME, "H3-1")

    (unfit,) = tracking.outdated(changed(bed, mattress_width=1600.2)).unfit

    assert unfit.sentence.startswith('H3-1 (end rail) was cut as 59 1/2" x 7 1/2" x 1"')
    assert 'is now 62 1/2"' in unfit.sentence
    assert unfit.sentence.endswith('3" longer.')


def test_a_longer_piece_is_offered_for_a_shorter_part_and_only_once() -> None:
    """The two end rails are cut, then the bed is made narrower: both can be cut down."""
    bed = changed(cut_out(queen(), FRAME, "H3-1", "F3-1"), mattress_width=1372.0)

    held = tracking.outdated(bed)

    assert len(held.recuts) == 2
    assert len({(each.need.mark, each.need.piece) for each in held.recuts}) == 2
    assert {each.part.mark for each in held.recuts} == {"H3", "F3"}


def test_nothing_is_recut_from_a_piece_with_joints_in_it() -> None:
    bed = done(cut_out(queen(), FRAME, "H3-1"), ("Grooves", "H3"))

    held = tracking.outdated(changed(bed, mattress_width=1372.0))

    assert held.recuts == ()


def test_nothing_is_recut_to_a_longer_part() -> None:
    bed = cut_out(queen(), FRAME, "S1-1", "S1-2")

    held = tracking.outdated(changed(bed, mattress_length=2200.0))

    assert not [each for each in held.recuts if each.need.mark == "S1"]


def test_a_recut_piece_serves_as_the_new_part() -> None:
    bed = changed(cut_out(queen(), FRAME, "H3-1"), mattress_width=1372.0)
    (offer,) = tracking.outdated(bed).recuts

    after = with_design(bed, tracking.recut(bed, offer))

    assert [(e.mark, e.piece) for e in tracking.outdated(after).serves] == [
        (offer.need.mark, offer.need.piece)
    ]
    assert offer.need.mark not in {p.mark for p in rest_pieces(after, FRAME, offer.need.piece)}


def rest_pieces(bed: Bed, key: str, number: int) -> list[Any]:
    task = next(each.task for each in still_to_cut(bed) if each.key == key)
    return [p for p in task.pieces if p.first <= number < p.first + p.quantity]


def test_a_glued_post_is_cut_down_as_a_whole() -> None:
    bed = done(cut_out(queen(), FRAME, "F1/1-1", "F1/1-2"), ("Glue up layers", "F1"))
    lower = changed(bed, **{"foot.height": 600.0})

    (offer,) = tracking.outdated(lower).recuts

    assert (offer.part.mark, offer.need.whole, offer.need.name) == ("F1", True, "post")
    after = with_design(lower, tracking.recut(lower, offer))
    wanted = {(p.mark, n) for p in task_of(after, FRAME) for n in numbers(p)}
    assert not {(f"{offer.need.mark}/1", 1), (f"{offer.need.mark}/1", 2)} & wanted


def test_a_piece_that_is_spoilt_is_planned_once_more() -> None:
    bed = done(cut_out(queen(), BOXES, "B1-1"), ("Grooves", "B1"))

    moved = changed(bed, bottom_up=11.1125)

    assert ("B1", 1) in {(p.mark, n) for p in task_of(moved, BOXES) for n in numbers(p)}


def test_what_the_rack_holds_no_more_is_bought_when_a_change_spoils_a_cut_piece() -> None:
    """Both cleats come from the one board of their class; a shorter bed takes two others."""
    design = queen().design
    one = next(each for each in design.stock.boards if each.name == "N1")
    rest = (each for each in design.stock.boards if each.thickness != one.thickness)
    stock = replace(design.stock, boards=(*rest, one))
    bed = with_design(queen(), replace(design, stock=stock))
    task = next(each for each in still_to_cut(bed) if each.key == CLEATS)
    cut = cut_plan(task, first_plan(task.task))
    for name in ("S3-1", "S3-2"):
        bed = with_design(bed, tracking.ticked(bed, cut, freeing(cut, name)))

    shorter = changed(bed, mattress_length=1905.0)

    task = next(each for each in still_to_cut(shorter) if each.key == CLEATS)
    found = first_plan(task.task)
    assert found.left_out == ()
    assert all(layout.stock.is_assumed for layout in found.layouts)
    assert any("to buy beside it" in note for note in task.notes)


def test_a_stored_plan_that_leaves_pieces_out_gives_way_once_there_is_stock() -> None:
    short = queen().design.with_choices({})
    bare = replace(short, stock=replace(short.stock, boards=()))
    bed = with_design(queen(), bare)
    task = next(each for each in still_to_cut(bed) if each.key == CLEATS)
    empty = first_plan(replace(task.task, stock=()))
    kept = replace(bed.design, progress=replace(bed.design.progress, plans=(empty,)))

    found = next(each for each in going(with_design(bed, kept)).tasks if each.task.key == CLEATS)

    assert empty.left_out
    assert found.kept is None


def task_of(bed: Bed, key: str) -> tuple[Piece, ...]:
    return next(each.task.pieces for each in still_to_cut(bed) if each.key == key)


def numbers(piece: Piece) -> range:
    return range(piece.first, piece.first + piece.quantity)


def test_joints_that_moved_spoil_a_piece_of_the_same_size() -> None:
    bed = done(cut_out(queen(), BOXES, "B1-1"), ("Grooves", "B1"))

    held = tracking.outdated(changed(bed, bottom_up=11.1125))

    assert held.unfit
    assert "joints or holes of B1-1 (box side) are now elsewhere" in held.unfit[0].sentence


def test_joints_that_stayed_do_not() -> None:
    bed = done(cut_out(queen(), BOXES, "B1-1"), ("Grooves", "B1"))

    held = tracking.outdated(changed(bed, mattress_length=1905.0))

    assert held.unfit == ()


# ---------------------------------------------------------------- the rest is planned anew


def narrowed() -> Bed:
    """Two box sides and a box front are cut; then the boxes are made narrower."""
    bed = cut_out(queen(), BOXES, "B1-1", "B1-2", "B2-1")
    return changed(bed, mattress_length=1905.0)


def test_boards_that_were_begun_stay_and_their_offcuts_are_stock() -> None:
    bed = narrowed()

    on_task = next(each for each in going(bed).tasks if each.task.key == BOXES)

    begun = on_task.begun[0]
    assert {placed.name for layout in begun.layouts for placed in layout.placed} == {
        "B1-1", "B1-2", "B2-1",
    }  # fmt: skip
    left = [stock for stock in on_task.task.task.stock if stock.key.startswith("left of")]
    assert left
    assert all(stock.on_hand and stock.quantity == 1 for stock in left)


def test_what_serves_is_not_cut_again_and_what_does_not_is() -> None:
    task = next(each.task for each in still_to_cut(narrowed()) if each.key == BOXES)

    wanted = {(p.mark, n) for p in task.pieces for n in range(p.first, p.first + p.quantity)}
    assert not {("B1", 1), ("B1", 2)} & wanted, "box sides did not change"
    assert ("B1", 3) in wanted
    assert ("B2", 1) in wanted, "box fronts did"


def test_no_tick_is_lost_when_the_rest_is_planned() -> None:
    bed = narrowed()
    ticks = len(bed.design.progress.cuts_done)

    after = tracking.accepted(bed, planned_rest(bed, BOXES)).progress

    assert len(after.cuts_done) == ticks
    assert len(after.parts) == len(bed.design.progress.parts)
    assert after.cuts_done == {key for p in after.plans for key in cuts(p) if ", begun" in key}


def test_the_rest_stays_the_same_while_it_is_cut() -> None:
    bed = narrowed()
    rest = planned_rest(bed, BOXES)
    bed = with_design(bed, tracking.accepted(bed, rest))

    for key in cuts(rest.plan):
        bed = with_design(bed, tracking.ticked(bed, rest, key))
        kept = next(each.kept for each in going(bed).tasks if each.task.key == BOXES)
        assert kept == rest.plan

    held = tracking.outdated(bed)
    assert not [each for each in held.anew if each.mark in ("B1", "B2", "B3")]


def test_a_second_change_begins_from_both() -> None:
    bed = narrowed()
    rest = planned_rest(bed, BOXES)
    bed = with_design(bed, tracking.ticked(bed, rest, freeing(rest, "B2-1")))

    again = changed(bed, mattress_length=2032.0)
    on_task = next(each for each in going(again).tasks if each.task.key == BOXES)

    assert [plan.task.name for plan in on_task.begun] == [f"{BOXES}, begun 1", f"{BOXES}, begun 2"]
    assert ("B2", 1) not in {
        (p.mark, n) for p in on_task.task.task.pieces for n in range(p.first, p.first + p.quantity)
    }, "the front that was cut first fits again"


def test_begun_boards_are_shown_with_the_plan_for_the_rest() -> None:
    found = [each.key for each in first_plans(narrowed())]

    assert [key for key in found if key.startswith(BOXES)] == [f"{BOXES}, begun 1", BOXES]


# ---------------------------------------------------------------- the design file


@pytest.mark.parametrize("path", sorted(DEMOS.glob("*.bedwright")), ids=lambda path: path.stem)
def test_what_is_ticked_comes_back_from_the_design_file(path: Path) -> None:
    """The plans as they are really found, and one step of every operation."""
    bed = solve(designs.read(path))
    found = first_plans(bed)
    order = work_order(bed, found)
    for cut in found:
        bed = with_design(bed, tracking.all_ticked(bed, cut, list(cuts(cut.plan))[:3]))
    for key in {
        batch.operation: batch.lines[0].key for batch in order.batches if batch.way != "saw"
    }.values():
        bed = with_design(bed, tracking.step_ticked(bed, order, key))

    again = designs.from_bytes(designs.to_bytes(bed.design))

    assert again.progress == bed.design.progress
    assert {each.key for each in first_plans(with_design(bed, again)) if each.is_stored} == {
        each.key for each in found
    }
