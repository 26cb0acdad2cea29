"""The ends of members that are glued with tenons or dowels, read from what is cut into them, and
how much of what they bear the frame takes.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from functools import lru_cache
from typing import NamedTuple

import numpy as np

from model.checks.strength.joint_forces import JointForces, uses
from model.checks.strength.member_ends import Asked, asked_of
from model.joints.end_joint import EndJoint
from model.materials import Allowed, Material, StockGrade, allowed, wood
from model.materials.row_allowable import allowed_of
from model.mechanics.fasteners.glue import cheek_shear
from model.mechanics.fasteners.glued_end import TENSION_SHARE, DowelEnd, TenonEnd
from model.mechanics.fasteners.strengths import DesignStress, UltimateStress
from model.part import Cut, Part
from model.parts.pieces import Floats, Pieces
from model.units import Mm

# Dowels are sold in beech, birch and maple, alike strong; clear and straight, one bears as much
# drawn as bent. Source: Wood Handbook 2021, chapter 5, from memory
DOWEL_WOOD = "european_beech"
_AT: Mm = 1e-3  # what lies this near to an end is at it
GIVES_FIRST = ("Its glue gives first", "The tenon tears first", "The tenon shears off first")


class GluedEnd(NamedTuple):
    """One end of a member on its mate: the two pieces, and its tenon or dowels."""

    pieces: tuple[int, int]
    grip: TenonEnd | DowelEnd


class Woods:
    """What the parts' materials may bear, solid boards by their grade; each is looked up once."""

    def __init__(self, materials: Mapping[str, Material], grade: StockGrade) -> None:
        self._materials, self._grade = materials, grade.key
        self._known: dict[str, Allowed] = {}

    def of(self, part: Part) -> Allowed:
        found = self._known.get(part.material)
        if found is None:
            found = allowed_of(self._materials[part.material], self._grade)
            self._known[part.material] = found
        return found


def glued_ends(
    joints: JointForces, pieces: Pieces, joinery: EndJoint, woods: Woods, *, tilts: bool = False
) -> tuple[tuple[GluedEnd, ...], Asked]:
    """Every joint of a member whose end is glued, and what is asked of it."""
    asked, outward = asked_of(joints, pieces, tilts=tilts)
    pairs = list(zip(joints.one.tolist(), joints.other.tolist(), strict=True))
    parts, part = pieces.parts, pieces.part
    found = [
        _grip(parts[part[one]], parts[part[other]], way > 0, joinery, woods)
        for (one, other), way in zip(pairs, outward.tolist(), strict=True)
    ]
    kept = np.array([grip is not None for grip in found], bool)
    ends = (GluedEnd(p, g) for p, g in zip(pairs, found, strict=True) if g is not None)
    return tuple(ends), asked.only(kept)


def used(ends: Sequence[GluedEnd], asked: Asked) -> tuple[Floats, Floats]:
    """(c, e): share of what each end may bear for ten years; and which of its ways to give comes
    first, an index into GIVES_FIRST, for dowels 0.
    """
    tenons = [end.grip for end in ends if isinstance(end.grip, TenonEnd)]
    if tenons:
        width = np.array([grip.width for grip in tenons])
        force = np.stack([asked.opens(width), asked.tilt, asked.across, asked.sideways])
        shares = np.array([_shares(grip) for grip in tenons])  # (e, ways, forces)
        each = shares @ force.transpose(2, 0, 1)  # (e, ways, c)
        return each.max(axis=1).T, each.argmax(axis=1).T
    across, out = on_dowels(ends, asked)
    lateral, drawn = np.array([_held(grip) for grip in _dowelled(ends)]).T
    return uses(lateral, drawn, across, out), np.zeros(out.shape)


def on_dowels(ends: Sequence[GluedEnd], asked: Asked) -> tuple[Floats, Floats]:
    """(c, e): what the worst dowel of each end bears across its axis and outwards, N."""
    width, count, opens, leans = np.array(
        [(g.width, len(g.spots), *g.draws()[:2]) for g in _dowelled(ends)]
    ).T
    out = asked.opens(width) * opens + asked.tilt * leans
    return np.hypot(asked.across, asked.sideways) / count, out


def _dowelled(ends: Sequence[GluedEnd]) -> list[DowelEnd]:
    """All of them, as all ends of one frame are joined alike."""
    return [end.grip for end in ends if isinstance(end.grip, DowelEnd)]


def with_length(ends: Sequence[GluedEnd], length: Mm) -> tuple[GluedEnd, ...]:
    """The same ends with longer tenons."""
    return tuple(
        end._replace(grip=replace(end.grip, length=max(length, end.grip.length)))
        if isinstance(end.grip, TenonEnd)
        else end
        for end in ends
    )


@lru_cache(maxsize=512)
def _shares(grip: TenonEnd) -> tuple[tuple[float, ...], ...]:
    return grip.shares()


@lru_cache(maxsize=256)
def _held(grip: DowelEnd) -> tuple[float, float]:
    return grip.lateral(), grip.withdrawal()


def _grip(
    member: Part, mate: Part, is_far: bool, joinery: EndJoint, woods: Woods
) -> TenonEnd | DowelEnd | None:
    if joinery.has_tenon:
        return _tenon(member, mate, is_far, woods)
    return _dowels(member, mate, is_far, joinery, woods) if joinery.kind == "dowel" else None


def _tenon(member: Part, mate: Part, is_far: bool, woods: Woods) -> TenonEnd | None:
    cheeks, shoulders = (
        [cut for cut in member.cuts if cut.kind == kind and _is_at(cut, member, is_far)]
        for kind in ("tenon cheek", "tenon shoulder")
    )
    if not cheeks:
        return None
    own, other = woods.of(member), woods.of(mate)
    weaker = DesignStress(min(own.shear_mpa, other.shear_mpa))
    solid = own.product == other.product == "solid"
    lower, upper = (
        sum(cut.high[1] - cut.low[1] for cut in shoulders if cut.face.is_high is is_upper)
        for is_upper in (False, True)
    )
    return TenonEnd(
        width=member.size[1], stock=member.size[2], lower=lower, upper=upper,
        length=cheeks[0].high[0] - cheeks[0].low[0],
        thickness=member.size[2] - sum(cut.high[2] - cut.low[2] for cut in cheeks),
        cheek=cheek_shear(weaker, is_solid=solid), shear=DesignStress(own.shear_mpa),
        tension=DesignStress(own.bending_mpa * TENSION_SHARE),
    )  # fmt: skip


def _is_at(cut: Cut, part: Part, is_far: bool) -> bool:
    return cut.high[0] > part.size[0] - _AT if is_far else cut.low[0] < _AT


def _dowels(
    member: Part, mate: Part, is_far: bool, joinery: EndJoint, woods: Woods
) -> DowelEnd | None:
    spots = tuple(
        hole.at[1] for hole in member.holes
        if hole.kind == "dowel hole" and hole.face.axis == 0 and hole.face.is_high is is_far
    )  # fmt: skip
    if not spots:
        return None
    both = (woods.of(member), woods.of(mate))
    return DowelEnd(
        width=member.size[1], stock=member.size[2], spots=spots, diameter=joinery.dowel_diameter,
        depth=joinery.dowel_length / 2, gravity=min(each.specific_gravity for each in both),
        shear=DesignStress(min(each.shear_mpa for each in both)),
        breaks=UltimateStress(wood(DOWEL_WOOD).mor_mpa),
        tension=DesignStress(allowed(DOWEL_WOOD).bending_mpa),
    )  # fmt: skip
