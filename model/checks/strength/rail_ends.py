"""What the frame asks of each knock-down joint: pull, shear, and the moment that opens it."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

import numpy as np

from model.checks.strength.joint_forces import forces_between, made_by
from model.parts.pieces import Bools, Floats, Ints, Pieces
from model.structure.record import Carried

MOVED = "as the bed is moved"
MOVE = " Empty the drawers, take the mattress off, and lift."
HANDLED = ("lift", "drag")  # load cases of a bed that is moved, not lain in
SIDES = ("stiles", "side_rail", "top_rail", "bottom_rail")
POSTS = ("post_left", "post_right")


class RailEnds(NamedTuple):
    """Knock-down joints (j) of a side: the rail or stile and the post that meet, and their height
    `z` above the floor; `lower` and `upper` edge of the side's end, which stands against the post
    as a whole. Per case (c, j), N and N mm: `pull` of the side from its post, `down` on the joint,
    `opens` the moment that opens it above (below zero: below).

    What thrusts a rail outwards is not asked: screws of bent slats slip long before.
    """

    rail: Ints
    post: Ints
    z: Floats
    lower: float
    upper: float
    pull: Floats
    down: Floats
    opens: Floats

    def drawn(self, heights: Floats) -> Floats:
        """(c, j, s): pull on each of the fasteners at `heights` (j, s), as the rail's end opens
        about its lower or upper edge; what presses is borne by the wood.
        """
        above, below = heights - self.lower, self.upper - heights
        levers = np.where((self.opens > 0)[:, :, None], above, below)
        middle = np.where(self.opens > 0, self.z - self.lower, self.upper - self.z)
        turning = np.maximum(np.abs(self.opens) + self.pull * middle, 0.0)
        return np.asarray(turning[:, :, None] * levers / (levers**2).sum(axis=2)[:, :, None])


def rail_ends(carried: Carried, pieces: Pieces, side: str) -> RailEnds:
    """The knock-down joints of the left or right side."""
    rails = made_by(pieces, *(f"{side}.{name}" for name in SIDES))
    joints = forces_between(carried, pieces, rails, made_by(pieces, *POSTS))
    low, high = pieces.bounds
    y = (low[:, 1] + high[:, 1]) / 2
    toward = np.sign(y[joints.other] - joints.at[:, 1])  # from the joint to the post
    return RailEnds(
        rail=joints.one, post=joints.other, z=joints.at[:, 2],
        lower=float(low[rails, 2].min(initial=np.inf)),
        upper=float(high[rails, 2].max(initial=-np.inf)),
        pull=joints.force[:, :, 1] * toward, down=np.abs(joints.force[:, :, 2]),
        opens=-joints.moment[:, :, 0] * toward,
    )  # fmt: skip


def in_use_and_moved(carried: Carried) -> Iterator[tuple[str, str, Bools]]:
    """Ends of id and title, and which load cases are not looked at: (c, 1)."""
    handled = np.array([case.key in HANDLED for case in carried.cases], bool)[:, None]
    yield "", "", handled
    yield "_moved", f", {MOVED}", ~handled


def worst_of(use: Floats, others: Bools) -> tuple[int, int]:
    """Case and joint of the greatest use, those cases left out."""
    case, joint = divmod(int(np.where(others, -1.0, use).argmax()), use.shape[1])
    return case, joint
