"""What the frame asks of the ends of members on others: of stiles on rails, of rails on posts."""

from __future__ import annotations

from typing import NamedTuple

import numpy as np

from model.checks.strength.joint_forces import JointForces
from model.parts.pieces import Bools, Floats, Pieces


class Asked(NamedTuple):
    """What each end (e) is asked in each case: (c, e), N and N mm, on the member's own axes.

    `pull` away from its mate, `across` along the member's width and `sideways` through its
    thickness; `bend` in the plane of its width, `tilt` out of it. What twists a member is left to
    the others that meet it.
    """

    pull: Floats
    across: Floats
    sideways: Floats
    bend: Floats
    tilt: Floats

    def only(self, kept: Bools) -> Asked:
        """Of some of the ends."""
        return Asked(*(each[:, kept] for each in self))

    def opens(self, width: Floats) -> Floats:
        """(c, e): moment about the edge of the end that presses; wood bears what presses."""
        return np.asarray(np.maximum(np.abs(self.bend) + self.pull * width / 2, 0.0))


def asked_of(joints: JointForces, pieces: Pieces, *, tilts: bool) -> tuple[Asked, Floats]:
    """What is asked of each joint's first member, and which of its ends it is: 1 far, -1 near.

    What tilts a stile out of its frame is left to the slats and to the rails' ends, which stand
    against the posts: it counts only where the member `tilts`.
    """
    axes = pieces.matrices[joints.one, :3, :3]
    low, high = pieces.bounds
    middle = (low[joints.one] + high[joints.one]) / 2
    outward = np.sign(((joints.at - middle) * axes[:, :, 0]).sum(axis=1))
    force, moment = (_turned(each, axes) for each in (joints.force, joints.moment))
    asked = Asked(
        pull=force[:, :, 0] * outward, across=np.abs(force[:, :, 1]),
        sideways=np.abs(force[:, :, 2]), bend=moment[:, :, 2],
        tilt=np.abs(moment[:, :, 1]) * tilts,
    )  # fmt: skip
    return asked, outward


def _turned(vectors: Floats, axes: Floats) -> Floats:
    """(c, e, 3) vectors on the bed's axes, on axes of each end's own; as products of matrices,
    which are several times as fast as one sum.
    """
    return np.asarray((vectors.transpose(1, 0, 2) @ axes).transpose(1, 0, 2))
