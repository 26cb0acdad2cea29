"""How far a pushed bed sways, told of the frame and its knock-down joints."""

from dataclasses import replace

import numpy as np
import pytest

from model.bed import Bed, Design, solve
from model.structure.joints import KNOCK_DOWN
from model.structure.record import Carried, Forces
from model.structure.sway import sway


def strength_of(bed: Bed) -> Carried:
    assert isinstance(bed.strength, Carried)
    return bed.strength


@pytest.fixture(scope="module")
def queen() -> Carried:
    return strength_of(solve(Design()))


def test_a_bed_that_is_not_pushed_has_no_sway(queen: Carried) -> None:
    assert sway(queen, "push along", 0.0) is not None
    assert (
        sway(strength_of(solve(Design().with_choices({"push_force": 0}))), "push along", 0) is None
    )


def test_twice_the_push_is_twice_the_sway() -> None:
    """Elastic, as long as no foot lifts."""
    gentle, hard = (
        sway(strength_of(solve(Design().with_choices({"push_force": force}))), "push along", 0.0)
        for force in (100, 200)
    )

    assert gentle is not None and hard is not None
    assert hard.bends == pytest.approx(2 * gentle.bends, rel=0.01)
    assert hard.moment == pytest.approx(2 * gentle.moment, rel=0.01)
    assert hard.gives == pytest.approx(2 * gentle.gives, rel=0.01)


def test_play_counts_lengthwise_only(queen: Carried) -> None:
    """The ends of a bed are glued: only the joints of the sides come apart, and have play."""
    along, across = sway(queen, "push along", 0.5), sway(queen, "push across", 0.5)

    assert along is not None and across is not None
    assert along.play > 0 == across.play


def joints_of_one_corner(*, force: float = 100.0, turn: float = 0.0) -> Forces:
    """Two bolts, 200 mm above each other, that pull at post 7 along the bed, one each way."""
    pull = np.zeros((2, 2, 6))
    pull[1, :, 1] = (force, -force)
    pull[1, :, 3] = turn
    stiffness = np.tile([1e3, 2e3, 1e3, 0, 0, 0], (2, 1))
    if turn:
        stiffness[:, 3] = 8e6
    return Forces(
        pieces=np.array([[3, 7], [3, 7]]),
        kind=np.full(2, KNOCK_DOWN),
        at=np.array([[0, 0, 100.0], [0, 0, 300.0]]),
        force=pull,
        stiffness=stiffness,
    )


def corner(queen: Carried, joints: Forces) -> Carried:
    """The queen, pushed in its second case, with joints of one corner in place of its own."""
    case = next(case for case in queen.cases if case.key == "push along")
    return replace(queen, cases=(queen.cases[0], case), joints=joints, moved=queen.moved[:2])


def test_a_corner_bears_the_moment_of_its_bolts(queen: Carried) -> None:
    """Two bolts 200 mm apart with 100 N each way: 20 N m, and 100 N / 2000 N/mm give 0.05 mm."""
    found = sway(corner(queen, joints_of_one_corner()), "push along", 0.0)

    assert found is not None
    assert found.moment == pytest.approx(20.0)
    assert found.gives == pytest.approx(0.05)


def test_play_of_bolts_lets_the_rail_go_by_the_lever(queen: Carried) -> None:
    """0.4 mm of play at bolts 100 mm from their middle turns a rail that hangs 200 mm high by
    0.4 / (2 x 100): it goes 0.4 mm before the bolts hold."""
    found = sway(corner(queen, joints_of_one_corner()), "push along", 0.4)

    assert found is not None
    assert found.play == pytest.approx(0.4)


def test_a_plate_gives_at_its_outer_screws_too(queen: Carried) -> None:
    """8e6 N mm over 2000 N/mm is a lever of 63.2 mm; 16 N m turn it by 0.002, that is 0.126 mm."""
    found = sway(corner(queen, joints_of_one_corner(force=0.0, turn=16000.0)), "push along", 0.0)

    assert found is not None
    assert found.moment == pytest.approx(32.0)
    assert found.gives == pytest.approx(16000 / 8e6 * (8e6 / 2e3) ** 0.5)
