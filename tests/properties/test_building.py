"""Whatever bed is built can be put together step by step: nothing is closed before what goes in."""

from __future__ import annotations

from collections import Counter

import pytest

from model.bed import Bed, solve
from model.building.joints import KNOWN
from model.building.steps import build_steps
from model.cost.screws import driven
from model.errors import CannotBuild
from tests.checkers.replay import Replay
from tests.properties.designs import random_design

BEDS = 60


@pytest.fixture(scope="module")
def beds() -> tuple[Bed, ...]:
    """As many beds as can be built of random designs."""
    found: list[Bed] = []
    seed = 30_000
    while len(found) < BEDS:
        seed += 1
        try:
            found.append(solve(random_design(seed)))
        except CannotBuild:
            continue
    return tuple(found)


def test_every_bed_is_built_again_from_its_steps(beds: tuple[Bed, ...]) -> None:
    for bed in beds:
        faults = list(Replay(bed, build_steps(bed)).faults())

        assert not faults, f"{bed.design.name}: {faults[:4]}"


def test_every_screw_is_driven_in_a_step(beds: tuple[Bed, ...]) -> None:
    for bed in beds:
        told: Counter[tuple[str, float]] = Counter()
        for step in build_steps(bed):
            for each in step.screws:
                told[each.kind, round(each.length, 2)] += each.number
        bought: Counter[tuple[str, float]] = Counter()
        for kind in driven(bed):
            bought[kind.kind, round(kind.length, 2)] += kind.count

        assert told == bought, bed.design.name


def test_every_joint_is_one_that_hands_know(beds: tuple[Bed, ...]) -> None:
    for bed in beds:
        joints = {hold.joint for part in bed.pieces.parts for hold in part.held}

        assert joints <= KNOWN, bed.design.name


def test_every_step_has_words(beds: tuple[Bed, ...]) -> None:
    """Each title and sentence ends as it should, and says neither None nor nan."""
    for bed in beds:
        keys = [step.key for step in build_steps(bed)]
        assert len(keys) == len(set(keys))
        for step in build_steps(bed):
            assert step.title and step.sentences, (bed.design.name, step.key)
            for sentence in step.text:
                assert sentence.endswith((".", "”", '"')), (bed.design.name, sentence)
                assert not {"None", "nan", "inf"} & set(sentence.split()), sentence
