"""Parts that are mortised near an end are cut to length after; what a stick marks has one end."""

from __future__ import annotations

import pytest

from model.bed import Bed
from model.part import Face
from model.shop.order.horns import NEAR_END, horned
from model.shop.order.record import Batch
from tests.model.shop.order.test_work_order import batches, changed, demo, every_demo


def cut_at(name: str) -> dict[tuple[str, str], int]:
    """The last place in the order of each operation on each mark."""
    order = demo(name)[1]
    return {
        (batch.operation, line.mark): n
        for n, batch in enumerate(order.batches)
        for line in batch.lines
    }


def rooms(bed: Bed, mark: str) -> list[float]:
    """The wood between each mortise of a mark and its far end, from the part itself."""
    part = next(each.part for each in bed.marks if each.mark == mark)
    return [part.size[0] - cut.high[0] for cut in part.cuts if cut.kind == "mortise"]


@every_demo
def test_a_mortise_near_the_far_end_is_cut_while_the_part_is_long(name: str) -> None:
    """Common practice: a horn is left beyond a mortise, and sawn off when it is cut."""
    bed, when = demo(name)[0], cut_at(name)

    for mark in (each.mark for each in bed.marks):
        near = [room for room in rooms(bed, mark) if 0 < room < NEAR_END]
        if near:
            assert when["Mortises", mark] < when["Crosscut to length", mark], mark
        elif ("Mortises", mark) in when:
            assert when["Crosscut to length", mark] < when["Mortises", mark], mark


@every_demo
def test_what_is_done_to_a_part_with_its_horn_is_measured_from_the_near_end(name: str) -> None:
    """The far end is not there yet."""
    bed, order = demo(name)
    when = cut_at(name)

    for n, batch in enumerate(order.batches):
        for line in batch.lines:
            if line.mark in horned(bed) and n < when["Crosscut to length", line.mark]:
                ends = {spot.end for spot in line.spots}
                assert Face.FAR not in ends | {spot.against for spot in line.spots}


def test_the_posts_are_squared_at_the_near_end_before_the_first_of_it() -> None:
    order = demo("guest_room_double")[1]
    told = [
        batch for batch in order.batches if batch.before[:1] and "Square the" in batch.before[0]
    ]

    assert [named(batch) for batch in told] == ["H1 and H2", "F1 and F2"]


def named(batch: Batch) -> str:
    return batch.before[0].removeprefix("Square the near end of ").partition(" and measure")[0]


def test_without_an_allowance_there_is_no_horn() -> None:
    bed, _ = demo("guest_room_double")
    order = changed(bed, rough_length_more=6.0)

    last = max(n for n, batch in enumerate(order.batches) if batch.stage == "trim")
    assert horned(bed) == {"H1", "H2", "F1", "F2"}
    assert all(
        n <= last for n, b in enumerate(order.batches) if b.operation == "Crosscut to length"
    )


@every_demo
def test_what_is_marked_from_a_story_stick_is_measured_from_one_end(name: str) -> None:
    for batch in demo(name)[1].batches:
        if any("story stick" in each for each in batch.aids):
            ends = {spot.end for line in batch.lines for spot in line.spots}
            assert Face.FAR not in ends, batch.setting


def test_a_rabbet_along_an_edge_is_as_wide_as_its_page_tells() -> None:
    """The blocks of the guest room's fronts: 8 mm of 21 mm go, 19 mm wide."""
    bed, order = demo("guest_room_double")
    (rabbet,) = (b for b in batches(order, "Rabbets") if "R1" in {n.mark for n in b.lines})
    cut = next(c for m in bed.marks if m.mark == "R1" for c in m.part.cuts if c.kind == "rabbet")

    assert rabbet.figure("width") == pytest.approx(cut.high[1] - cut.low[1])
    assert rabbet.figure("depth") == pytest.approx(cut.high[2] - cut.low[2])
    assert rabbet.setting == "19 mm wide, 8 mm deep, along the edge"
