"""What is told of a cutting plan on its page is true of the plan, and no talk of proofs."""

from __future__ import annotations

from dataclasses import replace

import pytest

from model.drawings.cut_steps import sawn_plan
from model.planset.plan_told import plan_told
from model.shop.plans import plans
from tests.model.building.beds import DEMOS, QUEEN, demo


@pytest.mark.parametrize("name", DEMOS)
def test_a_plan_counts_its_boards_and_says_no_more_than_is_proven(name: str) -> None:
    for plan in plans(demo(name)):
        told = " ".join(plan_told(sawn_plan(plan, "mm"), "mm"))

        assert told.startswith(f"{len(plan.plan.layouts)} ")
        if " no layout " in told:
            assert plan.plan.is_proven
        for word in ("That is said of", "no such plan", "nothing is bought", "no order of them"):
            assert word not in told


def test_a_plan_that_could_be_bettered_claims_nothing() -> None:
    plan = next(each for each in plans(demo(QUEEN)) if each.plan.measure == "stock")
    worse = replace(plan, plan=replace(plan.plan, lower_bound=plan.plan.value - 1))

    assert "no layout" not in " ".join(plan_told(sawn_plan(worse, "mm"), "mm"))
