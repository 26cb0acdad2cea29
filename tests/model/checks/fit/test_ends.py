"""Panels of headboard and footboard may move, stay in their grooves, and leave walls of wood."""

from __future__ import annotations

from model.checks.fit.ends import (
    groove_keeps_walls,
    panel_floats,
    panel_stays,
    panel_stock_thickness,
)
from model.checks.record import Finding, Verdict
from model.materials import material

INCH = 25.4
SOLID, BOARD = material("yellow_poplar"), material("mdf_1_4in")


def verdict(finding: Finding | None) -> Verdict:
    assert finding is not None
    return finding.verdict


def test_a_sheet_needs_no_more_room_than_a_saw_is_true() -> None:
    assert verdict(panel_floats("panel", BOARD, INCH / 16)) is Verdict.HOLDS
    assert verdict(panel_floats("panel", BOARD, 0.5)) is Verdict.FAILS


def test_a_panel_that_hardly_reaches_into_its_groove_fails() -> None:
    """3 mm (1/8 in) stay in: common practice, no source."""
    assert verdict(panel_stays("panel", BOARD, 2.9)) is Verdict.FAILS
    assert verdict(panel_stays("panel", BOARD, 3.5)) is Verdict.HOLDS


def test_solid_panels_are_followed_over_the_year_and_not_told_of_twice() -> None:
    assert panel_floats("panel", SOLID, 0.0) is None
    assert panel_stays("panel", SOLID, 0.0) is None


def test_a_groove_half_an_inch_wide_in_five_eighths_stock_fails() -> None:
    """It leaves 1/16 in at each side, and 1/4 in is kept: common practice, no source."""
    wall = (5 / 8 - 1 / 2) / 2 * INCH

    assert verdict(groove_keeps_walls(True, wall)) is Verdict.FAILS
    assert verdict(groove_keeps_walls(True, INCH / 4)) in (Verdict.HOLDS, Verdict.TIGHT)


def test_a_groove_cut_before_its_panel_was_measured_is_noted() -> None:
    """Tongues of "3/4" plywood were too thin for their grooves: a reader's letter."""
    assert verdict(panel_stock_thickness(True, "panel", 6.35, None, BOARD)) is Verdict.NOTE
    assert verdict(panel_stock_thickness(True, "panel", 6.1, 6.1, BOARD)) is Verdict.HOLDS


def test_an_end_without_panels_is_asked_nothing() -> None:
    assert panel_floats("planks", BOARD, 0.0) is None
    assert panel_stays("planks", BOARD, 0.0) is None
    assert groove_keeps_walls(False, 0.0) is None
    assert panel_stock_thickness(True, "planks", 6.35, None, BOARD) is None
