"""What does not go through the house is told before it is glued."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from model.bed import Bed, Design, solve
from model.checks.record import Finding, Verdict
from model.designs import read
from model.mechanics.obstacles import Corner, Door, Flight, Landing, would_do
from tests.model.mechanics.test_carry import one

DEMOS = Path(__file__).resolve().parents[4] / "resources" / "demos"
KING = {"mattress_width": 1930.4, "stairs": "straight"}
NARROW = {"stairs": "with a turn", "stair_width": 600.0, "landing_depth": 600.0}
LOW = {**NARROW, "stair_headroom": 1700.0}


def bed(**choices: Any) -> Bed:
    named = {name.replace("__", "."): value for name, value in choices.items()}
    return solve(Design().with_choices(named))


def said(of: Bed) -> dict[str, Finding]:
    start = "carry_through."
    return {f.id.removeprefix(start): f for f in of.findings if f.id.startswith(start)}


@pytest.mark.parametrize("demo", sorted(DEMOS.glob("*.bedwright")), ids=lambda path: path.stem)
def test_a_demo_goes_through_the_door_and_corner_of_the_code(demo: Path) -> None:
    found = said(solve(read(demo)))

    assert list(found) == ["rest"]
    assert found["rest"].verdict is Verdict.HOLDS
    assert found["rest"].title == "Everything that is carried goes through"


def test_a_king_that_the_stairs_do_not_take_goes_up_in_two() -> None:
    """The stairs were too low even for a queen; two twin mattresses were bought: a blog, 2018.

    2032 mm of headroom on steps of 7 3/4 by 10 in leave 1606 mm square to the slope.
    """
    found = said(bed(**KING, mattress_kind="spring"))["mattress"]

    assert (found.verdict, found.value) == (Verdict.FAILS, pytest.approx(1930.4))
    assert found.limit == pytest.approx(1606, abs=0.5)
    assert found.title == "The mattress up the stairs"
    assert "Two mattresses of half the width would pass." in found.reason
    split = {**KING, "mattress_width": 965.2, "mattress_pieces": 2}
    assert "mattress" not in said(bed(**split, mattress_kind="spring"))


def test_two_mattresses_are_offered_only_where_they_pass() -> None:
    found = said(bed(**LOW, mattress_kind="spring"))["mattress"]

    assert found.verdict is Verdict.FAILS
    assert "Two mattresses" not in found.reason


def test_foam_that_would_have_to_bend_is_a_note() -> None:
    found = said(bed(**KING, mattress_kind="foam"))["mattress"]

    assert found.verdict is Verdict.NOTE
    assert "It bends" in found.reason


def test_a_face_frame_glued_in_the_shop_that_the_landing_does_not_take_fails() -> None:
    """Movers gave up after 40 minutes, and a box spring was sawn: several blogs."""
    built = bed(**LOW)
    found = said(built)["left_side"]

    assert (found.verdict, found.title) == (Verdict.FAILS, "The left side round the landing")
    assert built.pieces.labels[found.pieces[0]].endswith("left side")
    assert "With its joints (dowel) left unglued until it is inside" in found.reason


def test_what_would_do_does() -> None:
    """The landing that the finding asks for takes the side, and one 2 mm shallower does not."""
    told = said(bed(**LOW))["left_side"].reason
    depth = float(told.partition("a landing depth of ")[2].partition(" mm")[0])

    deep = said(bed(**{**LOW, "landing_depth": depth}))
    shallow = said(bed(**{**LOW, "landing_depth": depth - 2}))

    assert deep["left_side"].verdict is Verdict.TIGHT
    assert shallow["left_side"].verdict is Verdict.FAILS


def test_legs_that_are_only_screwed_come_off() -> None:
    found = said(bed(**LOW, beam="legs"))["centre_beam"]

    assert "With its joints (screwed) taken apart its pieces would pass." in found.reason


def test_a_piece_that_scrapes_past_is_tight() -> None:
    """2057 mm of side under a ceiling of 1850 mm, in corridors of 600: 11 mm to spare."""
    found = said(bed(corridor_before=600.0, corridor_after=600.0, ceiling=1850.0))["left_side"]

    assert found.verdict is Verdict.TIGHT
    assert "11 mm to spare" in found.reason


def test_alike_pieces_are_told_once_and_different_ones_each() -> None:
    built = bed(**LOW)
    named = [each.key for each in built.carried]

    assert len(named) == len(set(named))


def test_without_corner_and_stairs_only_the_door_counts() -> None:
    built = bed(has_corner=False, corridor_after=450.0)

    assert [built[name] for name in ("corner", "flight", "landing")] == [None] * 3
    assert "corner" not in said(built)["rest"].reason
    assert "no stairs were entered" in said(built)["rest"].reason


def test_stairs_without_a_turn_have_no_landing() -> None:
    built = bed(stairs="straight", landing_depth=450.0)

    assert built["flight"] == Flight(width=800.1, headroom=2032.0, riser=196.85, tread=254.0)
    assert built["landing"] is None


# ---------------------------------------------------------------- what would do


@pytest.mark.parametrize(
    ("obstacle", "sides"),
    [
        (Door(width=700.0, height=1900.0), (2300, 2150, 500)),
        (Corner(before=700.0, after=700.0, ceiling=1900.0), (2300, 1700, 300)),
        (Flight(width=700.0, headroom=1900.0, riser=197.0, tread=254.0), (2300, 2150, 500)),
        (Landing(width=700.0, depth=700.0, headroom=1900.0), (2300, 1700, 300)),
    ],
)
def test_every_way_out_lets_the_thing_pass_and_a_millimetre_less_does_not(
    obstacle: Door | Corner | Flight | Landing, sides: tuple[float, float, float]
) -> None:
    thing = one(*sides)
    assert obstacle.passage(thing).room < 0
    names = {words: name for name, words in obstacle.grows}

    found = list(would_do(obstacle, thing))

    assert found
    for words, need in found:
        changed = {**vars(obstacle), names[words]: float(need)}
        less = {**vars(obstacle), names[words]: need - 2.0}
        assert type(obstacle)(**changed).passage(thing).room >= 0
        assert type(obstacle)(**less).passage(thing).room < 0


def test_what_no_width_alone_would_mend_offers_none() -> None:
    cube = one(3000, 3000, 3000)

    assert list(would_do(Door(width=800.0, height=2000.0), cube)) == []
