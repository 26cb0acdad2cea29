"""Whatever bed is built can be put together step by step: nothing is closed before what goes in."""

from __future__ import annotations

import re
from collections import Counter

import pytest

from model.bed import Bed
from model.building.joints import KNOWN
from model.building.steps import build_steps
from model.cost.screws import driven
from tests.checkers.replay import Replay
from tests.properties.designs import built_from

BEDS = 60


@pytest.fixture(scope="module")
def beds() -> tuple[Bed, ...]:
    """Of random designs."""
    return built_from(30_001, BEDS)


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


def test_a_step_that_clamps_lists_its_clamps(beds: tuple[Bed, ...]) -> None:
    for bed in beds:
        for step in build_steps(bed):
            if re.search(r"\b[Cc]lamp (it|all)|with clamps|Clamp,", " ".join(step.sentences)):
                assert step.clamps, (bed.design.name, step.title)


def test_nothing_is_told_twice_in_a_step_and_no_screw_is_set_out_by_eye(
    beds: tuple[Bed, ...],
) -> None:
    for bed in beds:
        for step in build_steps(bed):
            assert len(step.sentences) == len(set(step.sentences)), (bed.design.name, step.title)
            marks = {mark.mark for mark in bed.marks}
            own = [each for each in step.screws if set(each.through) <= marks]
            assert all(each.is_placed or each.spread or each.slant for each in own), step.title


def test_panels_stay_dry_in_titles_and_in_fact(beds: tuple[Bed, ...]) -> None:
    """What a title says is glued has a glued joint; what it says stays dry has none."""
    for bed in beds:
        held = bed.proof.holding
        rows = zip(held.one.tolist(), held.hold.tolist(), strict=True)
        glued = {bed.pieces.form(one).name for one, hold in rows if held.holds[hold].glued}
        for step in build_steps(bed):
            _, dry, rest = step.title.partition("; ")
            if dry:
                for name in re.split(r", | and ", rest.removesuffix(" dry").rpartition(" ")[0]):
                    assert not {name, name.removesuffix("s")} & glued, step.title
