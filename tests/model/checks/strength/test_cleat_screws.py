"""Cleats and their screws, by hand and on whole beds."""

from __future__ import annotations

import re
from dataclasses import replace

import numpy as np
import pytest

from model.checks.record import Verdict
from model.checks.strength.cleat_screws import CleatLine
from model.mechanics.fasteners.strengths import Design
from model.read_length import parse_length
from tests.model.checks.strength.made import bed, carried, said

LINE = CleatLine(
    bending=1e12, stiffness=1850.0, lateral=Design(300.0), withdrawal=Design(250.0), lever=19.0,
    slats=(150.0,), arm=np.array([15.0]), load=np.array([[600.0]]), time=np.array([1.0]), glued=0.5,
)  # fmt: skip


def test_one_slat_half_way_between_two_screws_by_hand() -> None:
    """300 N down on each; 600 x 15 / 19 = 474 N outwards, 237 N on each."""
    use, across, out = LINE.use((100.0, 200.0))

    assert across[0] == pytest.approx([300, 300])
    assert out[0] == pytest.approx([300 * 15 / 19] * 2)
    drawn = 300 * 15 / 19
    expected = (300**2 / 300 + drawn**2 / 250) / np.hypot(300, drawn)
    assert use[0] == pytest.approx([expected] * 2)


def test_a_slat_that_lifts_draws_no_screw_out_of_the_cleat() -> None:
    _, across, out = replace(LINE, load=np.array([[-600.0]])).use((100.0, 200.0))

    assert across[0] == pytest.approx([300, 300])
    assert out[0] == pytest.approx([0, 0])


def test_screws_bear_what_the_slats_lay_on_the_cleat() -> None:
    """The frame's slat reactions, case by case, are the sum over the screws."""
    of = bed(beam="none")
    rail = next(p.into for p in of.proof.screws if p.rules[0] == "left.cleat")
    joints = carried(of).joints
    rows = joints.pieces[:, 1] == rail
    slats = [of.pieces.made_by(int(k))[0] == "slat_pieces" for k in joints.pieces[:, 0]]
    down = joints.force[:, rows & np.array(slats), 2]

    found = said(of, "left.cleat_screws_hold")

    worst = float(re.search(r"bears (\d+) N down", found.reason).group(1))  # type: ignore[union-attr]
    assert 0.3 * down.max() < worst < 1.1 * down.max()


def test_where_only_glue_holds_it_is_noted_and_the_count_that_would_do_does() -> None:
    """What the sentence promises is built: closer screws hold without glue."""
    poplar = {"beam": "none", "frame_wood": "yellow_poplar"}
    before = said(bed(**poplar), "left.cleat_screws_hold")
    apart = re.search(r"\d+ screws, one every (.+), would do", before.reason)
    assert before.verdict is Verdict.NOTE and apart is not None

    closer = parse_length(apart.group(1), "inch")
    after = said(bed(**poplar, cleat_screw_spacing=closer), "left.cleat_screws_hold")

    assert after.verdict in (Verdict.HOLDS, Verdict.TIGHT)


def test_heavier_wood_holds_its_screws_better() -> None:
    pine, maple = (
        said(bed(frame_wood=wood), "left.cleat_screws_hold").value
        for wood in ("eastern_white_pine", "sugar_maple")
    )

    assert maple < 0.7 * pine
