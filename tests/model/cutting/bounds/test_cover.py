"""What sheets cost that hold a total, against trying every number of each."""

from itertools import product
from random import Random

import pytest

from model.cutting.bounds import cover
from model.cutting.bounds.cover import Weighing, least_cost, weigh
from model.cutting.bounds.question import Sheet
from tests.model.cutting.bounds.questions import ask, asks, size


def drawn(seed: int) -> tuple[tuple[Sheet, ...], Weighing]:
    draw = Random(seed)
    kinds = draw.randint(1, 4)
    sheets = tuple(
        Sheet(1, 1, draw.choice((None if at < 2 else 4, 1, 2, 3)), draw.choice((1, 1, 2, 5, 7)))
        if draw.random() < 0.8
        else Sheet(1, 1, draw.randint(1, 3), 0)
        for at in range(kinds)
    )
    holds = tuple(draw.randint(0, 20) for _ in range(kinds))
    return sheets, Weighing(total=draw.randint(0, 60), holds=holds)


def by_trial(sheets: tuple[Sheet, ...], weighing: Weighing) -> int | None:
    numbers = (range((60 if each.quantity is None else each.quantity) + 1) for each in sheets)
    costs = [
        sum(number * sheet.cost for number, sheet in zip(chosen, sheets, strict=True))
        for chosen in product(*numbers)
        if sum(map(int.__mul__, chosen, weighing.holds)) >= weighing.total
    ]
    return min(costs, default=None)


@pytest.mark.parametrize("seed", range(60))
def test_no_choice_of_sheets_is_cheaper(seed: int) -> None:
    sheets, weighing = drawn(seed)

    assert least_cost(sheets, weighing) == by_trial(sheets, weighing)


@pytest.mark.parametrize("seed", range(60))
def test_a_search_cut_short_never_costs_too_much(
    seed: int, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(cover, "MOST_STEPS", 3)
    sheets, weighing = drawn(seed)
    true = by_trial(sheets, weighing)

    found = least_cost(sheets, weighing)

    assert found == true if true is None else found is not None and found <= true


def test_sheets_on_hand_come_first_and_cost_nothing() -> None:
    sheets = (Sheet(10, 10, None, 1), Sheet(10, 5, 3, 0))

    # 3 offcuts hold 150; what is left of 351 takes three more sheets.
    assert least_cost(sheets, Weighing(total=351, holds=(100, 50))) == 3


def test_a_sheet_holds_no_more_than_the_pieces_that_fit_it() -> None:
    small, large = Sheet(10, 10, 2, 0), Sheet(20, 20, None, 1)
    asked = asks((small, large), size(15, 10, 4), size(4, 5, 1))

    weighed = weigh(asked, [150, 20], [100, 400])

    assert weighed == Weighing(total=620, holds=(20, 400))


def test_too_little_stock_is_told_from_dear_stock() -> None:
    assert least_cost((Sheet(10, 10, 2, 1),), Weighing(total=201, holds=(100,))) is None


def test_weights_of_all_pieces_are_counted() -> None:
    assert weigh(ask((10, 10), size(5, 5, 3), size(2, 2, 4)), [25, 4], [100]).total == 91
