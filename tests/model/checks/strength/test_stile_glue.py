"""Glued face frames."""

from __future__ import annotations

import re

import pytest

from model.checks.record import Verdict
from tests.model.checks.strength.made import bed, said, silent

CHECK = "left.stile_glue_holds"


def test_stub_tenons_are_too_short_for_who_sits_on_the_edge() -> None:
    found = said(bed(frame_joint="stub tenon"), CHECK)

    assert found.verdict is Verdict.FAILS
    assert "Its glue gives first." in found.reason
    assert "from memory" in found.source
    assert "out of its plane" not in found.reason  # what tilts a stile is left to others


def test_of_hard_wood_longer_tenons_would_do_as_told() -> None:
    choices = {"frame_joint": "mortise and tenon", "frame_wood": "sugar_maple", "shown_unit": "mm"}
    short = said(bed(**choices, tenon_length=12.0), CHECK)
    told = re.search(r"Tenons (\d+) mm long would do", short.reason)
    assert short.verdict is Verdict.FAILS and told, short.reason

    long = said(bed(**choices, tenon_length=float(told[1]) + 2), CHECK)

    assert long.verdict is not Verdict.FAILS


def test_where_no_tenon_is_long_enough_it_says_so() -> None:
    found = said(bed(frame_joint="stub tenon", frame_wood="eastern_white_pine"), CHECK)

    assert "Longer tenons alone would not do" in found.reason


def test_dowels_are_told_one_by_one() -> None:
    found = said(bed(frame_joint="dowel"), CHECK)

    assert re.search(r"Each of 2 dowels between .* bears \d+ N sideways and \d+ N", found.reason)


@pytest.mark.parametrize("joint", ["dowel", "stub tenon", "mortise and tenon"])
def test_as_the_bed_is_moved_it_is_advice(joint: str) -> None:
    found = said(bed(frame_joint=joint), f"{CHECK}.moved")

    assert found.verdict in (Verdict.NOTE, Verdict.HOLDS)
    assert found.title == "Glue of the stiles as the bed is moved"
    assert ("lift." in found.reason) is (found.margin < 0)


def test_screwed_frames_are_not_asked_for_glue() -> None:
    assert silent(bed(frame_joint="pocket screw"), CHECK)


def test_a_plain_side_has_no_stiles() -> None:
    assert silent(bed(frame_joint="dowel", left__side="plain"), CHECK)


def test_thicker_stock_helps() -> None:
    thin, thick = (said(bed(frame_joint="dowel", frame_stock=s), CHECK) for s in (25.4, 38.1))

    assert thick.value < thin.value
