"""Whatever bed is built: what lies on it arrives at the floor, and every figure can be told."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
import pytest

from model.bed import Bed, solve
from model.errors import CannotBuild
from model.materials import published_load
from model.structure.joints import FRICTION, STANDS
from model.structure.loading import GRAVITY
from model.structure.record import Carried, Unjudged
from tests.properties.designs import random_design

BEDS = 150
NEAR = 1e-6  # of the bed's whole load: springs are up to 1e9 times as stiff as bars


@dataclass(frozen=True)
class Weighed:
    """A bed, what it carries, and the sum of what the floor does to it per load case (c, 3), N."""

    bed: Bed
    loads: Carried
    floor: np.ndarray


@pytest.fixture(scope="module")
def weighed() -> tuple[Weighed, ...]:
    """As many beds as can be built of random designs. What cannot be judged is no such bed."""
    found: list[Weighed] = []
    seed = 10_000
    while len(found) < BEDS:
        seed += 1
        try:
            bed = solve(random_design(seed))
        except CannotBuild:
            continue
        loads = bed.strength
        assert not isinstance(loads, Unjudged), f"{bed.design.name}: {loads}"
        floor = loads.joints.force[:, loads.joints.pieces[:, 1] == -1, :3].sum(axis=1)
        found.append(Weighed(bed, loads, floor))
    return tuple(found)


def stored(bed: Bed) -> float:
    """What lies in all drawers, kg."""
    contents = dict(bed["handling"].contents)
    return sum(contents[group.partition("-")[0]] for group in bed.pieces.groups if group)


def applied(each: Weighed) -> np.ndarray:
    """What is put on the bed in every load case, by what each is said to be: (c, 3), N."""
    bed, cases = each.bed, each.loads.cases
    asked = bed["handling"]
    weight = (bed.masses.sum() + asked.mattress + stored(bed)) * GRAVITY
    heaviest = max(max(asked.lying) * GRAVITY, 1200.0)
    alone = {"left": asked.lying[0], "right": asked.lying[-1]}
    pull = asked.drag * weight
    found = np.tile((0.0, 0.0, -weight), (len(cases), 1))
    for i, case in enumerate(cases):
        side = next((s for s in alone if f"the {s} lying" in case.title), None)
        found[i] += {
            "rest": (0, 0, 0),
            "lying": (0, 0, -(alone[side] if side else sum(asked.lying)) * GRAVITY),
            "kneel": (0, 0, -1400.0),
            "edge": (0, 0, -2400.0),
            "sit": (0, 0, -heaviest),
            "lean": (0, len(asked.lying) * asked.lean, 0),
            "push along": (0, asked.push, 0),
            "push across": (asked.push, 0, 0),
            "lift": (0, 0, 0),
            "drag": (0, -pull, 0) if "lengthwise" in case.title else (-pull, 0, 0),
            "drop": (0, 0, -dropped(each)),
        }[case.key]
    return found


def dropped(each: Weighed) -> float:
    """What a drop puts on the slat below it: the force that it is told to press with, N."""
    told = each.loads.cases[-1].reason
    force = float(told.split("press with ")[1].split(" N")[0])
    pad = published_load("impact").across_mm
    asked = each.bed["handling"]
    return force * pad / (pad + (asked.mattress_high if asked.mattress_gives else 0.0))


def test_the_floor_bears_all_that_is_put_on_a_bed_in_every_load_case(
    weighed: tuple[Weighed, ...],
) -> None:
    """Along, across and up: nothing is lost on the way, and nothing is held by thin air."""
    for each in weighed:
        put, cases = applied(each), each.loads.cases
        told = [i for i, case in enumerate(cases) if case.key != "drop"]

        off = np.abs(each.floor + put)

        size = np.abs(put).max(axis=1, keepdims=True)
        assert (off <= NEAR * size)[told].all(), each.bed.design.name
        assert (off[-1] <= 0.51).all(), each.bed.design.name  # its force is told to a newton


def test_the_floor_pushes_and_never_pulls(weighed: tuple[Weighed, ...]) -> None:
    for each in weighed:
        joints = each.loads.joints
        pushes = joints.force[:, joints.kind == STANDS, 2]
        assert pushes.min() > -0.011, each.bed.design.name  # a gram's weight: then it lets go


def test_only_the_floor_holds_a_bed_and_a_dragged_foot_is_not_held(
    weighed: tuple[Weighed, ...],
) -> None:
    for each in weighed:
        joints = each.loads.joints
        floor = joints.pieces[:, 1] == -1
        assert set(joints.kind[floor]) == {STANDS, FRICTION}
        for i, case in enumerate(each.loads.cases):
            free = (joints.force[i, joints.kind == FRICTION] == 0).all(axis=1)
            assert (case.key != "drag") or free.any()


def test_no_figure_of_any_bed_is_missing_or_below_nothing(weighed: tuple[Weighed, ...]) -> None:
    for each in weighed:
        loads = each.loads
        assert (loads.use >= 0).all() and np.isfinite(loads.use).all()
        assert np.isfinite(loads.moved).all() and np.isfinite(loads.sag).all()
        assert np.isfinite(loads.joints.force).all()
        assert (loads.sag_limit > 0).all()
        for effect in loads.hardest.values():
            assert effect.value >= 0 and effect.limit > 0, each.bed.design.name


def test_every_bed_is_knelt_sat_lain_and_dropped_on(weighed: tuple[Weighed, ...]) -> None:
    for each in weighed:
        keys = {case.key for case in each.loads.cases}
        assert {"rest", "lying", "kneel", "edge", "sit", "drop"} <= keys


def test_every_piece_of_every_frame_stands_under_some_stress(weighed: tuple[Weighed, ...]) -> None:
    """A piece without stations is judged by nobody."""
    for each in weighed:
        count = np.diff(each.loads.first)
        idle = [each.bed.pieces.labels[p] for p in each.loads.pieces[count == 0]]
        assert idle == [], each.bed.design.name
        assert np.nanmin(each.loads.piece_use(len(each.bed.pieces))) > 0
