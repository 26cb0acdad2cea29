"""Published cutting problems with proven optima: our plans reach them, our bounds stay below.

Sources: `published_cutting.py`, one beside each problem.
"""

from __future__ import annotations

import numpy as np
import pytest

from model.cutting.blocks import leaves
from model.cutting.blocks.enumerate import blocks
from model.cutting.bounds.question import question
from model.cutting.plan import plan
from model.cutting.record import Plan, Task
from model.cutting.whole import whole
from tests.checkers.plans import faults
from tests.reference.published_cutting import FOLDER, TYPED_IN, Published, in_folder

READ = in_folder()
EVERY = (*TYPED_IN, *(each for each in READ if each.name not in {one.name for one in TYPED_IN}))
FEWEST = [each for each in EVERY if each.fewest is not None]
TURNED = [each for each in EVERY if each.fewest_turned is not None]


def named(published: Published) -> str:
    return published.name


def holds(found: Plan, task: Task, fewest: int) -> None:
    assert faults(found) == []
    assert found.task == task and found.left_out == ()
    assert found.lower_bound <= fewest
    assert found.value == fewest


@pytest.mark.parametrize("published", FEWEST, ids=named)
def test_the_fewest_are_found_where_nothing_is_turned(published: Published) -> None:
    task = published.task()

    found = plan(task)

    assert published.fewest is not None
    holds(found, task, published.fewest)


@pytest.mark.parametrize("published", TURNED, ids=named)
def test_the_fewest_are_found_where_pieces_may_turn(published: Published) -> None:
    task = published.task("free")

    found = plan(task)

    assert published.fewest_turned is not None
    holds(found, task, published.fewest_turned)


def test_what_is_typed_in_is_what_the_folder_holds() -> None:
    if not READ:
        pytest.skip(f"No folder of published cutting problems: name one in {FOLDER}.")
    read = {each.name: each for each in READ}

    for one in TYPED_IN:
        other = read[one.name]
        assert (one.length, one.width, one.fewest, one.fewest_turned, one.most) == (
            (other.length, other.width, other.fewest, other.fewest_turned, other.most)
        )
        assert sorted(one.pieces) == sorted(other.pieces)


MOST = [each for each in EVERY if each.most is not None]


@pytest.mark.parametrize("published", MOST, ids=named)
def test_the_greatest_value_of_one_sheet_is_among_all_blocks(published: Published) -> None:
    """Every block of wanted pieces that fits the sheet is listed: the dearest is the optimum."""
    counted = whole(published.task())
    found = blocks(question(counted))
    assert found is not None and found.is_complete
    counts = found.counts.all(found.boxes.keys)
    worth = counts @ np.array([value for *_, value in published.pieces])

    best = found.tree(int(worth.argmax()))

    assert worth.max() == published.most
    assert sum(published.pieces[leaf.size][3] for leaf in leaves(best)) == published.most
    assert counted.mm(best.length) <= published.length
    assert counted.mm(best.width) <= published.width
