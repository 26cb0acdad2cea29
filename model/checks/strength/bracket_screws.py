"""Do the screws under a bearer's ends hold it: angle brackets, or screws that slant through it?

Asked of every row.
"""

from collections.abc import Iterator, Mapping
from dataclasses import replace
from functools import lru_cache

import numpy as np

from model.checks.record import Finding, at_most, check
from model.checks.strength.joint_forces import (
    called,
    forces_between,
    lasting,
    made_by,
    uses,
    wood_of,
)
from model.materials import Material
from model.mechanics.fasteners.dowel_bearing import STEEL_PLATE
from model.mechanics.fasteners.lateral import ScrewJoint, design_screw_lateral, wood_side
from model.mechanics.fasteners.strengths import Design
from model.mechanics.fasteners.together import bracket_screws
from model.mechanics.fasteners.withdrawal import design_screw_withdrawal, threaded_in
from model.parts.pieces import Bools, Floats, Pieces
from model.solids.screwing import ScrewPoint
from model.structure.record import Carried, Unjudged
from model.units import Count, Mm

SLANTED = 0.83  # of a screw square to the wood, sideways; Source: NDS 2018, 12.5.4.2, from memory
SOURCE = "NDS 2018, 12.2.2, 12.3.1 and 12.4.1, from memory"


@check(
    "strength",
    "Screws of the bearers' brackets hold",
    source=f"{SOURCE}; the leaf turns about its lower edge: first principles",
    remedies=("bearer_leg_span", "bearer_wood", "bearer_stock", "frame_stock"),
)
def brackets_hold(
    strength: Carried | Unjudged,
    pieces: Pieces,
    screw_points: tuple[ScrewPoint, ...],
    materials: Mapping[str, Material],
    bracket_leaf: Mm,
    bracket_plate: Mm,
    row_name: str,
) -> Iterator[Finding]:
    """Full drawers, and a beam where it stands on the bearers, push brackets off the frame."""
    brackets = {f"{row_name}.{end}_brackets" for end in ("near", "far")}
    points = [p for p in screw_points if p.rules[0] in brackets and p.bite > p.screw.diameter]
    ends = _bearer_ends(strength, pieces, row_name)
    if not points or ends is None or isinstance(strength, Unjudged):
        return
    push, lift = ends
    bearer = f"{row_name}.bearers"
    into_frame = [p for p in points if bearer not in p.rules[1:]]
    into_bearer = [p for p in points if bearer in p.rules[1:]]
    time = lasting(strength.cases)
    if into_frame:
        sizes = (bracket_leaf, bracket_plate)
        yield _pushed(strength, pieces, into_frame, materials, push / time, *sizes)
    if into_bearer and lift.max() > 0:
        yield _lifted(strength, pieces, into_bearer, materials, lift / time)


def _bearer_ends(
    strength: Carried | Unjudged, pieces: Pieces, row: str
) -> tuple[Floats, Floats] | None:
    """(c,): how hard the worst end of a bearer of the row pushes down, and lifts, N."""
    if isinstance(strength, Unjudged):
        return None
    bearers = made_by(pieces, f"{row}.bearers")
    legs: Bools = ~made_by(pieces, "bearer_legs", "divider_legs", "beam_packer_pieces")
    joints = forces_between(strength, pieces, bearers, legs)
    if not len(joints.one):
        return None
    up = joints.force[:, :, 2]
    return np.maximum(up, 0.0).max(axis=1), np.maximum(-up, 0.0).max(axis=1)


def _pushed(
    carried: Carried,
    pieces: Pieces,
    points: list[ScrewPoint],
    materials: Mapping[str, Material],
    push: Floats,
    leaf: Mm,
    plate: Mm,
) -> Finding:
    """The screws of the upright leaf, under a bearer that rests on the middle of the other."""
    worst = min(points, key=lambda p: p.bite)
    heights = _heights(points)
    forces = bracket_screws(1.0, leaf / 2, heights)
    upper = max(forces, key=lambda force: force.withdrawal)
    wood = wood_of(pieces, worst.into, materials).specific_gravity
    lateral = _in_steel(worst.screw.diameter, worst.bite, plate, wood)
    thread = threaded_in(worst.bite, worst.screw.length)
    out = design_screw_withdrawal(wood, worst.screw.diameter, thread)
    use = uses(lateral, out, push * upper.lateral, push * upper.withdrawal)
    case = int(use.argmax())
    load = float(push[case] * lasting(carried.cases)[case])
    return replace(
        at_most(100 * float(use[case]), 100.0, tight=10.0, unit="%"),
        reason=(
            f"A bearer's end pushes its bracket down with {load:.0f} N, "
            f"{called(carried.cases[case])}: {load * upper.lateral:.0f} N across and "
            f"{load * upper.withdrawal:.0f} N outwards on the upper of {len(heights)} screws in "
            "the frame."
        ),
        pieces=(worst.piece, worst.into),
    )


def _heights(points: list[ScrewPoint]) -> tuple[Mm, ...]:
    """Heights of one bracket's screws above its lower edge; its width runs upwards."""
    first = points[0].piece
    return tuple(float(p.screw.at[1]) for p in points if p.piece == first)


def _lifted(
    carried: Carried,
    pieces: Pieces,
    points: list[ScrewPoint],
    materials: Mapping[str, Material],
    lift: Floats,
) -> Finding:
    """The screws up into a bearer whose end lifts: the ones that its bracket holds it by."""
    worst = min(points, key=lambda p: p.bite)
    count = sum(p.piece == worst.piece for p in points)
    wood = wood_of(pieces, worst.into, materials).specific_gravity
    thread = threaded_in(worst.bite, worst.screw.length)
    held = design_screw_withdrawal(wood, worst.screw.diameter, thread)
    case = int(lift.argmax())
    time = float(lasting(carried.cases)[case])
    found = at_most(float(lift[case]) * time / count, held * time, tight=held / 10, unit="N")
    return replace(
        found,
        id="lifted",
        title="Screws hold the bearers down on their brackets",
        reason=(
            f"A bearer's end lifts with {float(lift[case]) * time:.0f} N, "
            f"{called(carried.cases[case])}, and hangs on {count} screws."
        ),
        pieces=(worst.piece, worst.into),
    )


@lru_cache(maxsize=64)
def _in_steel(shank: Mm, bite: Mm, plate: Mm, gravity: float) -> Design:
    return design_screw_lateral(
        ScrewJoint(
            shank=shank, side=plate, side_bearing=STEEL_PLATE, main_gravity=gravity, bite=bite
        )
    )


@check(
    "strength",
    "Screws through the bearers' ends hold",
    source=f"{SOURCE}; slanted screws: 12.5.4.2, from memory",
    remedies=("bearer_fixing", "bearer_leg_span", "bearer_wood"),
)
def bearer_screws_hold(
    strength: Carried | Unjudged,
    pieces: Pieces,
    screw_points: tuple[ScrewPoint, ...],
    materials: Mapping[str, Material],
    row_name: str,
) -> Finding | None:
    """A bearer without brackets hangs on two screws that slant through each of its ends."""
    points = [
        p for p in screw_points if p.rules[0] == f"{row_name}.bearers" and p.bite > p.screw.diameter
    ]
    ends = _bearer_ends(strength, pieces, row_name)
    if not points or ends is None or isinstance(strength, Unjudged):
        return None
    worst = min(points, key=lambda p: p.bite)
    count = _at_one_end(points)
    bearer, frame = (wood_of(pieces, k, materials) for k in (worst.piece, worst.into))
    time = lasting(strength.cases)
    load = np.maximum(*ends)
    case = int((load / time).argmax())
    joint = ScrewJoint(
        shank=worst.screw.diameter, side=worst.screw.length - worst.bite,
        side_bearing=wood_side(bearer.specific_gravity), main_gravity=frame.specific_gravity,
        bite=worst.bite,
    )  # fmt: skip
    held = SLANTED * design_screw_lateral(joint) * float(time[case])
    return replace(
        at_most(float(load[case]) / count, held, tight=held / 10, unit="N"),
        reason=(
            f"A bearer's end hangs with {float(load[case]):.0f} N on {count} slanting screws, "
            f"{called(strength.cases[case])}."
        ),
        pieces=(worst.piece, worst.into),
    )


def _at_one_end(points: list[ScrewPoint]) -> Count:
    """How many screws of one bearer go out at the same end."""
    first = points[0]
    return sum(
        p.piece == first.piece and p.screw.toward[0] * first.screw.toward[0] > 0 for p in points
    )
