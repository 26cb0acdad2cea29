"""Pocket screws at the corners of face frames."""

from __future__ import annotations

import re

import numpy as np
import pytest

from model.checks.record import Verdict
from model.checks.strength.stile_ends import Asked, StileEnd
from model.mechanics.fasteners.strengths import Design
from tests.model.checks.strength.made import bed, said, silent

END = StileEnd((0, 1), (12.0, 38.0), 50.0, Design(200.0), Design(250.0))


def on(end: StileEnd, pull: float, across: float, bend: float) -> tuple[float, float]:
    asked = Asked(*(np.array([[each]]) for each in (pull, across, bend)))
    figures = (np.array([each]) for each in (float(len(end.spots)), end.width, end.share))
    side, out = asked.on_screws(*figures)
    return float(side[0, 0]), float(out[0, 0])


def test_a_bent_corner_opens_about_its_edge() -> None:
    """10 000 N mm about an edge: 38 / (12^2 + 38^2) of it on the far screw."""
    across, out = on(END, 0.0, 100.0, 10_000.0)

    assert across == 50
    assert out == pytest.approx(10_000 * 38 / (12**2 + 38**2))


def test_what_presses_the_corner_together_keeps_it_shut() -> None:
    """600 N down the stile, 25 mm from the edge, outdo 10 000 N mm."""
    assert on(END, -600.0, 0.0, 10_000.0)[1] == 0


def test_a_second_screw_helps() -> None:
    one = END._replace(spots=(25.0,))

    assert on(END, 300.0, 0.0, 5000.0)[1] < on(one, 300.0, 0.0, 5000.0)[1]


def test_one_screw_at_the_end_of_a_narrow_stile_is_too_few() -> None:
    found = said(bed(), "left.pocket_screws_hold")

    assert found.verdict is Verdict.FAILS
    assert "The one pocket screw" in found.reason
    assert re.search(r"\d at each end would do", found.reason)


def test_as_the_bed_is_moved_it_is_advice() -> None:
    found = said(bed(), "left.pocket_screws_hold.moved")

    assert found.verdict is Verdict.NOTE
    assert "lift" in found.reason


def test_dowelled_frames_are_not_asked_for_screws() -> None:
    assert silent(bed(frame_joint="dowel"), "left.pocket_screws_hold")


def test_a_plain_side_has_no_stiles() -> None:
    assert silent(bed(left__side="plain"), "left.pocket_screws_hold")
