"""From which height on a bed is not covered here."""

from __future__ import annotations

from model.checks.record import Verdict
from model.checks.safety.height import not_a_high_bed


def test_an_ordinary_bed_is_far_from_any_rule() -> None:
    found = not_a_high_bed(343.0, 362.0, "a child")

    assert (found.verdict, found.limit) == (Verdict.HOLDS, 600)


def test_the_height_of_a_standard_is_a_note_for_adults_and_a_limit_for_a_child() -> None:
    assert not_a_high_bed(620.0, 640.0, "adults").verdict is Verdict.NOTE
    assert not_a_high_bed(620.0, 640.0, "a child").verdict is Verdict.FAILS
    assert "EN 747-1" in not_a_high_bed(620.0, 640.0, "adults").reason


def test_the_height_of_a_law_fails_for_everybody_and_is_measured_under_the_deck() -> None:
    found = not_a_high_bed(770.0, 789.0, "adults")

    assert (found.verdict, found.value, found.about) == (Verdict.FAILS, 770.0, "deck_bottom")
    assert "bunk bed" in found.reason


def test_the_strictest_rule_that_is_passed_speaks() -> None:
    assert "700 mm" in not_a_high_bed(700.0, 720.0, "adults").reason
    assert "800 mm" in not_a_high_bed(760.0, 810.0, "adults").reason
    assert not_a_high_bed(760.0, 810.0, "adults").verdict is Verdict.FAILS
