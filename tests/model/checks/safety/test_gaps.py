"""Gaps about the mattress, in the deck, at pulls and beside the bed, judged by who sleeps in it."""

from __future__ import annotations

import math

import pytest

from model.bed import Design, solve
from model.checks.record import Finding, Verdict
from model.checks.safety.banded import banded, worst_banded
from model.checks.safety.beside import gap_to_nightstand
from model.checks.safety.gaps import mattress_gap_pushed, slats_hold_no_head, vents_hold_no_finger
from model.checks.safety.pulls import hand_holes
from model.checks.safety.wall import gap_to_wall
from model.materials import pull
from model.materials.probe import probes

EVERYBODY = ("adults", "a child", "a frail adult")


def verdict(finding: Finding | None) -> Verdict:
    assert finding is not None
    return finding.verdict


# ---------------------------------------------------------------- who a rule binds


def test_a_forbidden_gap_is_a_note_for_adults_and_a_failure_for_whom_it_counts() -> None:
    assert banded(100, "opening", "adults").verdict is Verdict.NOTE
    assert banded(100, "opening", "a child").verdict is Verdict.FAILS


def test_a_note_says_what_the_rule_binds_and_when_it_would_count() -> None:
    said = banded(40, "mattress", "adults").reason

    assert "AS/NZS 4220 forbids 30 to 50 mm" in said
    assert "binds bunk beds and beds over 800 mm only: no limit here" in said
    assert said.endswith("unless a child uses the bed.")


def test_a_failure_says_why_a_rule_of_other_beds_counts() -> None:
    said = banded(40, "mattress", "a child").reason

    assert "binds bunk beds and beds over 800 mm only, but with a child in the bed it" in said


def test_a_rule_that_counts_goes_before_a_worse_one_that_does_not() -> None:
    """40 mm holds a limb (children), 130 mm an adult's head (nursing beds)."""
    assert "a child's head" in banded(130, "mattress", "a child").reason
    assert "an adult's head" in banded(130, "mattress", "a frail adult").reason


def test_the_nearest_end_of_any_band_is_the_limit_that_is_shown() -> None:
    assert (banded(45, "mattress", "a child").limit, banded(45, "mattress", "a child").margin) == (
        50.0,
        -5.0,
    )
    assert (banded(26, "mattress", "adults").limit, banded(26, "mattress", "adults").margin) == (
        30.0,
        4.0,
    )


def test_the_worst_gap_of_several_speaks() -> None:
    found = worst_banded([20, 100, 40, 300], "opening", "a child")

    assert found is not None and found.value == 100
    assert worst_banded([], "opening", "a child") is None


def test_every_probe_names_its_source_and_whom_it_binds() -> None:
    for probe in probes().values():
        assert probe.source and probe.binds and probe.standard
        assert 0 <= probe.low_mm < probe.top <= math.inf
        assert set(probe.counts_for) <= set(EVERYBODY[1:])


# ---------------------------------------------------------------- mattress


def test_all_the_room_of_a_small_mattress_may_lie_at_one_side() -> None:
    """20 mm at each side and a mattress 20.5 mm too small: 60.5 mm, more than a neck."""
    (found,) = mattress_gap_pushed(1564, 2042, 1524, 2032, 20.5, "a frail adult")

    assert found.value == pytest.approx(60.5)
    assert (found.verdict, found.about) == (Verdict.FAILS, "well_width")


def test_a_short_mattress_is_pushed_up_too() -> None:
    (found,) = mattress_gap_pushed(1534, 2092, 1524, 2032, 5, "a frail adult")

    assert (found.value, found.about, found.remedies) == (65, "well_length", ("end_fit",))


def test_two_failing_gaps_are_both_told_and_two_notes_as_one() -> None:
    both = mattress_gap_pushed(1549.4, 2057.4, 1524, 2032, 12.7, "a child")
    one = mattress_gap_pushed(1549.4, 2057.4, 1524, 2032, 12.7, "adults")

    assert [each.id for each in both] == ["beside", "behind"]
    assert [each.verdict for each in one] == [Verdict.NOTE]


def test_a_close_mattress_holds_nobody() -> None:
    """6 mm at each side and a mattress 12 mm too small: 24 mm."""
    (found,) = mattress_gap_pushed(1536, 2044, 1524, 2032, 12, "a child")

    assert found.verdict is Verdict.HOLDS


# ---------------------------------------------------------------- deck and pulls


@pytest.mark.parametrize(("gap", "end"), [(100.0, 10.0), (60.0, 100.0)])
def test_the_wider_gap_of_the_deck_counts(gap: float, end: float) -> None:
    assert verdict(slats_hold_no_head("slats", gap, end, "a child")) is Verdict.FAILS
    assert verdict(slats_hold_no_head("slats", gap, end, "adults")) is Verdict.NOTE
    assert verdict(slats_hold_no_head("slats", 62.0, 10.0, "a child")) is Verdict.HOLDS
    assert slats_hold_no_head("panels", gap, end, "a child") is None


def test_vents_of_an_inch_hold_no_finger() -> None:
    assert verdict(vents_hold_no_finger("panels", 2, 25.4, "a child")) is Verdict.HOLDS
    assert verdict(vents_hold_no_finger("panels", 2, 10.0, "a child")) is Verdict.FAILS
    assert vents_hold_no_finger("panels", 0, 10.0, "a child") is None
    assert vents_hold_no_finger("slats", 2, 10.0, "a child") is None


def test_a_hand_hole_is_judged_by_its_lesser_size() -> None:
    hole, bar = pull("cut_out_100"), pull("bar_128")

    assert verdict(hand_holes(1, hole, 35, 100, "a child")) is Verdict.HOLDS
    assert verdict(hand_holes(1, hole, 35, 10, "a child")) is Verdict.FAILS
    assert verdict(hand_holes(1, hole, 10, 100, "a child")) is Verdict.FAILS
    assert hand_holes(1, bar, 10, 10, "a child") is None
    assert hand_holes(0, hole, 10, 10, "a child") is None


# ---------------------------------------------------------------- wall and nightstand


@pytest.mark.parametrize(
    ("room", "expected"),
    [(0, Verdict.HOLDS), (75, Verdict.HOLDS), (76, Verdict.FAILS), (229, Verdict.FAILS),
     (230, Verdict.HOLDS)],
)  # fmt: skip
def test_a_bed_stands_at_the_wall_or_well_clear_of_it(room: float, expected: Verdict) -> None:
    assert verdict(gap_to_wall(room, "a child")) is expected
    assert verdict(gap_to_wall(room, "adults")) is not Verdict.FAILS


def test_a_far_wall_is_no_gap() -> None:
    assert gap_to_wall(1016, "a child") is None


def test_a_nightstand_is_a_wall_to_who_slides_down_beside_it() -> None:
    assert verdict(gap_to_nightstand(400, 100, "a child")) is Verdict.FAILS
    assert verdict(gap_to_nightstand(400, 50.8, "a child")) is Verdict.HOLDS
    assert gap_to_nightstand(0, 100, "a child") is None


def test_a_bed_for_a_child_is_told_and_can_be_built_without_failing() -> None:
    """Half an inch all round and half an inch of tolerance hold a limb; a quarter inch does not."""
    loose = solve(Design().with_choices({"sleepers_are": "a child"}))
    close = solve(
        Design().with_choices(
            {"sleepers_are": "a child", "side_fit": 6.35, "end_fit": 6.35, "mattress_tolerance": 10}
        )
    )

    assert {f.id for f in loose.findings if f.group == "safety" and f.verdict is Verdict.FAILS} == {
        "mattress_gap_pushed.beside",
        "mattress_gap_pushed.behind",
    }
    assert not [f for f in close.findings if f.group == "safety" and f.verdict is Verdict.FAILS]
