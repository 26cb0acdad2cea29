"""All pieces into so many sheets, by filling some of them anew."""

from collections import Counter

import pytest

from model.cutting.blocks import close_cover
from model.cutting.blocks.record import Pattern
from model.cutting.blocks.refill import refilled
from model.cutting.bounds.question import Question, Sheet
from model.cutting.record import Box, Piece, Stock, Task
from model.cutting.whole import whole
from tests.model.cutting.blocks.sawn import check_pieces, saw
from tests.model.cutting.bounds.questions import A43, ask, asks, cut_at_random, size


def check(asked: Question, kinds: list[int], patterns: tuple[Pattern, ...]) -> None:
    """Every piece sawn once, from no other sheets than were given."""
    pieces: list[tuple[int, int, int]] = []
    for pattern in patterns:
        sheet = asked.sheets[pattern.sheet]
        pieces += saw(pattern.tree, sheet.length, sheet.width)
    assert check_pieces(asked, pieces) == {at: each.demand for at, each in enumerate(asked.sizes)}
    assert Counter(each.sheet for each in patterns) <= Counter(kinds)


@pytest.mark.parametrize(("turns", "optimum"), [(False, 7), (True, 6)])
def test_a_published_list_goes_on_its_fewest_sheets(turns: bool, optimum: int) -> None:
    """A43, source beside the list."""
    asked = ask((2750, 1220), *(size(*each, turns=turns) for each in A43))
    kinds = [0] * optimum

    found = refilled(asked, kinds, rounds=30, width=60)

    assert found is not None
    check(asked, kinds, found)


def test_on_fewer_sheets_than_hold_all_none_is_found() -> None:
    asked = ask((2750, 1220), *(size(*each) for each in A43))

    assert refilled(asked, [0] * 6, rounds=10, width=40) is None


def test_most_pieces_cut_at_random_go_back_on_their_sheets() -> None:
    """Sheets of several kinds, cut to the last hair: what packing piece by piece seldom finds."""
    found = 0
    for seed in range(20):
        asked, _ = cut_at_random(seed)
        kinds = [at for at, each in enumerate(asked.sheets) for _ in range(each.quantity or 3)]
        patterns = refilled(asked, kinds, rounds=6, width=40)
        if patterns is not None:
            check(asked, kinds, patterns)
            found += 1

    assert found >= 15


def test_each_sheet_given_is_used_at_most_once() -> None:
    asked = asks((Sheet(100, 60, None, 1), Sheet(50, 60, None, 1)), size(50, 30, 5))

    found = refilled(asked, [0, 1], rounds=5, width=20)

    assert found is not None
    check(asked, [0, 1], found)


def task(bad: tuple[Box, ...] = ()) -> Task:
    pieces = Piece(mark="A", length=300, width=200, quantity=8)
    sheet = Stock(key="sheet", length=1209, width=403, bad=bad)
    return Task(kind="sheets", pieces=(pieces,), stock=(sheet,), kerf=3.0)


def test_a_task_is_filled_with_its_kerf() -> None:
    """4 x 300 + 3 x 3 = 1209 along, 2 x 200 + 3 = 403 across."""
    found = close_cover(whole(task()), [0], rounds=3)

    assert found is not None
    assert (found.cost, found.patterns[0].counts) == (1, (8,))


def test_sheets_with_bad_spans_are_left_to_others() -> None:
    assert close_cover(whole(task((Box(0, 0, 10, 10),))), [0], rounds=3) is None


def test_when_told_to_stop_it_stops() -> None:
    asked = ask((2750, 1220), *(size(*each) for each in A43))
    asks_made: list[int] = []

    def stop() -> bool:
        asks_made.append(1)
        return True

    assert refilled(asked, [0] * 6, rounds=10, width=40, stop=stop) is None
    assert len(asks_made) == 1
