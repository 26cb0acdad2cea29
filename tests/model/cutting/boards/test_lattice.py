"""All that fits on boards, and the cheapest of them, against trying every way."""

from collections import Counter
from itertools import product
from random import Random

import numpy as np
import pytest

from model.cutting.boards.cover import Cover
from model.cutting.boards.lattice import Filling, Lattice
from model.cutting.boards.points import Cutting, Points
from model.cutting.boards.rack import Board, rack
from model.cutting.lengths.lots import NM, at_least, lots
from model.cutting.record import Box, Piece, Stock, Task
from tests.model.cutting.boards.test_small import KERF, fits, fits_in_bands

Counts = tuple[int, ...]


@pytest.mark.parametrize("seed", range(6))
def test_a_room_holds_what_some_bands_hold(seed: int) -> None:
    random = Random(seed)
    sizes = [(random.randint(200, 700), random.randint(40, 110)) for _ in range(3)]
    points = Points((2, 1, 2))
    cutting = Cutting(points, [a + KERF for a, _ in sizes], [w + KERF for _, w in sizes])
    rooms = [(random.randint(700, 1500), random.randint(90, 200)) for _ in range(3)]

    held = cutting.fits([(along + KERF, across + KERF) for along, across in rooms])

    for room, some in zip(rooms, held, strict=True):
        expected = [fits_in_bands(parts(sizes, each), *room) for each in points.every.tolist()]
        assert some.tolist() == expected


def parts(sizes: list[tuple[int, int]], counts: Counts) -> list[tuple[int, int]]:
    return [size for size, count in zip(sizes, counts, strict=True) for _ in range(count)]


def split_board(*bad: Box) -> tuple[Task, Board, Lattice]:
    sizes = ((300, 60), (450, 80), (600, 50))
    pieces = tuple(
        Piece(mark=f"A{at}", length=length, width=width, quantity=2)
        for at, (length, width) in enumerate(sizes)
    )
    stock = Stock(key="B", length=1400, width=140, quantity=1, bad=bad)
    task = Task(kind="boards", pieces=pieces, stock=(stock,), kerf=KERF)
    (board,) = rack(task, 50 * NM)
    asked = lots(task)
    demand = [lot.demand for lot in asked]
    return task, board, Lattice(asked, demand, range(len(asked)), at_least(task.kerf))


def test_a_split_board_holds_what_its_ends_hold_together() -> None:
    task, board, lattice = split_board(Box(650, 0, 700, 140))
    sizes = [(lot.along // NM, lot.across // NM) for lot in lots(task)]
    every = [tuple(each) for each in product(range(3), repeat=3)]
    low = {each for each in every if fits(parts(sizes, each), (650, 140))}
    high = {each for each in every if fits(parts(sizes, each), (700, 140))}
    both = {tuple(np.minimum(np.add(a, b), 2).tolist()) for a in low for b in high}
    more = [{tuple(np.add(each, one)) for one in np.eye(3, dtype=int)} for each in both]
    fullest = {each for each, larger in zip(both, more, strict=True) if not larger & both}

    (found,) = lattice.fillings([board])

    assert set(map(tuple, found.counts.tolist())) == fullest


def test_every_filling_can_be_sawn_as_it_says() -> None:
    _, board, lattice = split_board(Box(650, 0, 700, 140))
    (found,) = lattice.fillings([board])

    for at, counts in enumerate(found.counts.tolist()):
        made = lattice.pattern(0, board, found, at, counts)
        assert made.counts == Counter({lot: count for lot, count in enumerate(counts) if count})


def cheapest_by_trying(demand: Counts, boards: list[list[Counts]], costs: list[int]) -> int | None:
    """All choices of a filling, or none, of each board."""
    enough = [
        sum(cost for cost, held in zip(costs, chosen, strict=True) if any(held))
        for chosen in product(*([(0,) * len(demand), *held] for held in boards))
        if (np.sum(chosen, axis=0) >= demand).all()
    ]
    return min(enough, default=None)


@pytest.mark.parametrize("seed", range(12))
def test_the_cheapest_boards_are_found_whatever_strips_are_worth(seed: int) -> None:
    random = Random(seed)
    demand = (3, 2, 2)
    boards = [
        [tuple(random.randint(0, 2) for _ in demand) for _ in range(3)] for _ in range(5)
    ]  # fmt: skip
    costs = [random.choice((0, 3, 4, 5, 7)) for _ in boards]
    none = np.zeros(3, dtype=np.int64)
    fillings = [Filling(np.array(held), none, none, ()) for held in boards]
    worth = np.array([random.random() * 3 for _ in demand])

    found = Cover(Points(demand), fillings, costs, worth).cheapest(1e9, 1000)

    least = cheapest_by_trying(demand, boards, costs)
    assert found.is_all
    assert (found.choices is None) == (least is None)
    if found.choices is not None:
        assert sum(costs[each.board] for each in found.choices) == least
        assert np.sum([each.counts for each in found.choices], axis=0).tolist() == list(demand)
        for each in found.choices:
            assert (np.array(each.counts) <= boards[each.board][each.filling]).all()


def test_nothing_is_found_below_what_the_cheapest_costs() -> None:
    none = np.zeros(1, dtype=np.int64)
    fillings = [Filling(np.array([[2]]), none, none, ())] * 2
    cover = Cover(Points((3,)), fillings, [5, 6], np.zeros(1))

    assert cover.cheapest(11, 1000) == (None, True)
    assert cover.cheapest(11.5, 1000).choices is not None
    assert cover.cheapest(11.5, 1).is_all is False
