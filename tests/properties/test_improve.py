"""Whatever change is offered for a check of any bed was built, and the check holds in that bed."""

from __future__ import annotations

from itertools import islice

import pytest

from model.bed import Bed, solve
from model.brief import all_choices
from model.brief.leeway import turnable
from model.checks.record import Finding, Verdict
from model.improve import Improvement, improvement
from tests.properties.conftest import Drawn

TRIED = 40  # findings: up to 120 beds are built for each
ORDER = list(Verdict)


@pytest.fixture(scope="module")
def answers(drawn: Drawn) -> list[tuple[Bed, Finding, Improvement | None]]:
    """Failed and tight findings of random beds, at most one of each check, and what is offered."""
    return [(bed, f, improvement(bed, f)) for bed, f in islice(_not_holding(drawn), TRIED)]


def _not_holding(drawn: Drawn) -> list[tuple[Bed, Finding]]:
    found: dict[str, list[tuple[Bed, Finding]]] = {}
    for bed in drawn.beds:
        for finding in bed.findings:
            if finding.verdict in (Verdict.FAILS, Verdict.TIGHT):
                found.setdefault(finding.title, []).append((bed, finding))
    rounds = range(max(map(len, found.values())))
    return [each[i] for i in rounds for each in found.values() if i < len(each)]


def test_most_checks_have_a_way_out(
    answers: list[tuple[Bed, Finding, Improvement | None]],
) -> None:
    offered = [found for _, _, found in answers if found is not None]

    assert len(answers) > 10
    assert len(offered) > len(answers) / 2


def test_every_change_that_is_offered_builds_and_mends_its_check(
    answers: list[tuple[Bed, Finding, Improvement | None]],
) -> None:
    for bed, finding, found in answers:
        if found is None:
            continue
        changed = solve(bed.design.with_choices(found.changes))
        same = {(f.id, f.place): f for f in changed.findings}
        then = found.then or finding

        if found.then is None:
            assert (finding.id, finding.place) not in same
            assert found.choice in finding.remedies
        else:
            verdict = same[then.id, then.place].verdict
            if "only just" in found.sentence:
                assert (finding.verdict, verdict) == (Verdict.FAILS, Verdict.TIGHT), finding.id
            else:
                assert verdict in (Verdict.HOLDS, Verdict.NOTE), finding.id


def test_no_change_that_is_offered_leaves_as_many_failed_checks_as_before(
    answers: list[tuple[Bed, Finding, Improvement | None]],
) -> None:
    for bed, finding, found in answers:
        if found is not None:
            changed = solve(bed.design.with_choices(found.changes))
            spare = 1 if finding.verdict is Verdict.TIGHT else 0

            assert _failed(changed) < _failed(bed) + spare, found.sentence


def _failed(bed: Bed) -> int:
    return sum(finding.verdict is Verdict.FAILS for finding in bed.findings)


def test_what_gets_worse_is_told(
    answers: list[tuple[Bed, Finding, Improvement | None]],
) -> None:
    for bed, finding, found in answers:
        if found is None:
            continue
        before = {(f.id, f.place): ORDER.index(f.verdict) for f in bed.findings}
        own = {finding.id, found.then.id if found.then else ""}
        for each in solve(bed.design.with_choices(found.changes)).findings:
            was = before.get((each.id, each.place), ORDER.index(Verdict.HOLDS))
            if each.id not in own and ORDER.index(each.verdict) < was:
                assert each.title in found.effects, found.sentence


def test_only_what_the_workshop_decides_is_turned_and_it_is_in_range(
    answers: list[tuple[Bed, Finding, Improvement | None]],
) -> None:
    for _, _, found in answers:
        if found is not None:
            assert found.changes.keys() <= turnable()
            assert all(all_choices()[n].checked(v) == v for n, v in found.changes.items())


def test_every_sentence_can_be_read(
    answers: list[tuple[Bed, Finding, Improvement | None]],
) -> None:
    for _, _, found in answers:
        if found is not None:
            assert found.sentence.endswith(".")
            assert "nan" not in found.sentence and "  " not in found.sentence
            assert " in place of " in found.change
            new, _, old = found.change.partition(" in place of ")
            assert not new.endswith(f" {old}"), found.sentence
