"""How near screws and bores come to each other, against distances reckoned by hand."""

from __future__ import annotations

from typing import Any

import pytest

from model.part import Face, Hole, Part, Place, Screw
from model.parts.pieces import Pieces
from model.solids.shanks import Meeting, meetings


def block(holes: tuple[Hole, ...] = (), screws: tuple[Screw, ...] = (), **told: Any) -> Part:
    """A block of 100 x 60 x 40, its corner at the origin of the bed."""
    told = {"name": "block", "length": 100, "width": 60, "thickness": 40, "material": "oak", **told}
    return Part(assembly="test", lies="uvz", at=(0, 0, 0), holes=holes, screws=screws, **told)


def met(*parts: Part) -> tuple[Meeting, ...]:
    return meetings(Pieces.of({f"rule_{k}": (part,) for k, part in enumerate(parts)}))


def down(x: float, y: float = 30.0) -> Screw:
    """A screw 4 mm thick, straight down from the upper face."""
    return Screw("wood screw 8", (x, y, 40), (0, 0, -1), 30, 4, "other")


def across(y: float, z: float, diameter: float = 4, kind: str = "bolt hole") -> Hole:
    """A bore along the block, 80 mm deep from its near end."""
    return Hole(kind, Face.NEAR, (0, y, z), (1, 0, 0), diameter, 80)


def test_between_two_parallel_screws_their_half_thicknesses_are_taken_off() -> None:
    (found,) = met(block(screws=(down(20), down(29))))

    assert found.gap == pytest.approx(9 - 4)


def test_a_screw_that_crosses_a_bore_is_as_near_as_their_axes() -> None:
    """The axes pass 7 mm apart; 2 and 3.5 mm of that are steel and air."""
    (found,) = met(block((across(37, 20, 7),), (down(50),)))

    assert found.gap == pytest.approx(7 - 2 - 3.5)


def test_a_screw_through_a_bore_shares_its_space() -> None:
    (found,) = met(block((across(30, 20, 7),), (down(50),)))

    assert found.gap == pytest.approx(-2 - 3.5)


def test_a_screw_that_ends_above_a_bore_keeps_the_wood_under_its_point() -> None:
    """It ends at z = 10; the bore's upper side is at 4 + 3 = 7."""
    (found,) = met(block((across(30, 4, 6),), (down(50),)))

    assert found.gap == pytest.approx(10 - 7)


def test_slanted_screws_are_measured_where_they_pass() -> None:
    """One at 45 degrees in the plane y = 30, one straight down in y = 36."""
    slant = Screw("wood screw 8", (40, 30, 40), (1, 0, -1), 40, 4, "other")

    (found,) = met(block(screws=(slant, down(50, 36))))

    assert found.gap == pytest.approx(6 - 4)


def test_what_stands_far_apart_is_not_told() -> None:
    assert met(block(screws=(down(20), down(40)))) == ()


def test_a_bolt_and_its_nut_are_meant_to_meet() -> None:
    nut = Hole("nut hole", Face.FACE, (35, 30, 40), (0, 0, -1), 10, 28)

    assert met(block((across(30, 20, 7), nut))) == ()


def test_a_screw_and_the_bore_that_it_sits_in_are_one() -> None:
    bore = Hole("pocket hole", Face.FACE, (50, 30, 40), (0, 0, -1), 9, 10)

    assert met(block((bore,), (down(50),))) == ()


def test_two_screws_point_to_point_keep_wood_between_their_points() -> None:
    """From both faces, 18 mm each of 40; each is counted round, to its tip."""
    one = Screw("wood screw 8", (50, 30, 40), (0, 0, -1), 18, 4, "other")
    other = Screw("wood screw 8", (50, 30, 0), (0, 0, 1), 18, 4, "other")

    (found,) = met(block(screws=(one, other)))

    assert found.gap == pytest.approx(40 - 2 * 18)


def test_screws_in_different_wood_do_not_meet() -> None:
    """Side by side, 5 mm apart, each in a block of its own."""
    left = block(screws=(down(98),))
    right = block(screws=(down(7),), places=(Place(u=100.0),))

    assert met(left, right) == ()


def test_screws_of_a_drawer_and_of_the_bed_move_past_each_other() -> None:
    drawer = block(screws=(down(26),), places=(Place(drawer=1),))

    assert met(block(screws=(down(20),)), drawer) == ()


def test_of_alike_places_the_nearest_is_told() -> None:
    """A screw in each of two places, 6 and 4 mm of which stay beside those of another part."""
    pair = block(screws=(down(20),), places=(Place(), Place(u=40.0)))
    beside = block(screws=(down(30),), places=(Place(), Place(u=38.0)))

    apart = [each.gap for each in met(pair, beside)]

    assert apart == [pytest.approx(8 - 4)]
