"""Screws too near to an edge, an end or each other."""

from __future__ import annotations

import numpy as np
import pytest

from model.checks.record import Verdict
from model.checks.strength.screw_places import _axes
from tests.model.checks.strength.made import bed, said


def test_a_screw_in_the_middle_of_a_cleat_of_an_inch_and_a_half_stands_clear() -> None:
    """No. 8: 2.5 x 4.17 = 10.4 mm to an edge. Under panels they stand evenly, far apart."""
    found = said(bed(deck="panels"), "screws_stand_clear.cleat")

    assert (found.value, found.limit) == pytest.approx((19.05, 2.5 * 4.17))
    assert found.verdict is Verdict.HOLDS


def test_a_thick_screw_in_a_narrow_cleat_splits_it() -> None:
    """A published mishap: a side rail split along the cleat's last screws. 20 mm, No. 10."""
    found = said(bed(cleat_width=20.0, cleat_screw="10"), "screws_stand_clear.cleat")

    assert found.verdict is Verdict.FAILS
    assert "from the edge of the cleat" in found.reason


def test_slats_are_screwed_near_their_ends_and_that_is_noted() -> None:
    of = bed()
    found = said(of, "screws_stand_clear.slat")

    assert found.verdict is Verdict.NOTE
    assert found.value == pytest.approx(of["slat_screw_in"])
    assert "from the end of the slat" in found.reason


def test_holes_of_a_bought_plate_are_not_the_makers_fault() -> None:
    found = said(bed(), "screws_stand_clear.hook_plate_rail_half")

    assert found.verdict is Verdict.NOTE
    assert "bought part" in found.reason


def test_screws_that_slant_through_three_quarter_stock_stand_clear() -> None:
    """No. 6 in the middle of 19.05 mm: 2.5 x 3.51 = 8.8 mm to either face; one from each edge."""
    found = said(bed(bearer_fixing="screws"), "screws_stand_clear.slide_bearer")

    assert found.verdict is not Verdict.FAILS
    assert found.limit in (pytest.approx(2.5 * 3.51), pytest.approx(5 * 3.51))


def test_a_slanting_screw_is_not_asked_for_the_faces_that_it_passes() -> None:
    """It comes in by an edge of its bearer and leaves through the end; it enters a stile by its
    face, and stands some way from the stile's end.
    """
    of = bed(bearer_fixing="screws")
    points = [
        p for p in of.proof.screws if p.rules[0] == "left.bearers" and "left.stiles" in p.rules
    ]
    head, into = _axes(of.pieces, points)
    bearer, stile = (
        np.array([of.pieces.parts[of.pieces.part[k]].size for k in axes.piece])
        for axes in (head, into)
    )

    assert len(points) == 2
    assert head.passes(bearer).tolist() == [[True, True, False]] * 2
    assert into.passes(stile).tolist() == [[False, False, True]] * 2


def test_sheets_do_not_split() -> None:
    """The inner members of the slides are screwed to plywood: nothing is asked of these."""
    assert not [f for f in bed().findings if f.id == "screws_stand_clear.slide_inner_member"]
