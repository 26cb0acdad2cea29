"""Rows filled for the most value, against trying every count."""

from itertools import product
from random import Random

import pytest

from model.cutting.bounds import fill
from model.cutting.bounds.fill import best_fill


def by_trial(sizes: list[int], demands: list[int], values: list[int], room: int) -> int:
    return max(
        sum(map(int.__mul__, counts, values))
        for counts in product(*(range(demand + 1) for demand in demands))
        if sum(map(int.__mul__, counts, sizes)) <= room
    )


def drawn(seed: int) -> tuple[list[int], list[int], list[int], int]:
    draw = Random(seed)
    number = draw.randint(1, 5)
    sizes = [draw.randint(1, 40) for _ in range(number)]
    demands = [draw.randint(0, 4) for _ in range(number)]
    values = [draw.randint(0, 60) for _ in range(number)]
    return sizes, demands, values, draw.randint(0, 100)


@pytest.mark.parametrize("seed", range(60))
def test_a_row_holds_the_most_that_any_counts_reach(seed: int) -> None:
    sizes, demands, values, room = drawn(seed)

    filled = best_fill(sizes, demands, values, room)

    assert filled.value == by_trial(sizes, demands, values, room)
    assert filled.counts is not None
    assert all(0 <= count <= demand for count, demand in zip(filled.counts, demands, strict=True))
    assert sum(map(int.__mul__, filled.counts, sizes)) <= room
    assert sum(map(int.__mul__, filled.counts, values)) == filled.value


@pytest.mark.parametrize("seed", range(60))
def test_too_many_sums_give_no_less_than_the_most(
    seed: int, monkeypatch: pytest.MonkeyPatch
) -> None:
    """What is merged may look better than it is, never worse: a bound stays a bound."""
    monkeypatch.setattr(fill, "MOST_STATES", 8)
    sizes, demands, values, room = drawn(seed)

    assert best_fill(sizes, demands, values, room).value >= by_trial(sizes, demands, values, room)


def test_lengths_in_the_finest_steps_do_not_overflow() -> None:
    """A sheet of 3 m has 3 * 10^10 steps of 10^-7 mm."""
    metre = 10**10

    filled = best_fill([metre, 2 * metre + 1], [5, 5], [metre, 2 * metre + 1], 3 * metre)

    assert filled.value == 3 * metre
    assert filled.counts == (3, 0)
