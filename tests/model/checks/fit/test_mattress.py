"""What goes wrong between mattress, bedding, boards and sleeper is told before it is built."""

from __future__ import annotations

import pytest

from model.checks.fit.mattress import (
    bedding_room,
    footboard_low,
    headboard_shows,
    mattress_drops_in_across,
    mattress_drops_in_along,
    mattress_not_loose,
    mattress_shows,
    recess_holds,
    sleeping_height_easy,
    two_piece_sum,
)
from model.checks.record import Finding, Verdict

INCH = 25.4


def verdict(finding: Finding | None) -> Verdict:
    assert finding is not None
    return finding.verdict


# ---------------------------------------------------------------- mishaps


def test_a_king_with_an_inch_at_each_side_is_noted_as_loose() -> None:
    """The client wanted it tight, and the brackets were already let in: a forum, 2013."""
    assert mattress_not_loose(1.0 * INCH).verdict is Verdict.NOTE
    assert mattress_not_loose(0.75 * INCH).verdict is Verdict.HOLDS


def test_a_bed_built_too_tight_to_tuck_its_sheets_is_noted() -> None:
    """A maker of some twenty beds built his own so. Half an inch is the least: a forum, 2013."""
    assert bedding_room(0.25 * INCH).verdict is Verdict.NOTE
    assert bedding_room(0.5 * INCH).verdict is Verdict.HOLDS


def test_a_mattress_that_varies_from_its_label_more_than_it_has_room_fails() -> None:
    """20 mm either way: EN 1334. A quarter inch at each side takes up half an inch."""
    for room in (mattress_drops_in_across, mattress_drops_in_along):
        assert room(0.25 * INCH, 20.0).verdict is Verdict.FAILS
        assert room(10.0, 20.0).verdict is Verdict.TIGHT
        assert room(0.5 * INCH, 20.0).verdict is Verdict.HOLDS


def test_two_narrow_mattresses_that_nobody_measured_are_noted() -> None:
    """Bought for a stair; together they measured 78 in, and 76 had been counted on."""
    assert verdict(two_piece_sum(2, 76 * INCH, None)) is Verdict.NOTE
    assert verdict(two_piece_sum(2, 78 * INCH, 39 * INCH)) is Verdict.HOLDS
    assert two_piece_sum(1, 76 * INCH, None) is None


def test_a_headboard_that_a_14_inch_mattress_and_its_pillows_swallow_is_noted() -> None:
    """36 in of headboard on a deck at 14 in: 22 in over the deck and 8 over the mattress."""
    deck, thin, thick = 14 * INCH, 8 * INCH, 14 * INCH

    assert verdict(headboard_shows("panel", 36 * INCH, deck + thick)) is Verdict.NOTE
    assert verdict(headboard_shows("panel", 36 * INCH, deck + thin)) is Verdict.HOLDS


def test_a_bed_to_jump_into_is_noted() -> None:
    """A deck with drawers at 20 in and a mattress of 12: 32 in."""
    assert sleeping_height_easy(32 * INCH, "adults").verdict is Verdict.NOTE


def test_a_mattress_on_the_floor_is_noted() -> None:
    assert sleeping_height_easy(14 * INCH, "adults").verdict is Verdict.NOTE


def test_a_bed_too_high_for_a_frail_adult_is_more_than_a_note() -> None:
    assert sleeping_height_easy(24 * INCH, "a frail adult").verdict is Verdict.FAILS
    assert sleeping_height_easy(20 * INCH, "a frail adult").verdict is Verdict.HOLDS


# ---------------------------------------------------------------- limits from both sides


@pytest.mark.parametrize(
    ("recess", "expected"),
    [(0.75, Verdict.NOTE), (1.0, Verdict.HOLDS), (3.0, Verdict.HOLDS), (3.1, Verdict.NOTE)],
)
def test_a_recess_of_one_to_three_inches_holds_the_mattress(
    recess: float, expected: Verdict
) -> None:
    assert recess_holds(recess * INCH).verdict is expected


def test_six_inches_of_mattress_stand_above_the_rail() -> None:
    """So that sitting loads the mattress: common practice, no source."""
    assert mattress_shows(7.5 * INCH, 1.5 * INCH).verdict is Verdict.HOLDS
    assert mattress_shows(7.4 * INCH, 1.5 * INCH).verdict is Verdict.NOTE


def test_a_footboard_is_noted_from_four_inches_above_the_mattress() -> None:
    """Common practice, no source."""
    assert verdict(footboard_low("panel", 28 * INCH, 24 * INCH)) is Verdict.HOLDS
    assert verdict(footboard_low("panel", 28.1 * INCH, 24 * INCH)) is Verdict.NOTE


def test_an_end_that_has_no_board_is_not_measured() -> None:
    assert footboard_low("none", 900.0, 600.0) is None
    for style in ("none", "low rail"):
        assert headboard_shows(style, 400.0, 600.0) is None  # type: ignore[arg-type]
