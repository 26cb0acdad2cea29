"""What goes wrong with slats, cleats and beams is told before it is built."""

from __future__ import annotations

import pytest

from model.checks.fit.deck import (
    centre_legs,
    centre_support,
    cleat_backed,
    cleat_clear,
    deck_breathes,
    slat_bearing,
    slat_end,
    slat_gap,
    slats_breathe,
    slats_held,
)
from model.checks.record import Finding, Verdict
from model.dimensions.deck import slat_bearing_least
from model.joints.vents import vent_holes

INCH = 25.4


def verdict(finding: Finding | None) -> Verdict:
    assert finding is not None
    return finding.verdict


# ---------------------------------------------------------------- mishaps


def test_slats_half_an_inch_short_that_drop_at_night_fail() -> None:
    """Always on one side: a family's blog, 2009. On 3/4 in cleats 1/4 in is left."""
    left = slat_bearing_least(0.75 * INCH, 54 * INCH, 53.5 * INCH)

    finding = slat_bearing(left)

    assert finding.verdict is Verdict.FAILS
    assert finding.margin == pytest.approx((0.25 - 0.5) * INCH)


def test_tolerances_that_add_up_to_a_quarter_inch_make_a_narrow_cleat_tight() -> None:
    """Slats walk off narrow or worn cleats: half an inch must remain."""
    left = slat_bearing_least(0.75 * INCH, 54 * INCH, 53.75 * INCH)

    assert slat_bearing(left).verdict is Verdict.TIGHT


def test_loose_slats_on_a_narrow_cleat_are_noted_unless_screwed() -> None:
    assert verdict(slats_held("slats", "strap", 0.75 * INCH)) is Verdict.NOTE
    assert verdict(slats_held("slats", "strap", 1.0 * INCH)) is Verdict.HOLDS
    assert slats_held("slats", "screws", 0.75 * INCH) is None
    assert slats_held("panels", "strap", 0.75 * INCH) is None


@pytest.mark.parametrize("apart", [4, 5])
def test_slats_four_or_five_inches_apart_under_foam_fail(apart: float) -> None:
    """A warranty was void for it."""
    assert verdict(slat_gap("slats", apart * INCH, "foam")) is Verdict.FAILS


def test_springs_may_lie_on_slats_five_inches_apart_and_no_farther() -> None:
    assert verdict(slat_gap("slats", 5 * INCH, "spring")) is Verdict.TIGHT
    assert verdict(slat_gap("slats", 5.05 * INCH, "spring")) is Verdict.FAILS


def test_a_queen_without_a_centre_beam_is_noted() -> None:
    """A valley in the middle, told of queens and kings by many."""
    assert verdict(centre_support(60 * INCH + 26, False)) is Verdict.NOTE
    assert verdict(centre_support(54 * INCH + 26, False)) is Verdict.NOTE
    assert centre_support(60 * INCH + 26, True) is None


def test_a_narrow_bed_needs_no_centre_beam() -> None:
    assert verdict(centre_support(38 * INCH + 26, False)) is Verdict.HOLDS


def test_a_king_whose_beam_has_no_leg_mid_way_is_noted() -> None:
    """A centre foot was left out when a bed was put together again, and its side rail split."""
    assert verdict(centre_legs("ends", 76 * INCH + 26)) is Verdict.NOTE
    assert verdict(centre_legs("ends", 54 * INCH + 26)) is Verdict.HOLDS
    assert centre_legs("legs", 76 * INCH + 26) is None


def test_a_solid_platform_under_foam_fails() -> None:
    """Mould below memory foam after ten years on a closed deck."""
    assert verdict(deck_breathes("panels", 25.0, 0, 1546.0, 3)) is Verdict.FAILS


def test_the_smallest_vents_of_a_standard_base_are_enough() -> None:
    """EN 747: 35 cm2 of openings. One panel with 16 holes of 17 mm across: 36.3 cm2."""
    finding = deck_breathes("panels", 17.0, 1, 16 * 5 * 17.0, 1)

    assert finding is not None
    assert finding.value == pytest.approx(16 * 3.14159 * 0.85**2, rel=1e-5)
    assert finding.verdict is Verdict.HOLDS


@pytest.mark.parametrize("size", [(1546.0, 684.0, 18.0), (1003.0, 411.0, 12.0)])
def test_the_vent_area_is_that_of_the_holes_that_are_drilled(
    size: tuple[float, float, float],
) -> None:
    holes = vent_holes(size, diameter=25, rows=2)
    drilled = 3 * sum(3.14159265 * (hole.diameter / 20) ** 2 for hole in holes)

    finding = deck_breathes("panels", 25.0, 2, size[0], 3)

    assert finding is not None
    assert finding.value == pytest.approx(drilled)


def test_slats_almost_touching_are_noted() -> None:
    """A fifth of the deck open: common practice, no source."""
    assert verdict(slats_breathe("slats", 20.0, 80.0)) is Verdict.HOLDS
    assert verdict(slats_breathe("slats", 19.0, 81.0)) is Verdict.NOTE


# ---------------------------------------------------------------- cleats and end gaps


def test_a_cleat_that_hangs_into_an_opening_fails() -> None:
    assert verdict(cleat_clear(-0.5, True, False)) is Verdict.FAILS
    assert verdict(cleat_clear(0.0, False, True)) is Verdict.HOLDS
    assert cleat_clear(-0.5, False, False) is None


def test_a_cleat_without_wood_behind_it_fails() -> None:
    assert verdict(cleat_backed(-0.5, True, False)) is Verdict.FAILS
    assert verdict(cleat_backed(0.0, False, False)) is Verdict.HOLDS
    assert cleat_backed(-0.5, True, True) is None


def test_the_gap_beside_the_post_counts_like_any_other() -> None:
    assert verdict(slat_end("slats", 76.3, "foam")) is Verdict.FAILS
    assert verdict(slat_end("slats", 76.2, "foam")) is Verdict.HOLDS


def test_a_deck_of_panels_has_no_slats_to_check_and_one_of_slats_no_vents() -> None:
    assert slat_gap("panels", 200.0, "foam") is None
    assert slat_end("panels", 200.0, "foam") is None
    assert slats_breathe("panels", 0.0, 89.0) is None
    assert deck_breathes("slats", 25.0, 0, 1546.0, 3) is None
