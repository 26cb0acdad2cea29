"""The joint where the end of one member meets the side of another, whichever kind the maker chose.

How it is used: a rule adds `adds` (rules `end_joint_adds`, `frame_joint_adds`) to each jointed end
of a member's shoulder length; the member's part asks `on_end`, the mate's part asks `in_mate` with
the same shoulders, and where dowels are made, `member_dowels` says where their parts lie.
"""

from __future__ import annotations

from dataclasses import dataclass

from model.brief.posts import FrameJoint
from model.joints import dowel, pocket
from model.joints.tenon import mortise, tenon, tenon_in
from model.joints.work import Work, gathered
from model.materials import PocketScrew
from model.part import Face, Point
from model.units import Mm


@dataclass(frozen=True, kw_only=True)
class EndJoint:
    """The kind of joint and the sizes that its two halves share; what a kind does not use is zero.

    `adds` is what it adds to the member at each end: the tenon's length. `reach` is how deep the
    mortise or dowel hole goes into the mate.
    """

    kind: FrameJoint
    adds: Mm = 0.0
    reach: Mm = 0.0
    tenon_thickness: Mm = 0.0
    dowel_diameter: Mm = 0.0
    dowel_length: Mm = 0.0
    screw: PocketScrew | None = None

    @property
    def has_tenon(self) -> bool:
        """Whether the member goes into its mate."""
        return self.adds > 0


def on_end(
    joint: EndJoint,
    size: Point,
    end: Face,
    *,
    lower: Mm,
    upper: Mm,
    face: Face = Face.FACE,
    into: str = "",
) -> Work:
    """The member's half. `size` is its cut size, tenons included.

    `lower` and `upper` are the shoulders at its two edges, which also keep dowels and screws out of
    grooves there; `face` is where pocket holes are drilled, `into` the rule that makes the mate.
    """
    if joint.has_tenon:
        sides = {"length": joint.adds, "thickness": joint.tenon_thickness}
        return Work(cuts=tenon(size, end, lower=lower, upper=upper, **sides))
    if joint.kind == "dowel":
        offsets = member_dowels(joint, size[1], lower=lower, upper=upper)
        bores = {"diameter": joint.dowel_diameter, "depth": joint.reach}
        return Work(holes=dowel.holes_on_end(size, end, offsets=offsets, **bores))
    assert joint.screw is not None
    return gathered(
        pocket.pocket(size, end, face, offset=offset, screw=joint.screw, into=into)
        for offset in pocket.pocket_offsets(
            size[1], lower=lower, upper=upper, bore=joint.screw.pocket_diameter_mm
        )
    )


def in_mate(
    joint: EndJoint,
    size: Point,
    face: Face,
    *,
    along: tuple[Mm, Mm],
    across: tuple[Mm, Mm],
    lower: Mm,
    upper: Mm,
) -> Work:
    """The mate's half, let into its `face`.

    `along` is where the member's two edges meet the mate along the mate's length, `across` where
    the member's back and face meet it on the remaining axis; `lower` and `upper` as for `on_end`.
    """
    if joint.has_tenon:
        thickness = joint.tenon_thickness
        place = tenon_in(along, across, thickness=thickness, lower=lower, upper=upper)
        cut = mortise(size, face, depth=joint.reach, along=place[0], across=place[1])
        return Work(cuts=(cut,))
    if joint.kind == "dowel":
        offsets = member_dowels(joint, along[1] - along[0], lower=lower, upper=upper)
        holes = dowel.holes_in_mate(
            size, face, along=along, across=across, offsets=offsets,
            diameter=joint.dowel_diameter, depth=joint.reach,
        )  # fmt: skip
        return Work(holes=holes)
    return Work()


def member_dowels(joint: EndJoint, width: Mm, *, lower: Mm, upper: Mm) -> tuple[Mm, ...]:
    """Centres of the dowels across the member, from its lower edge; none in another joint."""
    if joint.kind != "dowel":
        return ()
    return dowel.dowel_offsets(width, lower=lower, upper=upper, diameter=joint.dowel_diameter)
