"""What goes wrong with drawers under beds is told before they are built."""

from __future__ import annotations

import inspect
from collections.abc import Callable
from typing import Any

import pytest

from model.checks.fit import drawers
from model.checks.fit.drawers import (
    bottom_groove_wall,
    bottom_in_groove,
    box_clears_back,
    box_clears_rail,
    box_leaves_side_space,
    box_runs_free,
    box_tilts_out,
    drawer_access,
    drawer_in_the_dark,
    drawer_opens_in_room,
    drawer_racks,
    front_clears_floor,
    front_screws_are_reached,
    fronts_clear,
    inset_clear,
    load_on_slide,
    pull_is_backed,
    shin_room,
    slide_is_sold,
    stand_at_drawer,
    wide_front_has_pair,
)
from model.checks.record import Finding, Verdict
from model.materials import slide

INCH = 25.4
FULL = slide("side_mount_full")


def verdict(finding: Finding | None) -> Verdict:
    assert finding is not None
    return finding.verdict


# ---------------------------------------------------------------- mishaps


def test_a_drawer_that_meets_the_wall_after_four_inches_fails() -> None:
    finding = drawer_opens_in_room(1, 4 * INCH, 22 * INCH, 1.5 * INCH)

    assert verdict(finding) is Verdict.FAILS
    assert finding is not None
    assert finding.margin == pytest.approx((4 - 22 - 1.5) * INCH)


def test_a_drawer_that_opens_but_leaves_nobody_room_to_stand_is_noted() -> None:
    """12 in to stand: common practice, no source."""
    travel, pull = 22 * INCH, 1.5 * INCH

    assert verdict(drawer_opens_in_room(1, 30 * INCH, travel, pull)) is Verdict.HOLDS
    assert verdict(stand_at_drawer(1, 30 * INCH, travel, pull)) is Verdict.NOTE
    assert verdict(stand_at_drawer(1, 36 * INCH, travel, pull)) is Verdict.HOLDS


def test_an_old_box_as_wide_as_its_opening_fails() -> None:
    """It was taken apart to lose an inch for its slides: a newspaper column."""
    assert verdict(box_leaves_side_space(1, 0.0, 12.7)) is Verdict.FAILS
    assert verdict(box_leaves_side_space(1, 13.0, 12.7)) is Verdict.HOLDS


def test_an_opening_less_one_inch_binds() -> None:
    """Slides of 12.7 mm want 12.9 to 13.2 mm: a slide maker's help page."""
    finding = box_runs_free(1, FULL, (INCH / 2) - FULL.thickness_mm, 0.0)

    assert verdict(finding) is Verdict.FAILS
    assert finding is not None and finding.margin == pytest.approx(-0.2)


def test_a_box_that_is_too_narrow_drops_off_its_slides() -> None:
    assert verdict(box_runs_free(1, FULL, 0.6, 0.0)) is Verdict.FAILS


def test_a_box_as_tall_as_its_opening_fails() -> None:
    """It can neither be tilted in nor run clear of the rail below it."""
    assert verdict(box_tilts_out(1, FULL, 0.0)) is Verdict.FAILS
    assert verdict(box_clears_rail(1, FULL, 0.0)) is Verdict.FAILS


def test_a_box_too_deep_for_the_bed_fails() -> None:
    """Half an inch behind it: common practice, no source."""
    assert verdict(box_clears_back(1, 6.0)) is Verdict.FAILS
    assert verdict(box_clears_back(1, 12.7)) is Verdict.HOLDS


def test_slides_of_23_inches_are_not_sold() -> None:
    """22 or 24: a repairer's blog."""
    assert verdict(slide_is_sold(1, FULL, 23 * INCH, None)) is Verdict.FAILS
    assert verdict(slide_is_sold(1, FULL, 22 * INCH, None)) is Verdict.HOLDS
    assert verdict(slide_is_sold(1, FULL, 24 * INCH, None)) is Verdict.HOLDS


def test_a_wooden_runner_is_cut_to_any_length() -> None:
    assert slide_is_sold(1, slide("wooden_runner"), 23 * INCH, None) is None


def test_a_box_much_longer_than_its_slide_hides_its_last_part() -> None:
    """A box of 30 in on slides of 22: 8 in stay in the dark, and 73 % come out."""
    access = 22 / 30

    assert verdict(drawer_in_the_dark(1, 30 * INCH, access)) is Verdict.NOTE
    assert verdict(drawer_access(1, access)) is Verdict.NOTE


def test_a_box_two_inches_longer_than_its_slide_is_reached_to_its_end() -> None:
    assert verdict(drawer_in_the_dark(1, 24 * INCH, 22 / 24)) is Verdict.HOLDS
    assert verdict(drawer_access(1, 22 / 24)) is Verdict.HOLDS


def test_the_middle_of_the_load_behind_the_slides_end_fails() -> None:
    """A box of 48 in on slides of 22: its middle lies 2 in behind them."""
    finding = load_on_slide(1, False, 22 * INCH, 48 * INCH)

    assert verdict(finding) is Verdict.FAILS
    assert finding is not None and finding.margin == pytest.approx(-2 * INCH)


def test_skids_carry_the_back_of_a_long_box() -> None:
    assert load_on_slide(1, True, 22 * INCH, 48 * INCH) is None


@pytest.mark.parametrize(
    ("width", "expected"), [(33, Verdict.HOLDS), (35, Verdict.NOTE), (45, Verdict.FAILS)]
)
def test_a_wide_drawer_that_drags_at_one_side_is_told(width: float, expected: Verdict) -> None:
    """33 in on a 22 in slide: a hardware shop's answer; beyond twice its slide: habit."""
    assert verdict(drawer_racks(1, width * INCH, 22 * INCH)) is expected


def test_a_wide_front_opened_at_its_middle_is_noted() -> None:
    """One pull up to about 24 in: common practice, no source."""
    assert verdict(wide_front_has_pair(1, "centred", 25 * INCH, 24 * INCH)) is Verdict.NOTE
    assert verdict(wide_front_has_pair(1, "centred", 24 * INCH, 24 * INCH)) is Verdict.HOLDS
    assert wide_front_has_pair(1, "pair", 25 * INCH, 24 * INCH) is None


def test_inset_fronts_without_a_gap_stick() -> None:
    """1/16 in at each side: a furniture forum. Solid fronts are followed over the year."""
    assert verdict(inset_clear(1, "inset", False, 1.0)) is Verdict.FAILS
    assert verdict(inset_clear(1, "inset", False, INCH / 16)) is Verdict.HOLDS
    assert inset_clear(1, "overlay", False, 1.0) is None
    assert inset_clear(1, "inset", True, 1.0) is None


def test_fronts_that_nearly_touch_rub() -> None:
    """1/8 in: an article."""
    assert verdict(fronts_clear(2, "overlay", 2.0)) is Verdict.FAILS
    assert verdict(fronts_clear(2, "overlay", INCH / 8)) is Verdict.HOLDS
    assert fronts_clear(1, "overlay", 0.0) is None
    assert fronts_clear(2, "inset", 0.0) is None


def test_a_bottom_that_tears_out_of_its_groove_is_told() -> None:
    """A groove of half the side is the deepest: a router teacher's page."""
    assert verdict(bottom_groove_wall(1, 12.0, 6.5)) is Verdict.FAILS
    assert verdict(bottom_groove_wall(1, 12.0, 6.0)) is Verdict.HOLDS
    assert verdict(bottom_groove_wall(1, 9.0, 4.5)) is Verdict.HOLDS
    assert verdict(bottom_in_groove(1, 3.0, 0.8)) is Verdict.FAILS
    assert verdict(bottom_in_groove(1, 5.0, 0.8)) is Verdict.HOLDS


def test_a_front_that_drags_on_the_rug_is_noted() -> None:
    assert verdict(front_clears_floor(1, 6.0)) is Verdict.NOTE
    assert verdict(front_clears_floor(1, 12.7)) is Verdict.HOLDS


def test_pulls_that_meet_shins_are_noted() -> None:
    """Pulls stand out 25 to 38 mm, a front 19 to 22: common practice, no source."""
    assert verdict(shin_room(1, 22 + 38.0)) is Verdict.HOLDS
    assert verdict(shin_room(1, 22 + 39.0)) is Verdict.NOTE


# ---------------------------------------------------------------- rows without drawers


def all_checks() -> list[Callable[..., Finding | None]]:
    return [each for each in vars(drawers).values() if hasattr(each, "check")]


@pytest.mark.parametrize("asked", all_checks(), ids=lambda each: each.__name__)
def test_a_row_without_drawers_is_asked_nothing(asked: Callable[..., Finding | None]) -> None:
    needs: dict[str, Any] = dict.fromkeys(inspect.signature(asked).parameters, 1.0)
    nothing = {"drawer_count": 0, "front_count": 0, "slide": FULL, "has_skids": False}

    assert asked(**(needs | {k: v for k, v in nothing.items() if k in needs})) is None


def test_front_screws_an_inch_above_the_bottom_are_reached_and_lower_ones_are_told() -> None:
    low = front_screws_are_reached(1, (92.0, 200.0), 87.0)

    assert verdict(front_screws_are_reached(1, (112.0, 200.0), 87.0)) is Verdict.HOLDS
    assert verdict(low) is Verdict.NOTE
    assert low is not None and "5.0 mm above the bottom" in low.reason
    assert front_screws_are_reached(0, (92.0, 200.0), 87.0) is None


def test_a_panel_that_a_pull_would_bend_over_air_is_told_with_its_packer() -> None:
    found = pull_is_backed(1, 3.7, 166.0, 38.0)

    assert verdict(found) is Verdict.NOTE
    assert found is not None and "3.7 mm thick, 166 x 38 mm" in found.reason
    assert pull_is_backed(1, 0.0, 166.0, 38.0) is None
