"""Gaps beside moving fronts, measured on their pieces."""

from __future__ import annotations

from typing import Any

import pytest

from model.bed import Bed, Design, solve
from model.checks.record import Finding, Verdict
from model.checks.safety.moving import edge_gaps


def bed(**choices: Any) -> Bed:
    return solve(Design().with_choices(choices))


def said(of: Bed, row: str = "left") -> Finding:
    return next(f for f in of.findings if f.id == f"{row}.fronts_squeeze_nobody")


def test_inset_fronts_are_measured_to_their_frame() -> None:
    built = bed(front_fit="inset", inset_reveal=2.38125)

    assert min(edge_gaps(built.pieces, "left")) == pytest.approx(2.4, abs=0.1)
    assert said(built).verdict is Verdict.HOLDS


def test_a_reveal_that_a_finger_just_enters_is_told() -> None:
    """A reveal of 8 mm is a squeeze point of EN 581-1, 7 to 18 mm."""
    grown = bed(front_fit="inset", inset_reveal=8.0)
    child = bed(front_fit="inset", inset_reveal=8.0, sleepers_are="a child")

    assert said(grown).verdict is Verdict.NOTE
    assert said(child).verdict is Verdict.FAILS
    assert 7 < said(child).value < 18


def test_overlay_fronts_are_measured_to_each_other() -> None:
    built = bed(overlay=12.7)

    assert built["left.front_gap"] == pytest.approx(25.4)
    assert 25.4 in edge_gaps(built.pieces, "left")
    assert said(built).verdict is Verdict.HOLDS


def test_overlay_fronts_that_nearly_meet_leave_a_finger_out() -> None:
    built = bed(overlay=23.8125)

    assert built["left.front_gap"] == pytest.approx(3.175)
    assert min(edge_gaps(built.pieces, "left")) == pytest.approx(3.2)
    assert said(built).verdict is not Verdict.FAILS


def test_a_foot_row_is_measured_across_the_bed() -> None:
    built = solve(
        Design().with_choices(
            {"foot.drawers": 2, "left.drawers": 2, "right.drawers": 2, "beam": "none"}
        )
    )

    assert built["foot.front_gap"] in [pytest.approx(g, abs=0.06) for g in
                                       edge_gaps(built.pieces, "foot")]  # fmt: skip


def test_fixed_fronts_move_nobody_and_are_not_asked() -> None:
    built = solve(Design().with_choices({"right.side": "dummy"}))

    assert not [f for f in built.findings if f.id == "right.fronts_squeeze_nobody"]
