"""A job that is begun, changed, gone on with and changed again: nothing is lost, nothing twice."""

from __future__ import annotations

import random
from collections import Counter
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest

from model import designs
from model.bed import Bed, Design, solve
from model.errors import BadInput, CannotBuild
from model.shop import tracking
from model.shop.cut_list import cut_list
from model.shop.order.build import work_order
from model.shop.plans import CutPlan, cut_plan
from model.shop.tracking_cuts import cuts
from model.shop.tracking_fit import fit
from model.shop.tracking_rest import OnTask, going
from tests.model.shop.order.one_each import plan

DEMOS = sorted((Path(__file__).resolve().parents[2] / "resources" / "demos").glob("*.bedwright"))
CHANGES: tuple[tuple[str, tuple[float, ...]], ...] = (
    ("mattress_length", (1905.0, 2000.0, 2032.0, 2100.0)),
    ("mattress_width", (900.0, 1400.0, 1524.0, 1600.0)),
    ("slat_width", (70.0, 89.0, 95.0)),
    ("cleat_width", (38.1, 42.0)),
    ("rail_height", (380.0, 406.4, 420.0)),
)


@pytest.mark.parametrize("seed", range(2))
@pytest.mark.parametrize("path", DEMOS, ids=lambda path: path.stem)
def test_a_job_that_changes_on_the_way_is_still_cut_whole(path: Path, seed: int) -> None:
    rng = random.Random(f"{path.stem} {seed}")
    bed = solve(designs.read(path))

    for _ in range(2):
        bed = cut_some(rng, bed)
        bed = step_some(rng, bed)
        ticks, parts = len(bed.design.progress.cuts_done), len(bed.design.progress.parts)
        bed = changed(rng, bed)
        assert len(going(bed).progress.cuts_done) == ticks
        assert len(going(bed).progress.parts) == parts
        assert_each_piece_is_there_or_planned(bed)
    for cut in plans(bed):
        bed = ticked(bed, cut, list(cuts(cut.plan)))

    assert fit(bed, bed.design.progress.parts).anew == ()
    assert all(each.kept is not None or not each.task.task.pieces for each in going(bed).tasks)


def plans(bed: Bed) -> list[CutPlan]:
    """The plans in use, and quick ones where there is none."""
    return [
        cut_plan(each.task, each.kept or plan(each.task.task))
        for each in going(bed).tasks
        if each.kept or each.task.task.pieces
    ]


def with_design(bed: Bed, design: Design) -> Bed:
    return replace(bed, design=design)


def ticked(bed: Bed, cut: CutPlan, keys: list[str]) -> Bed:
    return with_design(bed, tracking.all_ticked(bed, cut, keys))


def cut_some(rng: random.Random, bed: Bed) -> Bed:
    """A few cuts of a few materials."""
    found = plans(bed)
    for cut in rng.sample(found, min(3, len(found))):
        keys = list(cuts(cut.plan))
        bed = ticked(bed, cut, rng.sample(keys, min(4, len(keys))))
    return bed


def step_some(rng: random.Random, bed: Bed) -> Bed:
    order = work_order(bed, plans(bed))
    lines = [line for line in order.lines if line.mark]
    for line in rng.sample(lines, 3):
        bed = with_design(bed, tracking.step_ticked(bed, order, line.key))
    return bed


def changed(rng: random.Random, bed: Bed) -> Bed:
    """The first of some changes, in any order, that can be built."""
    choices = [(name, value) for name, values in CHANGES for value in values]
    rng.shuffle(choices)
    for name, value in choices:
        try:
            design = bed.design.with_choices({name: value})
            return solve(design)
        except (BadInput, CannotBuild):
            continue
    raise AssertionError("none of the changes can be built")


def assert_each_piece_is_there_or_planned(bed: Bed) -> None:
    """Each piece once: it serves, it is in a glued part that serves, or it is planned.

    What was only ticked by a step, with no cut, stays in a plan that is in use.
    """
    now = going(bed)
    by_a_cut = tuple(part for part in now.progress.parts if part.cut)
    taken = fit(bed, by_a_cut).taken
    planned = Counter(name for each in now.tasks for name in names_of(each))
    for piece in cut_list(bed):
        for number in range(1, piece.quantity + 1):
            whole = (piece.mark, (number - 1) // piece.for_each + 1)
            is_there = (piece.name, number) in taken or (piece.is_glued and whole in taken)
            is_planned = planned[piece.name, number]
            assert is_planned <= 1
            assert is_there or is_planned, f"{piece.name}-{number} is nowhere"


def names_of(on_task: OnTask) -> Iterator[tuple[str, int]]:
    for piece in on_task.task.task.pieces:
        for number in range(piece.first, piece.first + piece.quantity):
            yield piece.mark, number
