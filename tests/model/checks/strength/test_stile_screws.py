"""Pocket screws at the corners of face frames."""

from __future__ import annotations

import numpy as np
import pytest

from model.checks.record import Verdict
from model.checks.strength.member_ends import Asked
from model.checks.strength.screwed_ends import ScrewedEnd, on_screws
from model.mechanics.fasteners.strengths import Design
from tests.model.checks.strength.made import bed, said, silent

SCREWED = {"frame_joint": "pocket screw", "connector": "hook_plate_100"}
END = ScrewedEnd((0, 1), (12.0, 38.0), 50.0, 25.0, Design(200.0), Design(250.0))


def on(end: ScrewedEnd, pull: float, across: float, bend: float) -> tuple[float, float]:
    asked = Asked(*(np.array([[each]]) for each in (pull, across, 0.0, bend, 0.0)))
    side, out = on_screws([end], asked)
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
    found = said(bed(**SCREWED, end_stile_least=35.0), "left.pocket_screws_hold")

    assert found.verdict is Verdict.FAILS
    assert "The one pocket screw" in found.reason
    assert "two pockets side by side want 40.0 mm" in found.reason


def test_the_proof_and_the_screws_bear_two_pockets_in_a_plated_stile() -> None:
    of = bed(**SCREWED)
    stile = next(p for p in of.parts["left.stiles"] if p.name == "end stile")
    low = min(h.at[1] - h.diameter / 2 for h in stile.holes if h.kind == "pocket hole")
    recess = max(c.high[1] for c in stile.cuts if c.kind == "plate recess" and c.low[1] == 0)

    assert 50 < stile.width < 60
    assert len([s for s in stile.screws if s.kind == "pocket screw"]) == 4
    assert low > recess
    assert all(f.verdict is not Verdict.FAILS for f in of.findings if ".screws_" in f.id)


def test_as_the_bed_is_moved_it_is_advice() -> None:
    found = said(bed(**SCREWED), "left.pocket_screws_hold.moved")

    assert found.verdict is Verdict.NOTE
    assert "lift" in found.reason


def test_dowelled_frames_are_not_asked_for_screws() -> None:
    assert silent(bed(frame_joint="dowel"), "left.pocket_screws_hold")


def test_a_plain_side_has_no_stiles() -> None:
    assert silent(bed(**SCREWED, left__side="plain"), "left.pocket_screws_hold")
