"""The bound by sets of boards, on racks whose boards were cut up at random into the list."""

from itertools import product
from random import Random

import numpy as np
import pytest

import model.cutting.boards.sets as by_sets
from model.cutting.boards.bound import tighten
from model.cutting.boards.branches import Branches
from model.cutting.boards.generate import fill_by_worth, generate
from model.cutting.boards.plan import board_plan
from model.cutting.boards.rack import rack, unit
from model.cutting.boards.search import Question, Search
from model.cutting.boards.sets import Sets, bound_by_sets
from model.cutting.lengths.lots import at_least, lots
from model.cutting.record import Effort, Piece, Stock, Task
from tests.checkers.plans import faults

KERF = 3
WORK = 1_000_000


def cut_up(seed: int, used: int = 2, spare: int = 3) -> tuple[Task, float]:
    """A rack with boards of which some were cut into the list without any waste, and their area."""
    random = Random(seed)
    pieces: list[Piece] = []
    stock: list[Stock] = []
    for at in range(used + spare):
        length, width = random.randint(1500, 3000), random.randint(120, 230)
        stock.append(Stock(key=f"B{at}", length=length, width=width, quantity=1, on_hand=True))
        if at < used:
            for across in _parted(random, width, 50):
                for along in _parted(random, length, 300):
                    pieces.append(Piece(mark=f"A{len(pieces)}", length=along, width=across))
    area = sum(each.length * each.width for each in stock[:used])
    random.shuffle(stock)
    return Task(kind="boards", pieces=tuple(pieces), stock=tuple(stock), kerf=KERF), area


def _parted(random: Random, whole: int, least: int) -> list[int]:
    parts = []
    while whole >= 2 * least + KERF and len(parts) < 2:
        parts.append(random.randint(least, whole - least - KERF))
        whole -= parts[-1] + KERF
    return [*parts, whole]


def bounded(task: Task) -> tuple[Search, int]:
    """The search once sets of boards were looked at, and the bound before that; no other bound than
    those of worth, and one plan by worth.
    """
    sizes = lots(task)
    boards = rack(task, min(lot.across for lot in sizes))
    demand = tuple(lot.demand for lot in sizes)
    question = Question(sizes, boards, at_least(task.kerf), demand)
    search = Search(question, lambda _: None, lambda: False)
    area = np.array([float(lot.area) for lot in sizes])
    fill_by_worth(search, area / area.max())
    generate(search, 30)
    search.work = WORK
    tighten(search, 2, 3)
    before, search.work = search.bound, WORK
    bound_by_sets(search, 20, 20)
    return search, before


@pytest.mark.parametrize("most_sets", [1 << 20, 1])
@pytest.mark.parametrize("seed", range(3))
def test_the_bound_is_no_more_than_a_plan_that_is_there(
    seed: int, most_sets: int, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(by_sets, "MOST_SETS", most_sets)
    task, area = cut_up(seed)

    search, before = bounded(task)

    assert not any(search.missing)
    assert before <= search.bound <= area * unit(task.stock) * (1 + 1e-9)


@pytest.mark.parametrize("most_sets", [1 << 20, 1])
@pytest.mark.parametrize("seed", (2, 3, 7, 8, 9, 10))
def test_the_bound_is_no_more_than_the_cheapest_plan(
    seed: int, most_sets: int, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Lists that leave little of their boards, so that a bound a few hundredths too high shows; the
    cheapest plan is that of the exact solver of short lists.
    """
    monkeypatch.setattr(by_sets, "MOST_SETS", most_sets)
    random = Random(seed)
    pieces = tuple(
        Piece(mark=f"A{at}", length=random.randint(300, 900), width=95, quantity=3)
        for at in range(4)
    )
    lengths = [random.randint(950, 2400) for _ in range(12)]
    stock = tuple(
        Stock(key=f"B{at}", length=each, width=100, quantity=1, on_hand=True)
        for at, each in enumerate(lengths)
    )
    task = Task(kind="boards", pieces=pieces, stock=stock, kerf=KERF)
    exact = board_plan(task, Effort(moves=0), lambda _: None, lambda: False)

    search, before = bounded(task)

    assert exact.is_proven and not exact.left_out
    assert before <= search.bound <= exact.value * unit(stock) * (1 + 1e-9)


@pytest.mark.parametrize("most_sets", [1 << 20, 1])
def test_whole_boards_take_more_than_shares_of_boards(
    most_sets: int, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Pieces of 900 mm, which leave much of most boards."""
    monkeypatch.setattr(by_sets, "MOST_SETS", most_sets)
    pieces = (Piece(mark="A", length=900, width=95, quantity=14),)
    sizes = [1000, 1010, 1020, 1030, 1700, 1710, 1720, 2790, 2800, 2810, 2900, 3800]
    stock = tuple(
        Stock(key=f"{each}", length=each, width=100, quantity=2, on_hand=True) for each in sizes
    )

    search, before = bounded(Task(kind="boards", pieces=pieces, stock=stock, kerf=KERF))

    assert search.bound == pytest.approx(cheapest(sizes * 2, 14) * 100 * unit(stock))
    assert before < search.bound


def cheapest(lengths: list[int], wanted: int) -> int:
    """The least length of boards that hold so many pieces of 900 mm, by adding board to board."""
    least = {0: 0}
    for length in lengths:
        held = (length + KERF) // (900 + KERF)
        for count, cost in list(least.items()):
            more = min(wanted, count + held)
            least[more] = min(least.get(more, cost + length), cost + length)
    return least[wanted]


@pytest.mark.parametrize("seed", range(8))
def test_the_cheapest_set_against_every_set(seed: int) -> None:
    random = Random(seed)
    most = [random.randint(1, 3) for _ in range(5)]
    costs = np.array([random.randint(20, 99) / 100 for _ in most])
    rows = [np.array([random.randint(0, 40) / 100 for _ in most]) for _ in range(3)]
    holding = [
        (float(costs @ chosen), chosen)
        for chosen in product(*(range(each + 1) for each in most))
        if all(float(row @ chosen) >= 1 for row in rows)
    ]
    below = float(costs @ most) + 1
    expected = min(holding, default=(below, None))

    for sets in (Sets(costs, most, below), Branches(costs, most, 2000)):
        for row in rows:
            sets.keep(row)
        least, chosen = sets.cheapest()

        if holding:
            assert least == pytest.approx(expected[0])
            assert chosen is not None and float(costs @ chosen) == pytest.approx(expected[0])
        else:
            assert chosen is None and least <= below


def test_branch_and_bound_cut_short_promises_no_more_than_it_knows() -> None:
    costs, most = np.array([0.5, 0.7, 1.0]), [3, 3, 3]
    sets = Branches(costs, most, 1)
    sets.keep(np.array([0.31, 0.45, 0.6]))

    least, chosen = sets.cheapest()

    assert chosen is None and 0 < least <= 0.7 + 2 * 0.5


def test_nothing_is_printed_on_the_way(capfd: pytest.CaptureFixture[str]) -> None:
    task, area = cut_up(1, used=4, spare=2)

    found = board_plan(task, Effort(moves=0, nodes=200), lambda _: None, lambda: False)

    assert faults(found) == [] and not found.left_out
    assert found.lower_bound <= min(area * (1 + 1e-9), found.value)
    assert capfd.readouterr() == ("", "")
