"""Pieces that share no sheet, by hand and against trying every choice of sizes."""

from itertools import combinations

import pytest

from model.cutting.bounds.clique import clique, share_a_sheet
from model.cutting.bounds.cover import Weighing
from model.cutting.bounds.question import Question, Sheet
from tests.model.cutting.bounds.questions import CL_09_020_01, ask, asks, cut_at_random, size


def by_trial(asked: Question) -> int:
    """The most pieces of which no two share a sheet: every choice of pieces tried."""
    pieces = [each for each in asked.sizes for _ in range(min(each.demand, 3))]
    return max(
        number
        for number in range(1, len(pieces) + 1)
        for chosen in combinations(pieces, number)
        if not any(share_a_sheet(a, b, asked.sheets) for a, b in combinations(chosen, 2))
    )


def test_large_panels_take_a_sheet_each() -> None:
    """Two of 60 x 60 do not fit 100 x 100 side by side; a strip of 39 beside one does, two not."""
    asked = ask((100, 100), size(60, 60, 4), size(90, 41), size(90, 40), size(10, 39, 9))

    assert clique(asked) == Weighing(total=5, holds=(1,))


def test_a_piece_that_may_turn_shares_more_sheets() -> None:
    """70 + 31 is over 100 and 20 + 50 over 60; turned, 20 + 31 fits in 60."""
    assert clique(ask((100, 60), size(70, 20), size(31, 50))).total == 2
    assert clique(ask((100, 60), size(70, 20), size(31, 50, turns=True))).total == 1


def test_pieces_share_a_sheet_when_any_kind_holds_both() -> None:
    small, large = Sheet(100, 100, None, 1), Sheet(200, 100, None, 2)

    assert clique(asks((small,), size(60, 60, 3))).total == 3
    assert clique(asks((small, large), size(60, 60, 3))).total == 1


def test_a_sheet_too_small_for_all_of_them_holds_none() -> None:
    asked = asks((Sheet(100, 100, None, 1), Sheet(50, 50, 5, 0)), size(60, 60, 3))

    assert clique(asked).holds == (1, 0)


def test_nineteen_pieces_of_a_published_list_share_no_sheet() -> None:
    """The 19 with both sides of 50 or more; optimum 19 in the source."""
    asked = ask((100, 100), *(size(*sides) for sides in CL_09_020_01))

    assert clique(asked).total == 19


@pytest.mark.parametrize("seed", range(40))
def test_no_choice_of_pieces_is_larger(seed: int) -> None:
    asked, _ = cut_at_random(seed)
    asked = Question(sizes=asked.sizes[:9], sheets=asked.sheets)
    few = tuple(each._replace(demand=min(each.demand, 2)) for each in asked.sizes)
    asked = Question(sizes=few, sheets=asked.sheets)

    assert clique(asked).total == by_trial(asked)
