"""Brackets and screws under the ends of bearers."""

from __future__ import annotations

import re

import pytest

from model.checks.record import Verdict
from model.mechanics.fasteners.together import bracket_screws
from tests.model.checks.strength.made import bed, carried, said, silent


def bearer_ends(of: object, least: bool = False) -> float:
    """The hardest push of a bearer's end on a stile or rail, or the hardest lift, N."""
    pieces, joints = of.pieces, carried(of).joints  # type: ignore[attr-defined, arg-type]
    rows = [
        j for j, (a, b) in enumerate(joints.pieces.tolist())
        if pieces.made_by(a) == ("left.bearers",) and b >= 0
        and not pieces.made_by(b)[0].endswith(("bearer_legs", "packer_pieces"))
    ]  # fmt: skip
    force = joints.force[:, rows, 2]
    return float(-force.min() if least else force.max())


def test_the_upper_screw_of_a_bracket_by_hand() -> None:
    """Leaf of 25.4 mm, load on its middle, screws at 4.3 and 17.4 mm above its lower edge."""
    of = bed()
    found = said(of, "left.brackets_hold")
    load = float(re.search(r"down with (\d+) N", found.reason).group(1))  # type: ignore[union-attr]

    upper = bracket_screws(load, 12.7, (25.4 - 8.0, 25.4 - 21.08))[0]

    across = float(re.search(r"(\d+) N across", found.reason).group(1))  # type: ignore[union-attr]
    assert across == pytest.approx(upper.lateral, abs=1)
    outward = float(re.search(r"(\d+) N outwards", found.reason).group(1))  # type: ignore[union-attr]
    assert outward == pytest.approx(upper.withdrawal, abs=2)


def test_no_bearer_pushes_harder_than_is_said() -> None:
    of = bed(slide="wooden_runner")
    found = said(of, "left.brackets_hold")
    load = float(re.search(r"down with (\d+) N", found.reason).group(1))  # type: ignore[union-attr]

    assert load <= bearer_ends(of) + 1


def test_a_bearer_that_lifts_hangs_on_its_screws() -> None:
    of = bed(frame_wood="yellow_poplar", frame_joint="pocket screw", slat_stock=19.05)

    found = said(of, "left.brackets_hold.lifted")

    assert found.value <= bearer_ends(of, least=True) / 2 + 1
    assert found.verdict is Verdict.HOLDS


def test_without_brackets_the_screws_through_the_bearers_are_asked() -> None:
    of = bed(bearer_fixing="screws")

    assert silent(of, "left.brackets_hold")
    found = said(of, "left.bearer_screws_hold")
    assert found.value == pytest.approx(
        max(bearer_ends(of), bearer_ends(of, least=True)) / 2, rel=0.5
    )


def test_with_brackets_there_are_none() -> None:
    assert silent(bed(), "left.bearer_screws_hold")
