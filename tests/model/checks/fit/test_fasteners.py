"""Fasteners keep clear of each other, or the maker is told which do not."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

import resources
from model.bed import Bed, Design, solve
from model.checks.fit.fasteners import fasteners_stand_clear, nuts_are_reached
from model.checks.record import Finding, Verdict
from model.designs import read
from model.part import Part
from model.parts.pieces import Pieces

DEMOS = Path(resources.__file__).parent / "demos"
SHANK = 4.17  # No. 8


@pytest.fixture(scope="module")
def guest_room() -> Bed:
    return solve(read(DEMOS / "guest_room_double.bedwright"))


def found(pieces: Pieces) -> dict[str, Finding]:
    return {each.id: each for each in fasteners_stand_clear(pieces)}


def changed(bed: Bed, rule: str, **changes: Any) -> Pieces:
    """The bed's pieces with the first part of a rule changed."""
    first, *others = bed.parts[rule]
    return Pieces.of({**bed.parts, rule: (replace(first, **changes), *others)})


def moved(part: Part, by: float) -> dict[str, Any]:
    """Its screws, moved along it."""
    return {"screws": tuple(s._replace(at=(s.at[0] + by, *s.at[1:])) for s in part.screws)}


def test_cleat_screws_of_a_demo_stand_one_thickness_from_those_of_its_slats() -> None:
    """The loft's foot slat is 89 mm wide and begins 2.25 mm from the post: its screw stands at
    46.75, the cleat's at 46.75 + 2 * 4.17.
    """
    loft = solve(read(DEMOS / "loft_single.bedwright"))

    cleat = found(loft.pieces)["cleat_screw_and_slat_screw"]

    assert cleat.value == pytest.approx(55.09 - 46.75 - SHANK)
    assert cleat.verdict is Verdict.HOLDS


def test_screws_that_stand_farther_off_are_not_told(guest_room: Bed) -> None:
    """The foot slat begins 6.5 mm from the post: its screw stands at 51, the cleat's at 40."""
    assert "cleat_screw_and_slat_screw" not in found(guest_room.pieces)


def test_a_cleat_screw_under_a_slats_screw_fails(guest_room: Bed) -> None:
    """A slat and a gap are 148 mm: moved half of it, those in the gaps stand exactly under the
    slats, and the shanks share all.
    """
    (cleat,) = guest_room.parts["left.cleat"]

    said = found(changed(guest_room, "left.cleat", **moved(cleat, 74)))
    worst = said["cleat_screw_and_slat_screw"]

    assert worst.value == pytest.approx(-SHANK, abs=1e-6)
    assert worst.verdict is Verdict.FAILS
    names = {guest_room.pieces.parts[guest_room.pieces.part[k]].name for k in worst.pieces}
    assert names == {"cleat", "slat"}


def test_a_little_less_wood_than_is_asked_is_said(guest_room: Bed) -> None:
    """The first screw moved to 51 - 2 * 4.17 + 1 mm, towards the slat's: 3.17 mm of 4.17 stay."""
    (cleat,) = guest_room.parts["left.cleat"]

    said = found(changed(guest_room, "left.cleat", **moved(cleat, 51 - 2 * SHANK + 1 - 40)))
    worst = said["cleat_screw_and_slat_screw"]

    assert worst.value == pytest.approx(SHANK - 1)
    assert worst.verdict is Verdict.NOTE


def test_brackets_of_the_demo_keep_clear_of_bolt_and_nut(guest_room: Bed) -> None:
    """The bearer's middle stands 41.475 mm from the rail's end and the lower screw of its bracket
    at 38.6 + 25.4 * 0.17 = 42.918. The bolt lies 1.5 screws and half a nut lower, its hole is 7 mm
    wide and runs past the screw: 42.918 - 31.663 - 3.5 - 2.085. The nut's middle stands at 35.
    """
    said = found(guest_room.pieces)
    bolt = said["angle_bracket_screw_and_bottom_rail_bolt_hole"]
    nut = said["angle_bracket_screw_and_bottom_rail_nut_hole"]

    low = 1.5 * SHANK + 5
    assert bolt.value == pytest.approx(low - 3.5 - SHANK / 2)
    assert nut.value == pytest.approx((low**2 + 6.475**2) ** 0.5 - 5 - SHANK / 2)
    assert {bolt.verdict, nut.verdict} == {Verdict.HOLDS}


def test_nuts_of_the_demo_lie_below_its_brackets(guest_room: Bed) -> None:
    reached = nuts_are_reached(guest_room.pieces)

    assert reached is not None
    assert reached.value == pytest.approx(38.6 - (42.918 - 1.5 * SHANK - 5) - 5)


def test_a_bracket_over_the_hole_of_a_nut_fails(guest_room: Bed) -> None:
    (bracket,) = guest_room.parts["left.near_brackets"]
    lower = (*bracket.at[:2], bracket.at[2] - 10)

    reached = nuts_are_reached(changed(guest_room, "left.near_brackets", at=lower))

    assert reached is not None
    assert reached.verdict is Verdict.FAILS


def test_screws_through_glued_dowels_are_said_and_do_not_fail() -> None:
    """A dowel is wood: what is driven through it once the glue has set holds."""
    said = found(solve(Design().with_choices({"frame_joint": "dowel", "left.drawers": 3})).pieces)

    dowels = [each for name, each in said.items() if "dowel" in name]
    assert dowels
    assert {each.verdict for each in dowels} <= {Verdict.NOTE, Verdict.HOLDS}
    assert any("Let the glue" in each.reason for each in dowels)


@pytest.mark.parametrize("demo", sorted(each.stem for each in DEMOS.glob("*.bedwright")))
def test_no_fasteners_of_a_demo_meet(demo: str) -> None:
    bed = solve(read(DEMOS / f"{demo}.bedwright"))

    said = [*fasteners_stand_clear(bed.pieces), nuts_are_reached(bed.pieces)]

    assert [each for each in said if each and each.verdict is Verdict.FAILS] == []
