"""The ends of stiles that pocket screws hold to rails, and what the frame asks of them."""

from collections.abc import Mapping, Sequence
from functools import lru_cache
from typing import NamedTuple

import numpy as np

from model.checks.strength.joint_forces import (
    JointForces,
    wood_of,
)
from model.materials import Material
from model.mechanics.fasteners.lateral import ScrewJoint, design_screw_lateral, wood_side
from model.mechanics.fasteners.strengths import Design
from model.mechanics.fasteners.withdrawal import design_screw_withdrawal, threaded_in
from model.parts.pieces import Floats, Pieces
from model.solids.screwing import ScrewPoint
from model.units import Mm


class StileEnd(NamedTuple):
    """One end of a stile on its rail: the two pieces, its screws across the stile's `width`, and
    what one of them bears for ten years, N.
    """

    pieces: tuple[int, int]
    spots: tuple[Mm, ...]
    width: Mm
    lateral: Design
    withdrawal: Design

    @property
    def share(self) -> float:
        """What the screw farthest from a corner of the end takes of a moment about it, 1/mm."""
        return _share(self.spots, self.width)


class Asked(NamedTuple):
    """What the frame asks of ends (e) of stiles in each case (c, e), N and N mm: `pull` away from
    the rail, `across` sideways, `bend` in the frame's plane.

    What tilts a stile out of the frame's plane, or twists it, is left to the slats and to the
    rails' ends, which stand against the posts.
    """

    pull: Floats
    across: Floats
    bend: Floats

    def on_screws(self, ends: Sequence[StileEnd]) -> tuple[Floats, Floats]:
        """(c, e): what the worst screw bears across its axis and outwards. Wood bears what
        presses, and the stile opens about one corner of its end.
        """
        count, width, share = np.array([(len(e.spots), e.width, e.share) for e in ends]).T
        opens = np.maximum(np.abs(self.bend) + self.pull * width / 2, 0.0)
        return self.across / count, opens * share


def _share(spots: tuple[Mm, ...], width: Mm) -> float:
    sides = (spots, tuple(width - at for at in spots))
    return max(max(side) / sum(y**2 for y in side) for side in sides)


def stile_ends(
    joints: JointForces,
    pieces: Pieces,
    points: list[ScrewPoint],
    materials: Mapping[str, Material],
) -> tuple[list[StileEnd], Asked]:
    """Every joint of a stile with a rail whose screws are known, and what is asked of it."""
    axes = pieces.matrices[joints.one][:, :3, :3]
    low, high = pieces.bounds
    middle = (low[joints.one] + high[joints.one]) / 2
    outward = np.sign(np.einsum("ei,ei->e", joints.at - middle, axes[:, :, 0]))
    found = [
        _end(int(one), int(other), way, pieces, points, materials)
        for one, other, way in zip(joints.one, joints.other, outward.tolist(), strict=True)
    ]
    kept = np.array([end is not None for end in found], bool)
    force = np.einsum("cei,eik->cek", joints.force, axes)[:, kept]
    moment = np.einsum("cei,eik->cek", joints.moment, axes)[:, kept]
    asked = Asked(
        force[:, :, 0] * outward[kept], np.hypot(force[:, :, 1], force[:, :, 2]), moment[:, :, 2]
    )
    return [end for end in found if end is not None], asked


def _end(
    stile: int,
    rail: int,
    outward: float,
    pieces: Pieces,
    points: list[ScrewPoint],
    materials: Mapping[str, Material],
) -> StileEnd | None:
    mine = [
        p for p in points
        if pieces.part[p.piece] == pieces.part[stile] and p.screw.toward[0] * outward > 0
    ]  # fmt: skip
    if not mine:
        return None
    worst = min(mine, key=lambda p: p.bite)
    woods = (wood_of(pieces, k, materials).specific_gravity for k in (stile, rail))
    held = _held(worst.screw.diameter, worst.screw.length, worst.bite, *woods)
    width = float(pieces.parts[pieces.part[stile]].width)
    return StileEnd((stile, rail), tuple(p.screw.at[1] for p in mine), width, *held)


@lru_cache(maxsize=128)
def _held(shank: Mm, length: Mm, bite: Mm, stile: float, rail: float) -> tuple[Design, Design]:
    """Sideways and outwards, through the stile's end grain into the rail's edge: gravities."""
    joint = ScrewJoint(
        shank=shank, side=length - bite, side_bearing=wood_side(stile), main_gravity=rail, bite=bite
    )
    return (
        design_screw_lateral(joint, in_end_grain=True),
        design_screw_withdrawal(rail, shank, threaded_in(bite, length)),
    )
