"""Where the holes of bolts and nuts lie in a side's rails."""

from __future__ import annotations

import re

import pytest

from model.checks.fit.side_connectors import nut_has_wood
from model.checks.record import Verdict
from model.part import Hole
from tests.model.checks.strength.made import bed, said, silent

CHECK = "left.nut_has_wood"
PLAIN = {"connector": "cross_bolt_m6", "left__side": "plain", "right__side": "plain"}
FRAMED = {"connector": "cross_bolt_m6"}


def holes(of: object, kind: str) -> list[tuple[float, Hole]]:
    """Holes of a kind in the left side's rails, with the width of the rail."""
    names = ("left.side_rail", "left.top_rail", "left.bottom_rail")
    return [
        (part.width, hole)
        for name in names for part in of.parts.get(name, ())  # type: ignore[attr-defined]
        for hole in part.holes if hole.kind == kind
    ]  # fmt: skip


@pytest.mark.parametrize("choices", [PLAIN, FRAMED])
def test_the_distances_told_are_those_of_the_holes_as_drawn(choices: dict[str, str]) -> None:
    of = bed(**choices)
    found = said(of, CHECK)
    figures = [float(each) for each in re.findall(r"([\d.]+) mm", found.reason)]

    nuts, bolts = holes(of, "nut hole"), holes(of, "bolt hole")
    edge = min(min(hole.at[1], width - hole.at[1]) for width, hole in nuts)
    from_end = min(hole.at[0] for _, hole in nuts)
    nut, bolt = nuts[0][1], bolts[0][1]

    assert figures == pytest.approx(
        [nut.diameter, from_end, edge, bolt.diameter, bolt.depth], abs=0.06
    )
    assert found.value == pytest.approx(edge - nut.diameter / 2)


def test_bolt_and_nut_meet_in_the_middle_of_the_thickness() -> None:
    of = bed(**FRAMED)

    for (_, nut), (_, bolt) in zip(holes(of, "nut hole"), holes(of, "bolt hole"), strict=True):
        assert nut.at[1] == pytest.approx(bolt.at[1])
        assert bolt.depth > abs(nut.at[0] - bolt.at[0]) + nut.diameter / 2
        assert bolt.at[2] == pytest.approx(of["frame_thickness"] / 2)


@pytest.mark.parametrize(("up", "verdict"), [(11.0, Verdict.HOLDS), (10.9, Verdict.FAILS)])
def test_a_quarter_inch_of_wood_stays_beside_a_nut(up: float, verdict: Verdict) -> None:
    """Common practice, no source: 6 mm beside a hole of 10 mm."""
    knock = bed(**PLAIN)["knock_down"]

    found = nut_has_wood(knock, False, 0.0, 0.0, 0.0, (up, 100.0))

    assert found is not None and found.verdict is verdict


def test_plates_have_no_nuts() -> None:
    assert silent(bed(), CHECK)
