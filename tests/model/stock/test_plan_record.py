"""A plan in use opens again cut by cut as it was accepted; a spoilt one is refused."""

from __future__ import annotations

import copy
import json
import random
from typing import Any

import pytest

from model.cutting.record import Layout, Piece, Placed, Plan, Region, Stock, Task
from model.errors import BadInput
from model.stock.given import Given
from model.stock.plan_record import PLAN, plan_of, plan_record
from tests.model.stock.random_plans import random_plan


def read(record: Any) -> Plan:
    return plan_of(Given(json.loads(json.dumps(record)), "progress plans, row 1", PLAN))


@pytest.mark.parametrize("seed", range(40))
def test_a_plan_reads_back_as_it_was_written(seed: int) -> None:
    plan = random_plan(seed)

    assert read(plan_record(plan)) == plan


def test_a_plan_takes_a_row_of_figures_for_a_cut() -> None:
    plan = random_plan(7)

    (layout, *_) = plan_record(plan)["layouts"]

    assert len(layout["tree"]) == len(list(plan.layouts[0].tree.all()))
    assert all(not isinstance(cell, list) for row in layout["tree"] for cell in row)


def test_a_plan_of_nothing_reads_back() -> None:
    task = Task(kind="boards", pieces=(), stock=(), kerf=3.2, name="oak-25.4")

    assert read(plan_record(Plan(task=task))) == Plan(task=task)


def small() -> dict[str, Any]:
    """One sheet, crosscut into a piece and an offcut."""
    stock = Stock(key="sheet", length=1000.0, width=500.0)
    task = Task(
        kind="sheets", name="ply-12", kerf=3.0, stock=(stock,),
        pieces=(Piece(mark="B1", length=400.0, width=500.0),),
    )  # fmt: skip
    low = Region(
        x=0, y=0, length=400, width=500, use="piece",
        placed=Placed("B1", 1, 0.0, 0.0, 400.0, 500.0, False),
    )  # fmt: skip
    high = Region(x=403, y=0, length=597, width=500, use="offcut")
    tree = Region(
        x=0, y=0, length=1000, width=500, cut="crosscut", at=400, kerf=3, low=low, high=high
    )
    layout = Layout(number=1, stock=stock, tree=tree)
    return plan_record(Plan(task=task, layouts=(layout,), value=1.0, lower_bound=1.0))


def test_a_tree_is_written_so_that_a_person_can_read_it() -> None:
    assert small()["layouts"][0]["tree"] == [
        [0, 0, 1000, 500, "crosscut", 400, 3, "low high"],
        [0, 0, 400, 500, "piece", "B1", 1, 0.0, 0.0, 400.0, 500.0, False],
        [403, 0, 597, 500, "offcut"],
    ]


SPOILT = [
    (("layouts", 0, "tree"), [], "ends too early"),
    (("layouts", 0, "tree", 2), None, "more|early|region"),
    (("layouts", 0, "tree", 0, 4), "saw", "neither a cut"),
    (("layouts", 0, "tree", 0, 5), "far", "at must be a number"),
    (("layouts", 0, "tree", 0, 7), "low high top", "neither low nor high"),
    (("layouts", 0, "tree", 1, 5), 4, "lacks its mark"),
    (("layouts", 0, "tree", 1, 2), -4, "length must be a number"),
    (("layouts", 0, "stock"), 2, "stock must be a whole number from 1 to 1"),
    (("task", "kind"), "logs", "kind must be one of"),
    (("task", "name"), "", "name must be a text"),
    (("task", "pieces", 0, "length"), True, "length must be a number"),
    (("task", "stock", 0, "trim"), [1, 2], "four figures"),
    (("task", "colour"), "red", "colour.*not known"),
    (("value",), float("inf"), "value must be a number"),
]


@pytest.mark.parametrize(("path", "value", "said"), SPOILT)
def test_a_spoilt_plan_is_refused_where_it_is_spoilt(
    path: tuple[Any, ...], value: Any, said: str
) -> None:
    record: Any = json.loads(json.dumps(small()))
    inner = record
    for step in path[:-1]:
        inner = inner[step]
    inner[path[-1]] = value

    with pytest.raises(BadInput, match=said) as refusal:
        read(record)

    assert str(refusal.value).startswith("progress plans, row 1")
    assert str(refusal.value).endswith(".")


def test_a_region_too_many_is_refused() -> None:
    record = small()
    record["layouts"][0]["tree"].append([0, 0, 1, 1, "waste"])

    with pytest.raises(BadInput, match="more regions"):
        read(record)


def test_a_tree_without_end_is_refused() -> None:
    record = small()
    record["layouts"][0]["tree"] = [[0, 0, 9, 9, "rip", 1, 1, "low"]] * 5000

    with pytest.raises(BadInput, match="ends too early"):
        read(record)


def test_whatever_is_changed_in_a_plan_it_is_read_or_refused_in_a_sentence() -> None:
    draw = random.Random(3)
    odd: list[Any] = [None, [], {}, "", -1, 1e300, True, "x" * 900, [[]], 0.5]

    for _ in range(400):
        record = json.loads(json.dumps(plan_record(random_plan(draw.randint(0, 9)))))
        holders = list(_holders(record))
        holder = draw.choice(holders)
        keys = list(holder) if isinstance(holder, dict) else list(range(len(holder)))
        holder[draw.choice(keys)] = copy.deepcopy(draw.choice(odd))
        try:
            assert isinstance(read(record), Plan)
        except BadInput as refusal:
            assert str(refusal).endswith(".")


def _holders(value: Any) -> list[Any]:
    """All lists and records inside that hold something."""
    inside = value.values() if isinstance(value, dict) else value if isinstance(value, list) else ()
    own = [value] if isinstance(value, dict | list) and value else []
    return own + [each for inner in inside for each in _holders(inner)]
