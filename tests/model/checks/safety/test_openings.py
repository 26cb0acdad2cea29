"""Openings of headboard and footboard, measured on their pieces."""

from __future__ import annotations

from typing import Any

import pytest

from model.bed import Bed, Design, solve
from model.checks.record import Finding, Verdict


def bed(**choices: Any) -> Bed:
    named = {name.replace("__", "."): value for name, value in choices.items()}
    return solve(Design().with_choices(named))


def said(of: Bed, scope: str) -> Finding | None:
    return next((f for f in of.findings if f.id == f"{scope}.end_openings"), None)


@pytest.mark.parametrize("gap", [35.0, 60.0, 100.0, 200.0])
def test_open_slats_are_measured_between_their_pieces(gap: float) -> None:
    built = bed(head__style="slats", head__spindle_gap_most=gap)
    found = said(built, "head")

    assert found is not None
    ends = (built["head.spindle_gap"], built["head.spindle_end_gap"])
    assert min(abs(found.value - each) for each in ends) < 0.1


def test_wide_gaps_are_a_note_and_fail_for_a_child() -> None:
    grown = said(bed(head__style="slats", head__spindle_gap_most=120.0), "head")
    child = said(
        bed(head__style="slats", head__spindle_gap_most=120.0, sleepers_are="a child"), "head"
    )

    assert grown is not None and grown.verdict is Verdict.NOTE
    assert child is not None and child.verdict is Verdict.FAILS


def test_gaps_under_a_neck_and_over_a_limb_hold_for_everybody() -> None:
    built = bed(head__style="slats", head__spindle_gap_most=58.0, sleepers_are="a child")
    found = said(built, "head")

    assert found is not None and 50 <= found.value <= 60
    assert found.verdict is Verdict.HOLDS


@pytest.mark.parametrize("style", ["panel", "planks", "low rail", "none"])
def test_closed_and_open_topped_ends_have_no_openings(style: str) -> None:
    built = bed(foot__style=style)

    assert said(built, "foot") is None


def test_drawer_openings_below_the_deck_are_no_openings_of_the_end() -> None:
    rows = {"foot.drawers": 2, "left.drawers": 2, "right.drawers": 2, "beam": "none"}
    built = solve(Design().with_choices(rows))

    assert built["foot.style"] == "panel"
    assert said(built, "foot") is None
