"""Whatever is to be cut, from whatever there is: plans that can be cut as they stand, and bounds
that no plan beats.
"""

from __future__ import annotations

import hashlib
import os
import subprocess
import sys
from collections.abc import Callable
from dataclasses import replace
from functools import cache
from random import Random

import pytest
from hypothesis import given, settings

from model.cutting.order import batches, distinct_settings, setting_changes
from model.cutting.plan import first_plan, plan
from model.cutting.record import Effort, Piece, Plan, Stock, Task, Trim
from tests.checkers import brute_force
from tests.checkers.by_hand import cut_by_lot
from tests.checkers.plan_order import order_faults
from tests.checkers.plans import faults
from tests.checkers.simple_rules import boards_first_fit, first_fit_decreasing, shelf_first_fit
from tests.properties.cut_lists import bed_list, several_sizes, tiny_list, with_rows
from tests.properties.cut_strategies import tasks
from tests.properties.rack_lists import small_rack, sticks

EXAMPLES = int(os.environ.get("BEDWRIGHT_CUT_TASKS", settings().max_examples * 3 // 5))
SHORT = Effort(tries=40, moves=300, nodes=100, racks=5)
bounded = settings(max_examples=EXAMPLES)

Draw = Callable[[int], Task]
DRAWN: list[tuple[Draw, int]] = [
    *((draw, seed) for draw in (bed_list, several_sizes, with_rows) for seed in range(4)),
    *((draw, seed) for draw in (small_rack, sticks) for seed in range(3)),
]
each_drawn = pytest.mark.parametrize(
    "draw, seed", DRAWN, ids=lambda at: getattr(at, "__name__", at)
)


def wrong(found: Plan) -> list[str]:
    """All that is wrong with a plan and with its order of sawing."""
    return [*faults(found), *order_faults(found, batches(found))]


# ---------------------------------------------------------------- sound, always


@bounded
@given(tasks())
def test_any_task_is_answered_by_a_sound_plan(task: Task) -> None:
    """Absurd ones too: no stock, pieces longer than all of it, a kerf wider than the pieces."""
    found = plan(task, SHORT)

    assert wrong(found) == []


@cache
def planned(draw: Draw, seed: int) -> tuple[Plan, tuple[Plan, ...]]:
    """The last plan of a task, and all that were told on the way."""
    told: list[Plan] = []
    return plan(draw(seed), SHORT, told.append), tuple(told)


@each_drawn
def test_plans_at_once_and_improved_are_sound(draw: Draw, seed: int) -> None:
    found, told = planned(draw, seed)

    assert [wrong(each) for each in (*told, found)] == [[]] * (len(told) + 1)
    assert (told[-1].layouts, told[-1].value) == (found.layouts, found.value)


@each_drawn
def test_a_plan_told_on_the_way_never_takes_more_than_the_last(draw: Draw, seed: int) -> None:
    _, told = planned(draw, seed)

    taken = [(area_left_out(found), found.value) for found in told]
    assert taken == sorted(taken, reverse=True)
    bounds = [each.lower_bound for each in told if each.left_out == told[-1].left_out]
    assert max(bounds) <= told[-1].value * (1 + 1e-9)


def area_left_out(found: Plan) -> float:
    """What is not cut, kerfs included, and of sticks the length of it: of two plans the one that
    leaves out less is better, whatever it takes.
    """
    task, kerf = found.task, 0.0 if found.task.kind == "boards" else found.task.kerf
    across = {
        each.mark: 1.0 if task.kind == "lengths" else each.width + kerf for each in task.pieces
    }
    size = {each.mark: (each.length + kerf) * across[each.mark] for each in task.pieces}
    return round(sum(size[left.mark] * left.quantity for left in found.left_out), 3)


@each_drawn
def test_a_plan_that_is_stopped_at_once_is_sound(draw: Draw, seed: int) -> None:
    assert wrong(plan(draw(seed), stop=lambda: True)) == []


@each_drawn
def test_settings_are_changed_no_less_often_than_they_differ(draw: Draw, seed: int) -> None:
    found = first_plan(draw(seed))

    assert setting_changes(found) == len(batches(found)) >= distinct_settings(found)
    assert distinct_settings(found) == len({batch.setting for batch in batches(found)})


# ---------------------------------------------------------------- never worse than a simple rule


@pytest.mark.parametrize("seed", range(100, 140))
def test_sheets_at_once_are_no_more_than_shelves_take(seed: int) -> None:
    task = bed_list(seed)
    shelves = shelf_first_fit(task)
    assert shelves is not None

    assert first_plan(task).value <= shelves


@pytest.mark.parametrize("seed", range(100, 120))
def test_lengths_at_once_are_no_more_than_the_longest_first_takes(seed: int) -> None:
    task = sticks(seed)

    assert first_plan(task).value <= first_fit_decreasing(task)


@pytest.mark.parametrize("seed", range(100, 106))
def test_boards_are_no_more_than_ripping_them_as_they_come(seed: int) -> None:
    task = small_rack(seed)
    ripped = boards_first_fit(task)

    found = plan(task, SHORT)

    assert wrong(found) == []
    assert ripped is None or (found.left_out == () and found.value <= ripped)


# ---------------------------------------------------------------- bounds


def from_sheets(seed: int, count: int, pieces: int, *, step: float, kerf: float) -> Task:
    """What `count` sheets give that are cut at random without waste, so that no fewer can do."""
    lot = Random(seed)
    trim = Trim(*(lot.choice((0.0, 5 * step)) for _ in range(4)))
    sheet = Stock(key="sheet", length=3840 * step, width=1920 * step, trim=trim)
    sizes = [
        size
        for _ in range(count)
        for size in cut_by_lot(lot, sheet, pieces, kerf=kerf, step=step, least=160 * step)
    ]
    lot.shuffle(sizes)
    asked = []
    for at, (along, across) in enumerate(sizes, 1):
        grain = lot.choice(("length", "width", "free"))
        turned = grain == "width" or (grain == "free" and lot.random() < 0.5)
        length, width = (across, along) if turned else (along, across)
        asked.append(Piece(mark=f"P{at}", length=length, width=width, grain=grain))
    return Task(kind="sheets", pieces=tuple(asked), stock=(sheet,), kerf=kerf)


GRIDS = {"half millimetres": (0.5, 3.0), "sixty-fourths of an inch": (25.4 / 64, 25.4 / 8)}


@pytest.mark.parametrize("grid", GRIDS)
@pytest.mark.parametrize("seed", range(12))
def test_sheets_cut_at_random_without_waste_are_put_together_again(seed: int, grid: str) -> None:
    """The fewest are known by construction: the pieces, their kerfs and the trims fill them."""
    step, kerf = GRIDS[grid]
    count = 1 + seed % 3
    task = from_sheets(seed, count, 4, step=step, kerf=kerf)

    found = plan(task)

    assert wrong(found) == [] and found.left_out == ()
    assert found.lower_bound == count  # by area alone
    assert found.value == count


@pytest.mark.parametrize("seed", range(3))
def test_many_pieces_cut_at_random_without_waste_take_one_sheet_more_at_most(seed: int) -> None:
    task = from_sheets(100 + seed, 3, 12, step=0.5, kerf=3.0)

    found = plan(task, SHORT)

    assert wrong(found) == []
    assert found.lower_bound == 3 <= found.value <= 4


@pytest.mark.parametrize("seed", range(6))
def test_a_bound_stays_below_what_the_sheets_were_cut_from(seed: int) -> None:
    """A third of the pieces thrown away: three sheets surely do, and fewer may."""
    task = from_sheets(200 + seed, 3, 9, step=0.5, kerf=3.0)
    kept = replace(task, pieces=tuple(each for at, each in enumerate(task.pieces) if at % 3))

    assert plan(kept, SHORT).lower_bound <= 3


@pytest.mark.parametrize("seed", range(60))
def test_small_lists_take_what_all_ways_to_cut_them_take_at_best(seed: int) -> None:
    task = tiny_list(seed)
    fewest = brute_force.fewest_sheets(task)

    found = plan(task, SHORT)

    assert wrong(found) == []
    if fewest is None:  # a piece that fits no sheet: the rest is cut
        assert found.left_out
    else:
        assert found.lower_bound <= fewest == found.value


@pytest.mark.parametrize("seed", range(6))
def test_neither_doubling_all_lengths_nor_swapping_the_axes_changes_what_is_proven(
    seed: int,
) -> None:
    task = bed_list(300 + seed)
    found = [plan(each, SHORT) for each in (task, doubled(task), swapped(task))]

    assert len({each.value for each in found if each.is_proven}) <= 1
    assert max(each.lower_bound for each in found) <= min(each.value for each in found)


def doubled(task: Task) -> Task:
    stock = tuple(
        replace(
            each,
            length=2 * each.length,
            width=2 * each.width,
            trim=Trim(*(2 * edge for edge in each.trim)),
        )
        for each in task.stock
    )
    asked = tuple(
        replace(each, length=2 * each.length, width=2 * each.width) for each in task.pieces
    )
    return replace(task, stock=stock, pieces=asked, kerf=2 * task.kerf)


def swapped(task: Task) -> Task:
    """The same sheets lying the other way: what ran along the grain now runs across the length."""
    stock = tuple(
        replace(
            each,
            length=each.width,
            width=each.length,
            trim=Trim(each.trim.left, each.trim.right, each.trim.lower, each.trim.upper),
        )
        for each in task.stock
    )
    other = {"length": "width", "width": "length", "free": "free"}
    asked = tuple(replace(each, grain=other[each.grain]) for each in task.pieces)
    return replace(task, stock=stock, pieces=asked)


# ---------------------------------------------------------------- the same again

DIGEST = """
import sys, hashlib
from tests.properties.test_cut_plans import digests
print(*digests())
"""


def digests() -> list[str]:
    """What becomes of one task of each kind, to the last bit."""
    made = (draw(7) for draw in (several_sizes, with_rows, small_rack, sticks))
    plans = [plan(task, SHORT) for task in made]
    return [hashlib.sha256(repr(each).encode()).hexdigest() for each in plans]


def test_the_same_task_gives_the_same_plan_in_any_process() -> None:
    there = subprocess.run(
        [sys.executable, "-c", DIGEST],
        env=os.environ | {"PYTHONHASHSEED": "4711"},
        capture_output=True,
        text=True,
    )

    assert there.stdout.split() == digests(), there.stderr


# ---------------------------------------------------------------- what cannot be cut

GOOD = Piece(mark="A", length=300.0, width=100.0, quantity=2)
SHEET = Stock(key="sheet", length=1000.0, width=500.0)


def test_a_piece_larger_than_every_sheet_is_named_and_the_rest_is_cut() -> None:
    long = Piece(mark="L", length=1500.0, width=100.0, quantity=2)
    task = Task(kind="sheets", pieces=(long, GOOD), stock=(SHEET,), kerf=3.0)

    found = plan(task)

    assert wrong(found) == []
    assert [(each.mark, each.quantity) for each in found.left_out] == [("L", 2)]
    assert [each.name for layout in found.layouts for each in layout.placed] == ["A-1", "A-2"]


@pytest.mark.parametrize("kind", ["sheets", "boards", "lengths"])
def test_without_stock_everything_is_left_out_with_a_reason(kind: str) -> None:
    for stock in ((), (replace(SHEET, quantity=0),)):
        found = plan(Task(kind=kind, pieces=(GOOD,), stock=stock, kerf=3.0))  # type: ignore[arg-type]

        assert wrong(found) == []
        assert found.layouts == () and [each.quantity for each in found.left_out] == [2]


@pytest.mark.parametrize("kind", ["sheets", "boards", "lengths"])
def test_nothing_asked_for_is_an_empty_plan(kind: str) -> None:
    found = plan(Task(kind=kind, pieces=(), stock=(SHEET,), kerf=3.0))  # type: ignore[arg-type]

    assert (found.layouts, found.left_out, found.value) == ((), (), 0.0)
    assert found.is_proven


@pytest.mark.parametrize("kind", ["sheets", "boards", "lengths"])
def test_a_kerf_wider_than_the_pieces_only_takes_more_wood(kind: str) -> None:
    small = Piece(mark="S", length=60.0, width=40.0, quantity=6)
    task = Task(kind=kind, pieces=(small,), stock=(SHEET,), kerf=120.0)  # type: ignore[arg-type]

    found = plan(task)

    assert wrong(found) == [] and found.left_out == ()


def test_a_piece_whose_grain_cannot_be_kept_is_left_out_with_a_reason() -> None:
    """As a board lies, its grain runs along it: across no board is 600 mm wide."""
    across = Piece(mark="C", length=200.0, width=600.0, grain="length")
    task = Task(kind="sheets", pieces=(across, GOOD), stock=(SHEET,), kerf=3.0)

    found = plan(task)

    assert wrong(found) == []
    assert [each.mark for each in found.left_out] == ["C"]
    assert "grain" in found.left_out[0].sentence
    assert plan(replace(task, stock=(replace(SHEET, has_grain=False),))).left_out == ()


def test_too_little_stock_leaves_out_no_more_than_it_must() -> None:
    """One sheet holds three strips of 160 mm and a kerf of 3; the fourth has no room."""
    strips = Piece(mark="W", length=1000.0, width=160.0, quantity=4)
    task = Task(kind="sheets", pieces=(strips,), stock=(replace(SHEET, quantity=1),), kerf=3.0)

    found = plan(task)

    assert wrong(found) == []
    assert [(each.mark, each.quantity) for each in found.left_out] == [("W", 1)]


def test_sheets_without_a_price_are_used_all_the_same() -> None:
    other = Stock(key="other", length=700.0, width=400.0, price=12.0)
    task = Task(kind="sheets", pieces=(GOOD,), stock=(SHEET, other), kerf=3.0)

    found = plan(task)

    assert wrong(found) == [] and found.left_out == ()
    assert found.measure != "price"


def test_an_offcut_on_hand_is_used_before_a_sheet_is_bought() -> None:
    scrap = Stock(key="scrap", length=320.0, width=210.0, quantity=1, on_hand=True)
    task = Task(kind="sheets", pieces=(GOOD,), stock=(SHEET, scrap), kerf=3.0)

    found = plan(task)

    assert [layout.stock.key for layout in found.layouts] == ["scrap"]
    assert found.value == 0 and found.is_proven
