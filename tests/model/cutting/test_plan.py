"""Every kind of task goes through one door and comes back as a plan of itself."""

import pytest

from model.cutting.plan import AT_ONCE, first_plan, plan
from model.cutting.record import Kind, Piece, Plan, Stock, Task
from tests.checkers.plans import faults
from tests.properties.cut_lists import bed_list

STOCK = Stock(key="s", length=2440.0, width=300.0, quantity=4)
PIECE = Piece(mark="A", length=500.0, width=90.0, quantity=3)


@pytest.mark.parametrize("kind", ["sheets", "boards", "lengths"])
def test_each_kind_of_task_has_a_planner(kind: Kind) -> None:
    told: list[Plan] = []
    task = Task(kind=kind, pieces=(PIECE,), stock=(STOCK,), kerf=3.0)

    found = plan(task, better=told.append)

    assert faults(found) == []
    assert found.task == task and told[-1] == found


def test_the_first_plan_is_a_sound_one() -> None:
    found = first_plan(bed_list(5))

    assert faults(found) == [] and found.left_out == ()


def test_the_same_task_gives_the_same_plan() -> None:
    assert plan(bed_list(4), AT_ONCE) == plan(bed_list(4), AT_ONCE)


def test_a_bound_that_meets_the_first_plan_proves_it() -> None:
    """Bottoms of 903 x 772 mm, their grain kept: two lie along a sheet of 2440 mm, one across its
    1220. Four need two sheets, though 2.79 m2 would go into one of 2.97.
    """
    task = Task(
        kind="sheets",
        pieces=(Piece(mark="B4", length=903.0, width=772.0, quantity=4),),
        stock=(Stock(key="sheet", length=2440.0, width=1220.0),),
        kerf=3.2,
    )

    found = plan(task)

    assert (found.value, found.lower_bound, found.is_proven) == (2, 2, True)
