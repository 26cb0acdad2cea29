"""Published gaps, heights and weights of beds, from both sides of each.

Sources: FDA, Hospital Bed System Dimensional and Assessment Guidance, 2006 (head 120 mm, neck
60 mm); 16 CFR 1213 (bunk beds: 30 in, wedge of 3 1/2 in, ball of 9 in); 16 CFR 1219 by a
paediatrics journal's table (corner posts 1/16 in); EN 747-1 by a German text extract and assembly
guides (600 mm; 7 to 12 mm; wall gap of 75 or 230 mm); EN 14749 by a test house's note (8, 25 mm);
EN 581-1 (7 to 18 mm); AS/NZS 4220 by the regulator's page (95 to 230, 30 to 50, 8, 700, 800 mm);
NIOSH lifting equation (51 lb); IRC table R301.5 (30 lb/ft2; from memory).
"""

from __future__ import annotations

import pytest

from model.brief.loads import SleepersAre
from model.checks.record import Verdict
from model.checks.safety.banded import banded
from model.checks.safety.height import not_a_high_bed
from model.checks.safety.weights import FLOOR_KPA, ONE, TWO
from model.materials.high_bed import high_beds
from model.materials.probe import ProbeAt, probes

INCH = 25.4
POUND = 0.45359237
NUDGE = 0.2  # mm


@pytest.mark.parametrize(
    ("at", "low", "high", "who"),
    [
        pytest.param("mattress", 30, 50, "a child", id="AS/NZS 4220: limb"),
        pytest.param("mattress", 95, 230, "a child", id="AS/NZS 4220: head"),
        pytest.param("opening", 30, 50, "a child", id="AS/NZS 4220: limb in an end"),
        pytest.param("opening", 89, 9 * INCH, "a child", id="16 CFR 1213: wedge and ball"),
        pytest.param("opening", 7, 12, "a child", id="EN 747-1: finger in an end"),
        pytest.param("slats", 95, 230, "a child", id="AS/NZS 4220: head in the deck"),
        pytest.param("hole", 7, 12, "a child", id="EN 747-1: finger"),
        pytest.param("wall", 75, 230, "a child", id="EN 747: wall"),
        pytest.param("wall", 75, 230, "a frail adult", id="EN 747: wall, frail"),
        pytest.param("moving", 7, 25, "a child", id="EN 581-1 and EN 14749: moving"),
        pytest.param("mattress", 2.375 * INCH, None, "a frail adult", id="FDA 2006: neck"),
        pytest.param("opening", 2.375 * INCH, None, "a frail adult", id="FDA 2006: neck in an end"),
        pytest.param("proud", INCH / 16, None, "a child", id="16 CFR 1219: corner post"),
        pytest.param("overhang", 8, None, "a child", id="AS/NZS 4220: protrusion"),
    ],
)
def test_a_forbidden_gap_fails_and_its_ends_do_not(
    at: ProbeAt, low: float, high: float | None, who: SleepersAre
) -> None:
    edge = 1.6  # mm: figures in inches are rounded to the millimetre, or to half of one

    assert banded(low - NUDGE, at, who).verdict is not Verdict.FAILS
    assert banded(low + NUDGE, at, who).verdict is Verdict.FAILS
    if high is not None:
        assert banded(high - edge, at, who).verdict is Verdict.FAILS
        assert banded(high + edge, at, who).verdict is not Verdict.FAILS


def test_a_head_is_named_before_a_neck() -> None:
    """FDA 2006: 120 mm and 60 mm."""
    assert "a neck" in banded(119, "mattress", "a frail adult").reason
    assert "an adult's head" in banded(121, "mattress", "a frail adult").reason


def test_fda_inches_are_the_millimetres_of_the_table() -> None:
    """4 3/4 in and 2 3/8 in."""
    rows = probes()

    assert rows["fda_head"].low_mm == pytest.approx(4.75 * INCH, abs=1)
    assert rows["fda_neck"].low_mm == pytest.approx(60, abs=0.5)
    assert rows["us_wedge"].low_mm == pytest.approx(3.5 * INCH, abs=0.2)
    assert rows["us_wedge"].high_mm == pytest.approx(9 * INCH, abs=1.5)


def test_a_deck_whose_underside_is_over_thirty_inches_is_a_bunk_bed_by_law() -> None:
    """16 CFR 1213.2, single beds and adults' beds included."""
    over = not_a_high_bed(30 * INCH + 1, 790.0, "adults")
    under = not_a_high_bed(30 * INCH - 1, 790.0, "adults")

    assert over.verdict is Verdict.FAILS
    assert "16 CFR 1213" in over.source
    assert under.verdict is not Verdict.FAILS


def test_heights_of_the_other_standards() -> None:
    """EN 747-1: 600 mm; AS/NZS 4220:2010: 700 mm; Australian regulation: 800 mm."""
    heights = {key: row.from_mm for key, row in high_beds().items()}

    assert (heights["en_high"], heights["anz_standard"], heights["anz_law"]) == (600, 700, 800)


def test_one_person_lifts_51_pounds() -> None:
    """NIOSH's load constant; two people about twice as much is common practice."""
    assert pytest.approx(51 * POUND, abs=0.2) == ONE
    assert TWO == 2 * ONE


def test_sleeping_rooms_bear_30_pounds_a_square_foot() -> None:
    assert pytest.approx(30 * POUND * 9.80665 / 0.3048**2 / 1000, abs=0.01) == FLOOR_KPA
