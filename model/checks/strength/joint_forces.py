"""What the frame asks of the fasteners at its joints, load case by load case."""

from __future__ import annotations

from collections.abc import Mapping
from functools import lru_cache
from typing import NamedTuple

import numpy as np

from model.materials import Allowed, Material
from model.materials.row_allowable import allowed_of
from model.mechanics.duration import LoadTime, duration_factor
from model.mechanics.fasteners.strengths import Design
from model.mechanics.fasteners.withdrawal import (
    design_head_pull_through,
    design_screw_withdrawal,
    threaded_in,
)
from model.parts.pieces import Bools, Floats, Ints, Pieces
from model.solids.screwing import ScrewPoint
from model.structure.record import Carried, Case
from model.structure.stations import SAFETY
from model.units import Mm

HEAD_SHARE = 2.0  # of a wood screw's shank, its head; Source: table of wood screws, least of them
MOST_LASTING = 1.6  # no joint bears more, however short the load; Source: NDS 2018, 11.3.2


class JointForces(NamedTuple):
    """Some joints (j) of the frame: the pieces that meet, where (j, 3) mm, and what the second does
    to the first in each case (c, j, 3): force in N, moment in N mm, on the bed's axes.
    """

    one: Ints
    other: Ints
    at: Floats
    force: Floats
    moment: Floats


def forces_between(carried: Carried, pieces: Pieces, one: Bools, other: Bools) -> JointForces:
    """The joints in which a piece marked in `one` (n,) bears on one marked in `other` (n,)."""
    joints = carried.joints
    first, second = joints.pieces.T
    rows = np.flatnonzero(one[first] & (second >= 0) & other[second])
    force = joints.force[:, rows]
    return JointForces(first[rows], second[rows], joints.at[rows], force[..., :3], force[..., 3:])


def made_by(pieces: Pieces, *rules: str) -> Bools:
    """(n,): pieces made by one of these rules, by full name or, without a dot, in any scope."""
    return _named(pieces.rules, rules)[pieces.rule]


@lru_cache(maxsize=128)
def _named(known: tuple[str, ...], rules: tuple[str, ...]) -> Bools:
    return np.array([r in rules or r.rpartition(".")[2] in rules for r in known], bool)


def lasting(cases: tuple[Case, ...]) -> Floats:
    """(c,): what a fastener may bear in each case, as a share of what it may for ten years.

    As for the wood itself, a standard's test load asks for no second margin.
    """
    return _lasting(tuple((case.time, case.is_test) for case in cases))


@lru_cache(maxsize=16)
def _lasting(cases: tuple[tuple[LoadTime, bool], ...]) -> Floats:
    return np.array(
        [
            min(duration_factor(time), MOST_LASTING) * (SAFETY if is_test else 1.0)
            for time, is_test in cases
        ]
    )


def uses(
    lateral: Design | Floats, withdrawal: Design | Floats, across: Floats, out: Floats
) -> Floats:
    """Share of what screws may bear for ten years, for forces across them and out of the wood.

    Where one may not be drawn at all (end grain), the least pull uses it without end. The equation
    alone would let a pull make a weakly held push bear more: either counts by itself too.
    Source: NDS 2018, equation 12.4-1, from memory
    """
    both = np.hypot(across, out)
    with np.errstate(invalid="ignore", divide="ignore"):
        drawn = np.where(out > 0, out / withdrawal, 0.0)
        pushed = across / lateral
        together = (across * pushed + out * drawn) / both
        return np.where(both > 0, np.fmax(together, np.maximum(pushed, drawn)), 0.0)


def drawn_out(point: ScrewPoint, bite: Mm, gravity: float, side: float) -> Design:
    """What a screw bears that is drawn out of the wood that holds its point, `bite` deep, or whose
    head is drawn through the wood before it: specific gravities.
    """
    screw = point.screw
    out = design_screw_withdrawal(gravity, screw.diameter, threaded_in(bite, screw.length))
    through = design_head_pull_through(side, HEAD_SHARE * screw.diameter, screw.length - bite)
    return min(out, through)


def wood_of(pieces: Pieces, piece: int, materials: Mapping[str, Material]) -> Allowed:
    """What the wood of a piece may bear; of screws only its specific gravity is asked."""
    return allowed_of(materials[pieces.parts[pieces.part[piece]].material])


def heads(pieces: Pieces, points: tuple[ScrewPoint, ...]) -> Floats:
    """Where the heads of screws lie on the bed: (s, 3) mm."""
    at = np.array([point.screw.at for point in points], float).reshape(-1, 3)
    matrix = pieces.matrices[[point.piece for point in points]]
    return np.asarray(np.einsum("sij,sj->si", matrix[:, :3, :3], at) + matrix[:, :3, 3])


def called(case: Case) -> str:
    """The load case within a sentence."""
    return f"{case.title[:1].lower()}{case.title[1:]}"
