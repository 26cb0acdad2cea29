"""Sheets and mattresses are seldom what their labels say; the maker is told to measure."""

from __future__ import annotations

import pytest

from model.checks.fit.stock import (
    bottom_sheet_thickness,
    box_sheet_thickness,
    deck_sheet_as_sold,
    front_sheet_thickness,
    mattress_size,
    sheet_thickness,
)
from model.checks.record import Finding, Verdict
from model.materials import material

INCH = 25.4
QUARTER = material("hardwood_ply_1_4in")  # sold as 1/4 in, mostly 5.2 mm
THREE_QUARTERS = material("hardwood_ply_3_4in")  # sold as 3/4 in, mostly 18 mm


def verdict(finding: Finding | None) -> Verdict:
    assert finding is not None
    return finding.verdict


def test_a_sheet_that_nobody_measured_is_noted_with_what_it_mostly_is() -> None:
    """A sheet sold as 3/4 in is 18 mm: nominal and real size stand side by side."""
    finding = sheet_thickness(0.75 * INCH, None, THREE_QUARTERS)

    assert verdict(finding) is Verdict.NOTE
    assert finding is not None
    assert (finding.value, finding.limit) == (pytest.approx(0.75 * INCH), 18)


def test_a_measured_sheet_holds() -> None:
    """A cabinet of 3/4 in plywood came out narrow: its sheet had not been measured."""
    assert verdict(sheet_thickness(17.9, 17.9, THREE_QUARTERS)) is Verdict.HOLDS


@pytest.mark.parametrize("typed", [5.2, 6.35])
def test_neither_the_name_nor_the_usual_size_of_a_sheet_is_another_sheets(typed: float) -> None:
    assert verdict(sheet_thickness(typed, None, QUARTER)) is Verdict.NOTE


@pytest.mark.parametrize("typed", [9.0, 12.0, 3.0, 4.1, 7.5])  # 1 mm beside either size
def test_a_thickness_that_is_neither_fails_until_it_was_measured(typed: float) -> None:
    finding = sheet_thickness(typed, None, QUARTER)

    assert verdict(finding) is Verdict.FAILS
    assert finding is not None and finding.margin < 0
    assert verdict(sheet_thickness(typed, typed, QUARTER)) is Verdict.NOTE


def test_solid_wood_has_no_sheet_to_measure() -> None:
    assert sheet_thickness(19.05, None, material("yellow_poplar")) is None


def test_a_bed_without_drawers_has_no_box_sheet() -> None:
    for asked in (box_sheet_thickness, bottom_sheet_thickness, front_sheet_thickness):
        assert asked(False, 18.0, None, THREE_QUARTERS) is None
        assert verdict(asked(True, 18.0, None, THREE_QUARTERS)) is Verdict.NOTE


def test_a_deck_of_slats_has_no_deck_sheet() -> None:
    assert deck_sheet_as_sold("slats", 18.0, None, THREE_QUARTERS) is None
    assert verdict(deck_sheet_as_sold("panels", 18.0, None, THREE_QUARTERS)) is Verdict.NOTE


def test_a_mattress_that_nobody_measured_is_noted() -> None:
    """Box spring and mattress "vary from any standard": a furniture forum, 2013."""
    assert mattress_size(60 * INCH, None).verdict is Verdict.NOTE
    assert mattress_size(61 * INCH, 61 * INCH).verdict is Verdict.HOLDS
    assert mattress_size(61 * INCH, 61 * INCH).margin == 0  # what was measured is the size
