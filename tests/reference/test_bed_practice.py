"""Fit checks against pages and guidance on beds, from both sides of each limit.

Sources: ADA lodging fact sheet (sleeping height); articles and makers' pages on mattress
warranties (slat gaps, centre support); EN 747 (vents of a base); EN 1334 (mattress tolerance);
articles on headboards; a slide maker's help page; a hardware shop's answer (width of drawers); a
woodworkers' forum and articles (reveals); the rest common practice, no source.
"""

from __future__ import annotations

from collections.abc import Callable

import pytest

from model.brief import all_choices, defaults
from model.checks.fit.deck import centre_support, deck_breathes, slat_bearing, slat_gap
from model.checks.fit.drawers import (
    box_clears_back,
    box_runs_free,
    drawer_racks,
    fronts_clear,
    inset_clear,
)
from model.checks.fit.mattress import (
    bedding_room,
    headboard_shows,
    mattress_not_loose,
    mattress_shows,
    recess_holds,
    sleeping_height_easy,
)
from model.checks.record import Finding, Verdict
from model.materials import slide

INCH = 25.4
GOOD = (Verdict.HOLDS, Verdict.TIGHT)
NUDGE = 0.5  # mm: an inch is also said as 25 mm, and either may be the limit

Check = Callable[[float], Finding | None]


def good(finding: Finding | None) -> bool:
    assert finding is not None
    return finding.verdict in GOOD


def rising(height: float) -> Finding | None:
    return sleeping_height_easy(height, "adults")


@pytest.mark.parametrize(
    ("least", "check"),
    [
        pytest.param(17 * INCH, rising, id="ADA: 17 in to rise from"),
        pytest.param(0.5 * INCH, bedding_room, id="forum: half an inch to tuck"),
        pytest.param(1 * INCH, recess_holds, id="common practice: recess of 1 in"),
        pytest.param(0.5 * INCH, slat_bearing, id="common practice: half an inch of bearing"),
        pytest.param(
            14 * INCH, lambda x: headboard_shows("panel", 600 + x, 600), id="articles: 14 in shown"
        ),
        pytest.param(
            6 * INCH, lambda x: mattress_shows(38 + x, 38), id="common practice: 6 in over the rail"
        ),
        pytest.param(
            0.5 * INCH, lambda x: box_clears_back(1, x), id="common practice: half an inch behind"
        ),
        pytest.param(
            INCH / 16,
            lambda x: inset_clear(1, "inset", False, x),
            id="forum: 1/16 in round a front",
        ),
        pytest.param(
            INCH / 8, lambda x: fronts_clear(2, "overlay", x), id="article: 1/8 in between fronts"
        ),
    ],
)
def test_a_value_at_its_least_is_good_and_one_below_is_told(least: float, check: Check) -> None:
    assert good(check(least))
    assert not good(check(least - NUDGE))


@pytest.mark.parametrize(
    ("most", "check"),
    [
        pytest.param(23 * INCH, rising, id="ADA: 23 in to rise from"),
        pytest.param(3 * INCH, recess_holds, id="common practice: recess of 3 in"),
        pytest.param(
            3 * INCH, lambda x: slat_gap("slats", x, "foam"), id="articles: 3 in under foam"
        ),
        pytest.param(
            3 * INCH, lambda x: slat_gap("slats", x, "hybrid"), id="articles: 3 in under hybrids"
        ),
        pytest.param(
            5 * INCH, lambda x: slat_gap("slats", x, "spring"), id="maker: 5 in of rigid slats"
        ),
    ],
)
def test_a_value_at_its_most_is_good_and_one_above_is_told(most: float, check: Check) -> None:
    assert good(check(most))
    assert not good(check(most + NUDGE))


def test_an_inch_of_room_was_refused_and_three_quarters_were_not() -> None:
    """Furniture forum, 2013: 1 in at each side is usual, and a client refused it as too loose."""
    assert not good(mattress_not_loose(INCH))
    assert good(mattress_not_loose(0.75 * INCH))


def test_a_queen_wants_a_centre_support() -> None:
    """A mattress maker's warranty: queen and king."""
    assert not good(centre_support(60 * INCH, False))
    assert not good(centre_support(76 * INCH, False))


def test_eight_by_twenty_four_millimetre_holes_are_a_vented_base() -> None:
    """EN 747: 35 cm2; 8 holes of 24 mm are 36.2 cm2. One hole fewer is not enough."""
    eight = deck_breathes("panels", 24.0, 1, 8 * 5 * 24.0, 1)
    seven = deck_breathes("panels", 24.0, 1, 7 * 5 * 24.0, 1)

    assert good(eight)
    assert not good(seven)


@pytest.mark.parametrize(("play", "runs"), [(0.0, False), (0.2, True), (0.5, True), (0.6, False)])
def test_a_slide_maker_wants_two_to_five_tenths_of_play(play: float, runs: bool) -> None:
    """12.9 to 13.2 mm beside a slide of 12.7: an opening less one inch leaves none."""
    assert good(box_runs_free(1, slide("side_mount_full"), play, 0.0)) is runs


def test_a_drawer_is_at_most_one_and_a_half_times_as_wide_as_its_slide() -> None:
    """A hardware shop's answer: 33 in on a 22 in slide. A storage bed on sale had 35.5 on 19.5."""
    assert good(drawer_racks(1, 33 * INCH, 22 * INCH))
    sold = drawer_racks(1, 35.5 * INCH, 19.5 * INCH)
    assert sold is not None and sold.verdict is Verdict.NOTE
    wider = drawer_racks(1, 40 * INCH, 19.5 * INCH)
    assert wider is not None and wider.verdict is Verdict.FAILS


def test_mattress_thicknesses_on_sale_can_all_be_chosen() -> None:
    """Articles: 6 to 18 in sold."""
    thickness = all_choices()["mattress_thickness"]

    for inches in (6, 10, 12, 18):
        assert thickness.checked(inches * INCH) == inches * INCH


def test_the_bed_that_one_starts_from_tucks_its_sheets_and_keeps_its_mattress() -> None:
    """1/2 to 1 in at each side, a recess of 1 to 3 in: forum, article and common practice."""
    assert 0.5 * INCH <= defaults()["side_fit"] <= 1.0 * INCH
    assert 1.0 * INCH <= defaults()["recess"] <= 3.0 * INCH


def test_the_slats_that_one_starts_from_suit_foam() -> None:
    """Articles: memory foam wants 2 to 2 1/2 in; slats of 2 1/2 to 3 1/2 in, 3/4 in thick."""
    assert defaults()["slat_gap_most"] <= 2.5 * INCH + 0.5
    assert 2.5 * INCH <= defaults()["slat_width"] <= 3.5 * INCH + 0.1
    assert defaults()["slat_stock"] >= 0.75 * INCH
