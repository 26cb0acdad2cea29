"""Bottoms that sag, break or drop out are told before they are cut."""

from __future__ import annotations

import inspect
from collections.abc import Callable
from math import pi
from typing import Any

import pytest

from model.checks.record import Finding, Verdict
from model.checks.strength import drawer_bottoms
from model.checks.strength.drawer_bottoms import (
    bottom_clears,
    bottom_holds,
    bottom_looks_flat,
    bottom_stays,
    groove_carries,
)
from model.dimensions.drawer_forces import bottom_bends
from model.materials import allowed, material, stock_grade
from model.mechanics.plate import Bent

CLEAR = stock_grade("clear")
PLY, MDF = material("birch_ply_6_5"), material("mdf_1_4in")


def said(finding: Finding | None) -> Finding:
    assert finding is not None
    return finding


def test_a_quarter_inch_bottom_of_a_wide_bed_drawer_sags_into_the_way() -> None:
    """A published mishap: a wide flat bottom tore off its front. Here MDF, 900 x 760 mm."""
    bends = bottom_bends(MDF, CLEAR, 6.35, 900, 760, 1)
    sag = bends.sag * (718 + 48)

    finding = said(bottom_clears(1, sag, 9.5 + 6.4))

    assert finding.verdict is Verdict.FAILS
    assert finding.value > 25


def test_a_half_inch_bottom_of_the_same_drawer_holds() -> None:
    """36 x 20 in shop drawers got 1/2 in plywood against sag: a magazine."""
    bends = bottom_bends(material("birch_ply_12"), CLEAR, 12, 900, 760, 1)

    assert said(bottom_clears(1, bends.sag * 800, 15.9)).verdict is Verdict.HOLDS


def test_a_sag_that_takes_three_quarters_of_its_room_is_tight() -> None:
    assert said(bottom_clears(1, 12.5, 16.0)).verdict is Verdict.TIGHT
    assert said(bottom_clears(1, 11.5, 16.0)).verdict is Verdict.HOLDS


@pytest.mark.parametrize(
    ("sag", "short", "expected"),
    [
        (1.5, 305, Verdict.HOLDS), (1.7, 305, Verdict.NOTE),  # 1/16 in for a foot: 1.59 mm
        (6.3, 1400, Verdict.HOLDS), (6.4, 1400, Verdict.NOTE),  # 1/4 in at most
    ],
)  # fmt: skip
def test_a_bottom_that_sags_more_than_a_shelf_is_noted(
    sag: float, short: float, expected: Verdict
) -> None:
    """ANSI/KCMA A161.1, shelves and cabinet bottoms."""
    assert said(bottom_looks_flat(1, sag, short)).verdict is expected


def test_bending_stress_of_a_bottom_by_hand() -> None:
    """900 x 500, 6.4 mm: moment x 6 / t^2, against what plywood bears for a week of test load."""
    bends = Bent(0.01, 0.030, 0.045)  # N mm per mm under 1 Pa
    sheet = allowed("birch_ply_6_5")

    finding = said(bottom_holds(1, PLY, CLEAR, 6.4, bends, 100.0, 760.0))

    across = 0.045 * 760 * 6 / 6.4**2
    assert finding.value == pytest.approx(across)
    assert finding.limit == pytest.approx(sheet.bending_across_mpa * sheet.lasting("seven days"))
    assert "across its grain under the load of a test" in finding.reason


def test_books_for_years_are_worse_than_a_test() -> None:
    """A lasting load may bend it less: 600 Pa for years against 760 Pa for a week."""
    finding = said(bottom_holds(1, MDF, CLEAR, 6.4, Bent(0.01, 0.03, 0.03), 600.0, 760.0))

    assert "what lies in it for years" in finding.reason
    assert finding.value == pytest.approx(0.03 * 600 * 6 / 6.4**2)


def test_a_bottom_that_sags_far_draws_out_of_its_groove() -> None:
    """Sag 25 mm over 770 mm: a half wave grows short by pi^2 25^2 / (4 x 770) = 2.0 mm."""
    flat, sagging = (said(bottom_stays(1, 4.8, 1.2, sag, 770)) for sag in (1.0, 25.0))

    assert flat.verdict is Verdict.HOLDS
    assert sagging.verdict is Verdict.FAILS
    assert flat.value - sagging.value == pytest.approx(pi**2 * (25**2 - 1) / (4 * 770))


def test_the_groove_carries_half_the_strip_across_the_short_way() -> None:
    """760 Pa on 500 mm: 0.19 N on each mm of edge; 1.5 x 0.19 / 9.5 mm in shear."""
    sheet = allowed("birch_ply_12")

    finding = said(groove_carries(1, 760.0, 500.0, 9.5, 3.5, material("birch_ply_12"), CLEAR))

    edge = 760e-6 * 500 / 2
    shear = 1.5 * edge / 9.5 / (sheet.shear_mpa * sheet.lasting("seven days"))
    assert finding.value == pytest.approx(100 * max(shear, edge / 3.5 / sheet.across_mpa))
    assert finding.verdict is Verdict.HOLDS


def test_a_hair_of_wood_under_the_groove_breaks_out() -> None:
    finding = said(groove_carries(1, 3000.0, 760.0, 0.6, 3.5, material("mdf_1_2in"), CLEAR))

    assert finding.verdict is Verdict.FAILS


def all_checks() -> list[Callable[..., Finding | None]]:
    return [each for each in vars(drawer_bottoms).values() if hasattr(each, "check")]


@pytest.mark.parametrize("asked", all_checks(), ids=lambda each: each.__name__)
def test_a_row_without_drawers_is_asked_nothing(asked: Callable[..., Finding | None]) -> None:
    needs: dict[str, Any] = dict.fromkeys(inspect.signature(asked).parameters, 1.0)

    assert asked(**(needs | {"drawer_count": 0})) is None
