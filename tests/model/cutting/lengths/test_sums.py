"""The knapsack over reachable sums against trying everything."""

from itertools import product
from random import Random

import numpy as np
import pytest

from model.cutting.lengths.sums import Sums


def tried(sizes: list[int], worth: list[int], limits: list[int], room: int) -> int:
    every = product(*(range(limit + 1) for limit in limits))
    fitting = (c for c in every if sum(map(int.__mul__, c, sizes)) <= room)
    return max(sum(map(int.__mul__, counts, worth)) for counts in fitting)


@pytest.mark.parametrize("seed", range(20))
def test_no_filling_is_worth_more(seed: int) -> None:
    random = Random(seed)
    sizes = [random.randint(7, 60) for _ in range(4)]
    worth = [random.randint(0, 50) for _ in sizes]
    limits = [random.randint(0, 3) for _ in sizes]
    rooms = [random.randint(0, 150) for _ in range(3)]
    sums = Sums(sizes, limits, max(rooms))

    filled = sums.fill(np.array(worth), limits)

    for room, entry in zip(rooms, sums.at(rooms).tolist(), strict=True):
        counts = sums.counts(filled, entry)
        assert filled.values[entry] == tried(sizes, worth, limits, room)
        assert sum(map(int.__mul__, counts, worth)) == filled.values[entry]
        assert sum(map(int.__mul__, counts, sizes)) <= room
        assert all(count <= limit for count, limit in zip(counts, limits, strict=True))


@pytest.mark.parametrize("seed", range(10))
def test_items_taken_as_often_as_they_fit_are_worth_no_less(seed: int) -> None:
    random = Random(seed)
    sizes = [random.randint(20, 60) for _ in range(3)]
    room = random.randint(60, 200)
    limits = [room // size for size in sizes]
    worth = [[random.randint(0, 50) for _ in range(2)] for _ in sizes]
    sums = Sums(sizes, limits, room)
    entry = len(sums.sums) - 1

    filled = sums.fill_each(np.array(worth))

    for case in range(2):
        alone = [each[case] for each in worth]
        counts = sums.counts_of(filled, entry, case)
        assert filled.values[entry, case] == tried(sizes, alone, limits, room)
        assert sum(map(int.__mul__, counts, alone)) == filled.values[entry, case]
        assert sum(map(int.__mul__, counts, sizes)) <= room


def test_sizes_are_rounded_up_where_there_are_too_many_sums() -> None:
    """40 sizes on no grid have more sums than anybody counts; what is found still fits."""
    random = Random(1)
    sizes = [random.randint(1_000_000, 1_400_000) for _ in range(40)]
    sums = Sums(sizes, [3] * 40, 30_000_000)

    filled = sums.fill(np.array(sizes, dtype=np.float64), [3] * 40)
    counts = sums.counts(filled, len(sums.sums) - 1)

    assert not sums.is_exact
    assert 29_000_000 < sum(map(int.__mul__, counts, sizes)) <= 30_000_000
