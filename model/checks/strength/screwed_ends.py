"""The ends of members that pocket screws hold, and what the frame asks of these screws."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import lru_cache
from typing import NamedTuple

import numpy as np

from model.checks.strength.joint_forces import JointForces, uses, wood_of
from model.checks.strength.member_ends import Asked, asked_of
from model.materials import Material
from model.mechanics.fasteners.lateral import ScrewJoint, design_screw_lateral, wood_side
from model.mechanics.fasteners.strengths import Design
from model.mechanics.fasteners.withdrawal import design_screw_withdrawal, threaded_in
from model.parts.pieces import Floats, Pieces
from model.solids.screwing import ScrewPoint
from model.units import Mm


class ScrewedEnd(NamedTuple):
    """One end of a member on its mate: the two pieces, its screws across the member's `width`, and
    what one of them bears for ten years, N.
    """

    pieces: tuple[int, int]
    spots: tuple[Mm, ...]
    width: Mm
    thick: Mm
    lateral: Design
    withdrawal: Design

    @property
    def share(self) -> float:
        """What the screw farthest from a corner of the end takes of a moment about it, 1/mm."""
        sides = (self.spots, tuple(self.width - at for at in self.spots))
        return max(max(side) / sum(y**2 for y in side) for side in sides)


def screwed_ends(
    joints: JointForces,
    pieces: Pieces,
    points: list[ScrewPoint],
    materials: Mapping[str, Material],
    *,
    tilts: bool = False,
) -> tuple[list[ScrewedEnd], Asked]:
    """Every joint of a member with a mate whose screws are known, and what is asked of it."""
    asked, outward = asked_of(joints, pieces, tilts=tilts)
    found = [
        _end(int(one), int(other), way, pieces, points, materials)
        for one, other, way in zip(joints.one, joints.other, outward.tolist(), strict=True)
    ]
    kept = np.array([end is not None for end in found], bool)
    return [end for end in found if end is not None], asked.only(kept)


def on_screws(ends: Sequence[ScrewedEnd], asked: Asked) -> tuple[Floats, Floats]:
    """(c, e): what the worst screw bears across its axis and outwards. The member opens about one
    corner of its end, and all screws of a tilted one about the face that presses.
    """
    count, width, thick, share = np.array(
        [(len(e.spots), e.width, e.thick, e.share) for e in ends]
    ).T
    out = asked.opens(width) * share + asked.tilt / (thick / 2 * count)
    return np.hypot(asked.across, asked.sideways) / count, out


def used(ends: Sequence[ScrewedEnd], asked: Asked) -> Floats:
    """(c, e): share of what the worst screw of each end may bear for ten years."""
    lateral, drawn = np.array([(end.lateral, end.withdrawal) for end in ends]).T
    return uses(lateral, drawn, *on_screws(ends, asked))


def said_of(ends: Sequence[ScrewedEnd], asked: Asked, pieces: Pieces, case: int, at: int) -> str:
    """What the screws of one end bear in a case, as the start of a sentence."""
    across, drawn = (float(each[case, at]) for each in on_screws(ends, asked))
    count = len(ends[at].spots)
    screws = f"Each of {count} pocket screws" if count > 1 else "The one pocket screw"
    member, mate = (pieces.labels[each] for each in ends[at].pieces)
    return (
        f"{screws} between {member} and {mate} bears {across:.0f} N sideways and {drawn:.0f} N "
        "outwards"
    )


def _end(
    member: int,
    mate: int,
    outward: float,
    pieces: Pieces,
    points: list[ScrewPoint],
    materials: Mapping[str, Material],
) -> ScrewedEnd | None:
    part = pieces.parts[pieces.part[member]]
    mine = [
        p for p in points
        if pieces.part[p.piece] == pieces.part[member] and p.screw.toward[0] * outward > 0
    ]  # fmt: skip
    if not mine:
        return None
    worst = min(mine, key=lambda p: p.bite)
    woods = (wood_of(pieces, k, materials).specific_gravity for k in (member, mate))
    held = _held(worst.screw.diameter, worst.screw.length, worst.bite, *woods)
    spots = tuple(p.screw.at[1] for p in mine)
    return ScrewedEnd((member, mate), spots, float(part.width), float(part.thickness), *held)


@lru_cache(maxsize=128)
def _held(shank: Mm, length: Mm, bite: Mm, member: float, mate: float) -> tuple[Design, Design]:
    """Sideways and outwards, through the member's end grain into the mate's side: gravities."""
    joint = ScrewJoint(
        shank=shank, side=length - bite, side_bearing=wood_side(member), main_gravity=mate,
        bite=bite,
    )  # fmt: skip
    return (
        design_screw_lateral(joint, in_end_grain=True),
        design_screw_withdrawal(mate, shank, threaded_in(bite, length)),
    )
