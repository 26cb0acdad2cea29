"""Plans of a bed: one for each task, told as they get better, kept once they are worked out."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import pytest

from model.bed import Bed
from model.cutting.record import Effort
from model.shop import plans as shop
from model.shop.plans import CutPlan, best_plan, first_plans, plans
from model.shop.remembered import Remembered
from model.shop.tasks import tasks
from model.stock.progress import Progress

Beds = Callable[..., Bed]
QUICK = Effort(tries=20, moves=50, nodes=20, racks=0)


@pytest.fixture(autouse=True)
def nothing_remembered(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(shop, "_PLANS", Remembered(400))


def test_every_task_has_a_plan_at_once(oak_bed: Beds) -> None:
    bed = oak_bed()

    found = first_plans(bed)

    assert [each.key for each in found] == [task.key for task in tasks(bed)]
    assert [each.plan.task for each in found] == [task.task for task in tasks(bed)]
    assert all(not each.plan.left_out for each in found)


def test_more_effort_is_never_worse(oak_bed: Beds) -> None:
    bed = oak_bed()

    for first, later in zip(first_plans(bed), plans(bed, QUICK), strict=True):
        assert later.plan.value <= first.plan.value
        assert later.plan.lower_bound >= first.plan.lower_bound - 1e-9


def test_better_plans_are_told_as_they_are_found(oak_bed: Beds) -> None:
    told: list[CutPlan] = []

    found = plans(oak_bed(), QUICK, told.append)

    for each in found:
        of_it = [plan for plan in told if plan.key == each.key]
        assert of_it, each.key
        values = [plan.plan.value for plan in of_it]
        assert values == sorted(values, reverse=True)
        assert of_it[-1].plan.value == each.plan.value


def test_a_plan_is_worked_out_once(oak_bed: Beds) -> None:
    bed = oak_bed()

    one, other = plans(bed, QUICK), plans(bed, QUICK)

    assert all(a.plan is b.plan for a, b in zip(one, other, strict=True))


def test_what_was_stopped_is_worked_out_anew(oak_bed: Beds) -> None:
    (task, *_) = tasks(oak_bed())

    half = best_plan(task, QUICK, stop=lambda: True)
    whole = best_plan(task, QUICK)

    assert half.task == task.task
    assert whole is not half
    assert whole.value <= half.value


def test_the_plan_in_use_is_taken_as_it_is(oak_bed: Beds) -> None:
    bed = oak_bed()
    kept = first_plans(bed)[0].plan
    begun = replace(bed, design=replace(bed.design, progress=Progress(plans=(kept,))))

    found = plans(begun, QUICK)

    assert found[0].plan is kept
    assert [each.is_stored for each in found] == [True] + [False] * (len(found) - 1)


def test_a_plan_says_what_its_task_says(oak_bed: Beds) -> None:
    (task, *_), (plan, *_) = tasks(oak_bed()), first_plans(oak_bed())

    assert plan.notes[: len(task.notes)] == task.notes
    assert (plan.material, plan.thickness) == (task.material, task.thickness)
