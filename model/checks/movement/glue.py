"""Where glue holds wood across its grain: how far the two want to move apart, and what to glue."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from typing import NamedTuple

import numpy as np

from model.checks.movement.ends import MOVEMENT
from model.checks.movement.rates import Rates, Season, rates
from model.checks.record import Finding, Verdict, check
from model.materials import Material
from model.materials.movement import Way
from model.part import Part
from model.parts.pieces import Floats, Ints, Pieces
from model.solids.holding import Holding
from model.units import Mm, Percent

FREELY: Mm = 0.8  # 1/32 in, what 4 in of flat-sawn oak move in a heated house: glued all over
_TOUCH: Mm = 1e-6
NOTHING: Mm = 0.05  # what no rule can read
SPLITS: Mm = 3.0  # 1/8 in: more than glue and wood give
HABIT = (
    f"{MOVEMENT}; glue across the grain over about 4 in: common practice; a woodworkers' forum, "
    "2015: planks glued at both ends split within 1/4 in of movement"
)
_PART_OF_IT = {
    "mortise and tenon": "Glue only {glued} mm of the tenon, at the edge that must stay level; "
    "leave the rest dry, and take {room:.1f} mm off its other edge.",
    "stub tenon": "Glue only {glued} mm of the tenon, at the edge that must stay level; leave "
    "the rest dry.",
    "dowel": "Glue only the dowels within {glued} mm of the edge that must stay level; set the "
    "others dry in holes slotted by {room:.1f} mm.",
    "glued on top": "Glue it along the rail only, not on the end grain of the posts.",
}
# What makes a board of an end narrower, by the board's name.
_WIDTHS = {
    "end rail": ("{end}.low_rail_rise", "end_rail_width"),
    "upper rail": ("{end}.upper_rail_width",),
    "panel stile": ("{end}.mid_stile_width",),
    "cap": ("cap_overhang",),
}
_ENDS = {"headboard": "head", "footboard": "foot"}
_OTHERWISE = "Glue only {glued} mm of it, and let the rest slide: screws in slots, no glue."


class Joint(NamedTuple):
    """One glued joint whose parts want to move apart: `by` mm over `across` mm at the worst."""

    one: Part
    other: Part
    kind: str
    across: Mm
    swell: Mm
    shrink: Mm

    @property
    def by(self) -> Mm:
        return max(self.swell, self.shrink)


@check(
    "movement",
    "Glue joints across the grain",
    source=HABIT,
    remedies=("board_cut", "frame_wood"),
)
def cross_grain_glue(
    pieces: Pieces,
    holding: Holding,
    materials: Mapping[str, Material],
    bench_moisture: Percent,
    wood_driest: Percent,
    wood_wettest: Percent,
    width_way: Way,
    thickness_way: Way,
) -> Iterator[Finding]:
    """A wide board that is glued across another's grain splits, or its joint does."""
    season = Season(bench_moisture, wood_driest, wood_wettest, width_way, thickness_way)
    worst: dict[str, Joint] = {}
    for joint in glued_joints(pieces, holding, rates(pieces, materials, season)):
        found = worst.get(joint.one.assembly)
        if joint.by > (found.by if found else NOTHING):
            worst[joint.one.assembly] = joint
    yield from (_finding(assembly, joint) for assembly, joint in worst.items())


def glued_joints(pieces: Pieces, holding: Holding, found: Rates) -> Iterator[Joint]:
    """Every kind of glued joint between solid parts, once, with what its two parts differ by."""
    glued = np.array([hold.glued for hold in holding.holds], bool)[holding.hold]
    one, other, hold = (each[glued] for each in (holding.one, holding.other, holding.hold))
    solid = (found.solid[pieces.part[one]] > 0) & (found.solid[pieces.part[other]] > 0)
    one, other, hold = one[solid], other[solid], hold[solid]
    if not len(one):
        return
    # One of each pair of parts that is joined alike. As one number: rows take far longer.
    alike = (pieces.part[one] * len(pieces.parts) + pieces.part[other]) * len(holding.holds) + hold
    _, first = np.unique(alike, return_index=True)
    one, other, hold = one[first], other[first], hold[first]
    shared = _shared(pieces, one, other)
    swell = np.abs(_on_bed(pieces, one, found.swell) - _on_bed(pieces, other, found.swell))
    shrink = np.abs(_on_bed(pieces, one, found.shrink) - _on_bed(pieces, other, found.shrink))
    axis = np.argmax(np.maximum(swell, shrink) * shared, axis=1)[:, None]
    across, wet, dry = (
        np.take_along_axis(each, axis, axis=1)[:, 0].tolist() for each in (shared, swell, shrink)
    )
    parts, holds = pieces.parts, holding.holds
    ones, others = pieces.part[one].tolist(), pieces.part[other].tolist()
    for i, k in enumerate(hold.tolist()):
        yield Joint(
            parts[ones[i]], parts[others[i]], holds[k].joint,
            across[i], across[i] * wet[i], across[i] * dry[i],
        )  # fmt: skip


def _on_bed(pieces: Pieces, some: Ints, per_part: Floats) -> Floats:
    """Rates along a part's own axes, turned to the bed's: (k, 3)."""
    turns = np.abs(pieces.matrices[some, :3, :3])
    turned: Floats = (turns @ per_part[pieces.part[some]][:, :, None])[:, :, 0]
    return turned


def _shared(pieces: Pieces, one: Ints, other: Ints) -> Floats:
    """How far each pair reaches along each bed axis where they meet: (k, 3), mm.

    The wood of `one` that lies within the outline of `other`: its tenon, or the face it lies with.
    """
    count = pieces.first[one + 1] - pieces.first[one]
    start = np.cumsum(count) - count
    pair = np.repeat(np.arange(len(one)), count)
    box = np.arange(len(pair)) + np.repeat(pieces.first[one] - start, count)
    low, high = (corner[other][pair] for corner in pieces.bounds)
    low, high = np.maximum(pieces.lo[box], low), np.minimum(pieces.hi[box], high)
    least = (high - low).min(axis=1)
    has_tenon = np.maximum.reduceat(least, start)[pair] > _TOUCH
    counts = (least > np.where(has_tenon, _TOUCH, -_TOUCH))[:, None]
    reach_low = np.minimum.reduceat(np.where(counts, low, np.inf), start)
    reach_high = np.maximum.reduceat(np.where(counts, high, -np.inf), start)
    reach: Floats = np.maximum(reach_high - reach_low, 0.0)
    return reach


def _finding(assembly: str, joint: Joint) -> Finding:
    fails, notes = joint.by > SPLITS, joint.by > FREELY
    verdict = Verdict.FAILS if fails else Verdict.NOTE if notes else Verdict.HOLDS
    limit = SPLITS if fails else FREELY
    names = f"{joint.one.name} and {joint.other.name}"
    moves = (
        f"Over the {joint.across:.0f} mm where {names} are joined ({joint.kind}), they differ by "
        f"{joint.swell:.1f} mm in the damp and {joint.shrink:.1f} mm in the dry."
    )
    return Finding(
        id=assembly.replace(" ", "_"),
        place=assembly,
        value=joint.by,
        limit=limit,
        margin=limit - joint.by,
        verdict=verdict,
        reason=f"{moves} {_advice(joint)}" if notes else moves,
        remedies=_remedies(joint.one) if notes else (),
    )


def _remedies(part: Part) -> tuple[str, ...]:
    """A narrower board before another cut, and that before another wood."""
    end = _ENDS.get(part.assembly, "")
    widths = tuple(name.format(end=end) for name in _WIDTHS.get(part.name, ()) if end)
    return (*widths, "board_cut", "frame_wood")


def _advice(joint: Joint) -> str:
    """How much of the joint may be glued: as much as differs by what glue gives."""
    words = _PART_OF_IT.get(joint.kind, _OTHERWISE)
    return words.format(glued=glued_part(joint), room=joint.by)


def glued_part(joint: Joint) -> int:
    """How much of a joint that moves more than glue gives may be glued, mm."""
    return 5 * math.floor(joint.across * FREELY / joint.by / 5)
