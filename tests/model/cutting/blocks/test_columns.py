"""Longer lists, from patterns made to order."""

import pytest

from model.cutting.blocks.columns import cover_by_columns
from model.cutting.bounds.question import Question, Sheet
from tests.model.cutting.blocks.sawn import check_pieces, saw
from tests.model.cutting.bounds.questions import A5, A43, ask, asks, cut_at_random, size


def check(asked: Question, rounds: int = 40) -> int:
    """The cost of the plan, every sheet of it sawn: all pieces once, from stock that is there."""
    found = cover_by_columns(asked, rounds, width=60, nodes=50)
    assert found is not None
    pieces: list[tuple[int, int, int]] = []
    for pattern in found.patterns:
        sheet = asked.sheets[pattern.sheet]
        pieces += saw(pattern.tree, sheet.length, sheet.width)
    assert check_pieces(asked, pieces) == {at: each.demand for at, each in enumerate(asked.sizes)}
    used = [each.sheet for each in found.patterns]
    for at, sheet in enumerate(asked.sheets):
        assert sheet.quantity is None or used.count(at) <= sheet.quantity
    assert found.cost == sum(asked.sheets[at].cost for at in used)
    return found.cost


@pytest.mark.parametrize(
    ("asked", "optimum"),
    [
        (ask((2470, 2080), *(size(*each) for each in A5)), 13),
        (ask((2750, 1220), *(size(*each) for each in A43)), 7),
        (ask((2750, 1220), *(size(*each, turns=True) for each in A43)), 6),
    ],
)
def test_published_lists_take_the_fewest_sheets(asked: Question, optimum: int) -> None:
    """Optima among guillotine plans, of the sources named beside the lists."""
    assert check(asked) == optimum


@pytest.mark.parametrize("seed", (1, 4, 8, 13))
def test_plans_from_several_kinds_of_stock_hold_all_pieces(seed: int) -> None:
    asked, _ = cut_at_random(seed)
    enough = tuple(each._replace(quantity=None) for each in asked.sheets)

    check(Question(sizes=asked.sizes, sheets=enough), rounds=8)


def test_no_more_sheets_are_used_than_there_are() -> None:
    """One large sheet holds four of the six, two small ones the rest."""
    sheets = Sheet(200, 100, 1, 3), Sheet(100, 60, None, 5)

    assert check(asks(sheets, size(90, 50, 6))) == 3 + 2 * 5


def test_what_stock_cannot_hold_gives_no_plan() -> None:
    asked = asks((Sheet(100, 60, 2, 1),), size(90, 50, 3))

    assert cover_by_columns(asked, 10, width=20, nodes=20) is None
