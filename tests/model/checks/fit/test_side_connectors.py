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


LIFTED = "left.side_lifts_clear"


def test_a_hooked_side_is_lifted_past_the_slides_that_reach_into_its_openings() -> None:
    """Told from the rows of the pieces: the slide's lower edge over the bottom rail's upper one."""
    of = bed(connector="hook_plate_150")
    rail, slide = of.parts["left.bottom_rail"][0], of.parts["left.slide_holders"][0]

    found = said(of, LIFTED)

    assert found.value == pytest.approx(slide.at[2] - (rail.at[2] + rail.width))
    assert found.limit == of["connector_lift"] == 19.0
    assert found.verdict is Verdict.HOLDS


def test_slides_that_hang_low_stop_the_side_from_being_hooked_in() -> None:
    """A box so low that its slide fills it: the rail meets the slides before its hooks are over
    their slots.
    """
    of = bed(
        connector="hook_plate_100", height_from="opening height", wished_opening_height=150.0,
        box_top_room=60.0, slide="side_mount_full_heavy",
    )  # fmt: skip

    assert said(of, LIFTED).verdict is Verdict.FAILS


def test_bolts_ask_for_no_lift() -> None:
    silent(bed(**FRAMED), LIFTED)
