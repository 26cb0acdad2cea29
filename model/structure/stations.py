"""What happens at stations along the members: stress and movement in every load case."""

from __future__ import annotations

from typing import NamedTuple

import numpy as np

from model.mechanics.duration import duration_factor
from model.mechanics.line_loads import Between, LineLoads, between
from model.mechanics.section import section_modulus, shear_stress, torsion_stress
from model.mechanics.space_frame import Solution
from model.parts.pieces import Floats, Ints
from model.structure.lattice import Lattice
from model.structure.record import Case
from model.structure.skeleton import DECK, Skeleton
from model.units import Mm

# mm between stations: a parabola over a slat's span is read within 2 %; what carries no load
# between its joints bends most at them.
_STEP_DECK, _STEP, _MOST = 110.0, 200.0, 12


# What the divisors of allowable stresses hold beside the time: 2.1 is 1.6 for ten years, 1.3 for
# safety. Source: ASTM D245, from memory
SAFETY = 1.3
EDGE_SPREAD = 0.3  # of the span: 2.4 / 2 x 1/2 x 1/2, at the middle of it


class Stations(NamedTuple):
    """Stations (s), rising by piece and along it. Those of piece i of the frame are rows `first[i]`
    to `first[i + 1]`; `at` is mm from the piece's near end, `on_member` from the member's start.
    """

    piece: Ints
    member: Ints
    on_member: Floats
    at: Floats
    first: Ints


class Response(NamedTuple):
    """Per load case: `moved` (s, 3, c) and `nodes` (n, 3, c) mm on the bed's axes; `force`
    (j, 6, c) of the joints, N and N mm; `inner` forces at the stations.
    """

    moved: Floats
    nodes: Floats
    force: Floats
    inner: Between


def stations(frame: Lattice) -> Stations:
    """Both ends of every member, and more on long ones, closest on the deck."""
    length = frame.frame.members.length
    is_deck = frame.bones.is_role(*DECK)[frame.member_piece]
    step = np.where(is_deck, _STEP_DECK, _STEP)
    count = np.clip(np.ceil(length / step).astype(np.intp) + 1, 2, _MOST)
    count |= is_deck  # odd: a deck bends most in the middle of a span, where it is knelt on
    member = np.repeat(np.arange(len(length)), count)
    place = np.arange(len(member)) - np.repeat(np.cumsum(count) - count, count)
    on_member = place / (count[member] - 1) * length[member]
    piece = frame.member_piece[member]
    first = np.searchsorted(piece, np.arange(len(frame.bones.piece) + 1))
    return Stations(piece, member, on_member, frame.member_from[member] + on_member, first)


def response(frame: Lattice, here: Stations, loads: LineLoads, solution: Solution) -> Response:
    """What the solved frame does at its stations."""
    m = frame.frame.members
    stiff = (m.moe * m.area, m.moe * m.about_y, m.moe * m.about_z)
    inner = between(loads, here.member, here.on_member, solution.ends, solution.end_forces, stiff)
    turn = np.swapaxes(frame.bones.axes[here.piece], 1, 2)
    moved = np.matmul(turn, inner.moved)
    return Response(moved, solution.moved[:, :3], solution.joint_force, inner)


def stresses(bones: Skeleton, piece: Ints, inner: Between) -> tuple[Floats, Floats]:
    """Greatest stress along the grain, and greatest shear stress, MPa: (s, c) each.

    Bending about both axes and pull or push add up; so do shear and twist.
    Source: Wood Handbook 2021 (FPL-GTR-282), equations 9-13 and 9-14
    """
    _, width, thickness = (side[:, None] for side in bones.size[piece].T)
    area = width * thickness
    bending = np.abs(inner.moment_z) / section_modulus(thickness, width)
    bending += np.abs(inner.moment_y) / section_modulus(width, thickness)
    bending += np.abs(inner.axial) / area
    shear = shear_stress(np.hypot(inner.shear_y, inner.shear_z), width, thickness)
    return bending, shear + torsion_stress(inner.twist, width, thickness)


def crowding(frame: Lattice, cases: tuple[Case, ...], pad: Mm) -> Floats:
    """(p, c): how many times harder a piece is bent where a pad presses on a part of its width.

    A knee at the edge of a panel bends a strip as wide as the pad and 0.3 of the span.
    Source: BS 8110-1:1997, 3.5.2.2, concentrated loads on solid slabs: load width and 2.4 x (1 -
    x / l), half of the latter at a free edge, from memory; used here for sheets
    """
    found = np.ones((len(frame.bones.piece), len(cases)))
    local = np.flatnonzero([case.key in ("kneel", "drop") for case in cases])
    for i in frame.bones.of_role("deck panel").tolist():
        at = frame.node_at[frame.first_node[i] : frame.first_node[i + 1]]
        strip = pad + EDGE_SPREAD * float(np.diff(at).max(initial=0.0))
        found[i, local] = max(float(frame.bones.size[i, 1]) / strip, 1.0)
    return found


def lasting(bones: Skeleton, cases: tuple[Case, ...]) -> Floats:
    """(p, c): what a piece may bear in a case, as a share of what it may for ten years.

    A load that lies less long may be larger, and so may a test load: its margin is in the load.
    """
    products = {
        product: [
            duration_factor(case.time, product) * (SAFETY if case.is_test else 1.0)
            for case in cases
        ]
        for product in set(bones.product)
    }
    return np.array([products[product] for product in bones.product]).reshape(-1, len(cases))
