"""What the frame asks of a member's end, turned to the member's own axes."""

from __future__ import annotations

import numpy as np
import pytest

from model.checks.strength.joint_forces import JointForces, forces_between, made_by
from model.checks.strength.member_ends import asked_of
from model.checks.strength.stile_screws import RAILS
from model.parts.pieces import Pieces
from tests.model.checks.strength.made import bed, carried


def at_the_stiles(
    force: tuple[float, float, float], moment: tuple[float, float, float]
) -> tuple[JointForces, Pieces]:
    """The same force (N, along, across and through the stile, away from its rail) and moment at
    both ends of every stile of the left side.
    """
    of = bed()
    stiles, rails = made_by(of.pieces, "left.stiles"), made_by(of.pieces, *RAILS)
    found = forces_between(carried(of), of.pieces, stiles, rails)
    axes = of.pieces.matrices[found.one][:, :3, :3]
    low, high = of.pieces.bounds
    up = found.at[:, 2] > ((low + high) / 2)[found.one, 2]
    away = np.where(up, 1.0, -1.0)[:, None] * np.array([0.0, 0.0, 1.0])
    push = np.einsum("eij,j->ei", axes, np.array([0.0, *force[1:]])) + force[0] * away
    turn = np.einsum("eij,j->ei", axes, np.array(moment))
    return JointForces(found.one, found.other, found.at, push[None], turn[None]), of.pieces


def test_what_draws_either_end_from_its_rail_is_a_pull() -> None:
    joints, pieces = at_the_stiles((100.0, 0.0, 0.0), (0.0, 0.0, 0.0))

    asked, outward = asked_of(joints, pieces, tilts=True)

    assert asked.pull == pytest.approx(np.full(asked.pull.shape, 100.0))
    assert set(outward) == {-1.0, 1.0}


def test_across_is_along_the_width_and_bend_in_its_plane() -> None:
    joints, pieces = at_the_stiles((0.0, 30.0, -40.0), (5.0, 60.0, 70.0))

    asked, _ = asked_of(joints, pieces, tilts=True)

    for found, said in zip(asked, (0.0, 30.0, 40.0, 70.0, 60.0), strict=True):
        assert np.abs(found) == pytest.approx(np.full(found.shape, said), abs=1e-9)


def test_what_tilts_a_stile_is_left_to_the_rails_ends() -> None:
    joints, pieces = at_the_stiles((0.0, 0.0, 0.0), (5.0, 60.0, 70.0))

    assert asked_of(joints, pieces, tilts=False)[0].tilt.max() == 0


def test_a_pull_opens_about_the_edge() -> None:
    joints, pieces = at_the_stiles((100.0, 0.0, 0.0), (0.0, 0.0, -70.0))
    asked, outward = asked_of(joints, pieces, tilts=False)

    assert asked.opens(np.full(len(outward), 50.0)) == pytest.approx(
        np.full(asked.pull.shape, 70 + 100 * 25)
    )
