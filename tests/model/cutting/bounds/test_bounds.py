"""The bound as a whole: never above what is enough, and where published, as high."""

import pytest

from model.cutting.bounds import bound, bound_of
from model.cutting.bounds.question import Sheet, Size
from model.cutting.record import Piece, Stock, Task
from model.cutting.whole import whole
from tests.model.cutting.bounds.questions import (
    A5,
    A43,
    CL_09_020_01,
    ask,
    asks,
    cut_at_random,
    size,
)

OUT_OF_REACH = 10**9


@pytest.mark.parametrize("seed", range(40))
def test_what_was_cut_from_some_sheets_never_needs_dearer_ones(seed: int) -> None:
    """Every bound is looked for, because the target is out of reach."""
    asked, cost = cut_at_random(seed)

    found = bound_of(asked, OUT_OF_REACH)

    assert found.is_enough
    assert 0 <= found.cost <= cost


def turning(*sizes: tuple[int, int, int]) -> tuple[Size, ...]:
    return tuple(size(*each, turns=True) for each in sizes)


def fixed(*sizes: tuple[int, int, int]) -> tuple[Size, ...]:
    return tuple(size(*each) for each in sizes)


@pytest.mark.parametrize(
    ("sheet", "sizes", "optimum"),
    [
        ((2750, 1220), fixed(*A43), 7),
        ((2750, 1220), turning(*A43), 6),
        ((2470, 2080), fixed(*A5), 13),
        ((100, 100), fixed(*((*each, 1) for each in CL_09_020_01)), 19),
        ((100, 100), turning(*((*each, 1) for each in CL_09_020_01)), 19),
    ],
)
def test_published_lists_are_bound_to_their_optimum(
    sheet: tuple[int, int], sizes: tuple[Size, ...], optimum: int
) -> None:
    """Optima of the sources named beside the lists, among guillotine plans. The bounds hold for
    any layout, so they need not have reached them; that they do is why these plans are proven."""
    assert bound_of(ask(sheet, *sizes), OUT_OF_REACH).cost == optimum


def test_five_pieces_over_a_third_need_two_sheets() -> None:
    """Two lie in a row and two across: four on a sheet, in whatever layout. Area alone: one."""
    found = bound_of(ask((100, 100), size(34, 34, 5)), 2)

    assert found.cost == 2
    assert found.covers == "any plan"


def test_the_reason_is_the_first_that_reaches_the_target() -> None:
    by_area = bound_of(ask((100, 100), size(10, 10, 101)), 2)
    by_clique = bound_of(ask((100, 100), size(51, 51, 2)), 2)

    assert by_area.by == "the area alone"
    assert by_clique.by == "2 pieces of which no two share a sheet"


def test_offcuts_on_hand_are_free() -> None:
    """Two offcuts take one panel each; the other two panels take a sheet each."""
    sheets = (Sheet(100, 100, None, 1), Sheet(60, 60, 2, 0))

    assert bound_of(asks(sheets, size(55, 55, 4)), OUT_OF_REACH).cost == 2


def test_offcuts_enough_for_all_cost_nothing() -> None:
    sheets = (Sheet(100, 100, None, 1), Sheet(60, 60, 4, 0))

    assert bound_of(asks(sheets, size(55, 55, 4)), OUT_OF_REACH).cost == 0


def test_of_two_prices_the_cheaper_mix_is_the_bound() -> None:
    """Four panels of half a large sheet each: two large ones at 50, or four small ones at 30."""
    sheets = (Sheet(200, 100, None, 50), Sheet(100, 100, None, 30))

    assert bound_of(asks(sheets, size(100, 100, 4)), OUT_OF_REACH).cost == 100
    assert bound_of(asks(sheets, size(100, 100, 5)), OUT_OF_REACH).cost == 130


def test_stock_that_is_too_little_is_said_so() -> None:
    asked = asks((Sheet(100, 100, 2, 1),), size(60, 60, 3))

    assert not bound_of(asked, OUT_OF_REACH).is_enough


def test_a_task_is_bound_with_its_kerf() -> None:
    """Five strips of 200 across 1000 leave no room for four kerfs: a sheet holds four."""
    strips = Piece(mark="S", length=2000, width=200, quantity=10)
    sheet = Stock(key="sheet", length=2000, width=1000)

    def sheets(kerf: float) -> int:
        task = Task(kind="sheets", pieces=(strips,), stock=(sheet,), kerf=kerf)
        return bound(whole(task), OUT_OF_REACH).cost

    assert sheets(0.0) == 2
    assert sheets(3.2) == 3


def test_a_piece_that_fits_no_sheet_is_not_counted() -> None:
    pieces = (Piece(mark="A", length=900, width=900), Piece(mark="B", length=1100, width=200))
    task = Task(
        kind="sheets", pieces=pieces, stock=(Stock(key="s", length=1000, width=1000),), kerf=3.0
    )

    assert bound(whole(task), OUT_OF_REACH).cost == 1
