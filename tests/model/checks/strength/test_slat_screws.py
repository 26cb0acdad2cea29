"""Slats that lift at one end beside a centre beam."""

from __future__ import annotations

import numpy as np
import pytest

from model.checks.record import Verdict
from tests.model.checks.strength.made import bed, carried, said, silent


def test_the_screw_holds_the_end_that_lifts_most() -> None:
    of = bed()
    rails = {k for k in range(len(of.pieces)) if of.pieces.made_by(k) == ("left.top_rail",)}
    joints = carried(of).joints
    mine = np.array(
        [
            of.pieces.made_by(int(a))[0] == "slat_pieces" and int(b) in rails
            for a, b in joints.pieces.tolist()
        ]
    )

    found = said(of, "left.slat_screws_hold")

    assert found.value == pytest.approx(max(0.0, -float(joints.force[:, mine, 2].min())))
    assert found.value > 10 and found.verdict is Verdict.HOLDS


def test_without_a_beam_nothing_lifts() -> None:
    found = said(bed(beam="none"), "left.slat_screws_hold")

    assert found.value == pytest.approx(0, abs=1)


def test_a_strap_is_not_asked_for_screws() -> None:
    assert silent(bed(slat_fixing="strap"), "left.slat_screws_hold")
