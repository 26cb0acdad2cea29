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
