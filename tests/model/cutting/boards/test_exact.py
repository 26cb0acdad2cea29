"""The most that a board is worth, against looking at all that it holds."""

from itertools import product
from random import Random

import numpy as np
import pytest

from model.cutting.boards.exact import Exact
from model.cutting.boards.full import fullest
from model.cutting.boards.lattice import Lattice
from model.cutting.boards.pricing import Pricing
from model.cutting.boards.rack import rack
from model.cutting.lengths.lots import NM, at_least, lots
from model.cutting.record import Box, Piece, Stock, Task

SPLITS = ((), (Box(650, 0, 700, 160),))


@pytest.mark.parametrize("seed", range(10))
def test_all_counts_to_which_nothing_can_be_added(seed: int) -> None:
    random = Random(seed)
    sizes = [random.randint(10, 60) for _ in range(4)]
    limits = [random.randint(0, 3) for _ in sizes]
    room = random.randint(20, 200)
    held = {
        each
        for each in product(*(range(limit + 1) for limit in limits))
        if np.dot(each, sizes) <= room
    }
    more = np.eye(4, dtype=int)
    expected = {e for e in held if not any(tuple((more[n] + e).tolist()) in held for n in range(4))}

    found = fullest(sizes, limits, room)

    assert found is not None
    assert sorted(map(tuple, found.tolist())) == sorted(expected)


@pytest.mark.parametrize("bad", SPLITS)
@pytest.mark.parametrize("seed", range(8))
def test_no_strip_counts_more_often_than_it_is_wanted(seed: int, bad: tuple[Box, ...]) -> None:
    random = Random(seed)
    pieces = tuple(
        Piece(mark=f"A{at}", length=length, width=width, quantity=random.randint(1, 3))
        for at, (length, width) in enumerate(_sizes(random))
    )
    stock = Stock(key="B", length=1500, width=160, quantity=1, bad=bad)
    task = Task(kind="boards", pieces=pieces, stock=(stock,), kerf=3)
    sizes, boards = lots(task), rack(task, 30 * NM)
    demand = [lot.demand for lot in sizes]
    lattice = Lattice(sizes, demand, range(len(sizes)), at_least(task.kerf))
    (filling,) = lattice.fillings(boards)
    worth = np.array([random.randint(1, 99) for _ in sizes])
    taken = np.array([random.choice((0, random.randint(0, each))) for each in worth.tolist()])
    expected = int((filling.counts @ worth).max())
    pricing = Pricing(sizes, boards, demand, at_least(task.kerf))
    prices = pricing.prices(worth - taken, demand, [0])
    exact = Exact(pricing, demand)

    most, column = exact.most(prices, 0, taken, expected - 1)

    assert most == expected and column is not None
    assert int(worth @ column.counts) == expected
    assert exact.most(prices, 0, taken, expected) == (expected, None)


def _sizes(random: Random) -> list[tuple[int, int]]:
    return [(random.randint(150, 600), random.randint(30, 110)) for _ in range(4)]
