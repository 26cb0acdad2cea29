"""Screws in wood: where they stand, and the holes made for them."""

from model.joints.pilot import pilot, screwed
from model.joints.spread import spread
from model.materials import wood_screw
from model.part import Face

CLEAT = (400.0, 40.0, 30.0)


def test_the_outer_ones_stand_in_from_both_ends() -> None:
    assert spread(0, 200, inset=10, apart=100) == (10, 100, 190)


def test_a_joint_too_narrow_for_two_gets_one_in_its_middle() -> None:
    assert spread(0, 30, inset=10, apart=100) == (15,)


def test_a_screw_starts_at_the_floor_of_its_counterbore() -> None:
    screw = wood_screw("8")
    work = screwed(
        CLEAT, Face.FACE, at=(50, 20, 30), screw=screw, length=50, into="side_rail", sunk=5
    )

    assert [h.kind for h in work.holes] == ["counterbore", "shank hole"]
    assert work.screws[0].at == (50, 20, 25)
    assert work.holes[1].depth == 25


def test_a_pilot_hole_in_hard_wood_is_wider() -> None:
    screw = wood_screw("8")
    at = (50.0, 20.0, 0.0)

    hard = pilot(Face.BACK, at=at, screw=screw, depth=30)
    soft = pilot(Face.BACK, at=at, screw=screw, depth=30, is_hardwood=False)

    assert hard.diameter > soft.diameter
    assert hard.toward == (0, 0, 1)
