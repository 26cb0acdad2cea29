"""Exact plans: sawn again, on published lists, and against choices made by hand."""

from collections import Counter
from dataclasses import replace

import pytest

from model.cutting.blocks import exact_cover
from model.cutting.blocks.cover import cover
from model.cutting.blocks.record import Cover, Pattern
from model.cutting.bounds import bound_of
from model.cutting.bounds.question import Question, Sheet
from model.cutting.record import Box, Piece, Stock, Task
from model.cutting.whole import whole
from tests.model.cutting.blocks.sawn import check_pieces, saw
from tests.model.cutting.bounds.questions import (
    A43,
    CL_09_020_01,
    ask,
    asks,
    cut_at_random,
    size,
)

NODES = 200


def sawn(asked: Question, found: Cover) -> Counter[int]:
    pieces: list[tuple[int, int, int]] = []
    for pattern in found.patterns:
        sheet = asked.sheets[pattern.sheet]
        here = saw(pattern.tree, sheet.length, sheet.width)
        counts = Counter(number for number, *_ in here)
        assert pattern.counts == tuple(counts[at] for at in range(len(asked.sizes)))
        pieces += here
    return check_pieces(asked, pieces)


def check_whole(asked: Question, found: Cover) -> None:
    """Every piece once, no more sheets than there are, the cost added up."""
    assert sawn(asked, found) == {at: each.demand for at, each in enumerate(asked.sizes)}
    used = Counter(each.sheet for each in found.patterns)
    for at, sheet in enumerate(asked.sheets):
        assert sheet.quantity is None or used[at] <= sheet.quantity
    assert found.cost == sum(asked.sheets[at].cost * number for at, number in used.items())
    assert found.lower_bound <= found.cost


@pytest.mark.parametrize(
    ("asked", "optimum"),
    [
        (ask((2750, 1220), *(size(*each) for each in A43)), 7),
        (ask((2750, 1220), *(size(*each, turns=True) for each in A43)), 6),
        (ask((100, 100), *(size(*each) for each in CL_09_020_01)), 19),
        (ask((100, 100), *(size(*each, turns=True) for each in CL_09_020_01)), 19),
    ],
)
def test_published_lists_take_the_fewest_sheets(asked: Question, optimum: int) -> None:
    """Optima among guillotine plans, of the sources named beside the lists."""
    found = cover(asked, NODES)

    assert found is not None
    check_whole(asked, found)
    assert (found.cost, found.lower_bound) == (optimum, optimum)


@pytest.mark.parametrize("seed", range(30))
def test_what_was_cut_from_some_sheets_is_cut_from_no_dearer_ones(seed: int) -> None:
    asked, cost = cut_at_random(seed)

    found = cover(asked, NODES, most=4000)

    if found is None:  # too many blocks; the next test sees that this is not always so
        return
    check_whole(asked, found)
    assert found.lower_bound <= cost
    assert bound_of(asked, found.cost).cost <= found.cost
    if found.is_proven:
        assert found.cost <= cost


def test_most_lists_cut_at_random_are_short_enough() -> None:
    answers = [cover(cut_at_random(seed)[0], NODES, most=4000) for seed in range(30)]

    assert sum(each is not None and each.is_proven for each in answers) >= 15


def test_a_layout_that_no_saw_can_part_is_not_found() -> None:
    """Four strips of 2 x 1 around a hole fill 3 x 3 but for its middle: no cut runs through. The
    bounds, which hold for any layout, allow one sheet; cut from edge to edge it takes two."""
    asked = ask((3, 3), size(2, 1, 2), size(1, 2, 2))

    found = cover(asked, NODES)

    assert found is not None
    check_whole(asked, found)
    assert (found.cost, found.lower_bound) == (2, 2)
    assert bound_of(asked, 2).cost == 1


def test_offcuts_are_used_before_sheets_are_bought() -> None:
    sheets = (Sheet(100, 100, None, 1), Sheet(60, 60, 2, 0))
    asked = asks(sheets, size(55, 55, 3), size(40, 90, 1))

    found = cover(asked, NODES)

    assert found is not None
    check_whole(asked, found)
    assert found.cost == 1  # 55 and 40 share the sheet, two offcuts take a 55 each


def task(*stock: Stock) -> Task:
    pieces = (
        Piece(mark="A", length=500, width=300, quantity=3),
        Piece(mark="B", length=400, width=300, grain="free"),
    )
    return Task(kind="sheets", pieces=pieces, stock=stock, kerf=3.0)


PLAIN = Stock(key="plain", length=1010, width=620)


def test_a_task_is_covered_with_its_kerf() -> None:
    """500 + 3 + 500 fit in 1010 along and 300 + 3 + 300 in 620 across: all four on one sheet."""
    found = exact_cover(whole(task(PLAIN)), NODES)

    assert found is not None
    assert found.cost == 1
    assert sum(found.patterns[0].counts) == 4


@pytest.mark.parametrize(
    "stock",
    [
        (replace(PLAIN, bad=(Box(500, 0, 520, 620),)),),
        (PLAIN, replace(PLAIN, key="no grain", has_grain=False)),
        (replace(PLAIN, length=450),),
        (replace(PLAIN, length=510, width=310, quantity=3),),
    ],
    ids=["bad span", "grain differs", "too small a sheet", "too little stock"],
)
def test_what_blocks_cannot_say_is_not_answered(stock: tuple[Stock, ...]) -> None:
    assert exact_cover(whole(task(*stock)), NODES) is None


def test_the_same_list_gives_the_same_patterns() -> None:
    asked = ask((2750, 1220), *(size(*each, turns=True) for each in A43))

    def patterns() -> tuple[Pattern, ...]:
        found = cover(asked, NODES)
        assert found is not None
        return found.patterns

    assert patterns() == patterns()
