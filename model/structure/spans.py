"""How far pieces sag between what carries them, and how far they may."""

from __future__ import annotations

from typing import NamedTuple

import numpy as np

from model.parts.pieces import Bools, Floats, Ints
from model.structure.joints import FLOOR
from model.structure.lattice import Lattice
from model.structure.record import Case
from model.structure.skeleton import PROPS
from model.units import Mm


class SagLimit(NamedTuple):
    """How far pieces of a role may sag: `share` of the span, at most `most` mm, and in which load
    cases it is asked. `tight` is the share from which on it is called tight.
    """

    share: float
    most: Mm
    tight: float
    cases: tuple[str, ...]
    source: str


LYING = ("rest", "lying")
_DECK = SagLimit(
    1 / 180, np.inf, 0.75, LYING,
    "span/180, better span/240, for bed slats under sleepers: common practice, no source",
)  # fmt: skip
_STRAIGHT = SagLimit(
    1 / 300, 6.0, 0.9, LYING,
    "span/300 and 6 mm, so that joints and reveals stay true: common practice, no source",
)  # fmt: skip
_BEARER = SagLimit(
    np.inf, 1.6, 0.9, ("rest",),
    "1/16 in under full drawers, where more would close a reveal or bind a slide: common practice, "
    "no source",
)  # fmt: skip
SAG_LIMITS = {
    "slat": _DECK,
    "deck panel": _DECK,
    "deck batten": _DECK,
    "centre beam": _STRAIGHT,
    "side rail": _STRAIGHT,
    "bottom rail": _STRAIGHT,
    "divider": _STRAIGHT,
    "bearer": _BEARER,
}
# Pieces that hang at their ends: what stands between is carried by them, and no support.
_END_TO_END = ("side rail", "bottom rail")


class Supports(NamedTuple):
    """Places (k) at which pieces of the frame are carried, rising by piece and along it."""

    piece: Ints
    node: Ints
    at: Floats


def supports(frame: Lattice) -> Supports:
    """Where each piece rests: on what holds it, on legs under it; a rail at its outer joints."""
    joints, bones = frame.joints, frame.bones
    rests = joints.other != FLOOR
    props = bones.is_role(*PROPS)[joints.one] & rests
    nodes = np.concatenate([frame.joint_node[0][rests], frame.joint_node[1][props]])
    rails = bones.of_role(*_END_TO_END)
    rails = rails[frame.first_node[rails + 1] > frame.first_node[rails]]
    nodes = nodes[~bones.is_role(*_END_TO_END)[frame.node_piece[nodes]]]
    ends = np.concatenate([frame.first_node[rails], frame.first_node[rails + 1] - 1])
    node = np.unique(np.concatenate([nodes, ends]))
    return Supports(frame.node_piece[node], node, frame.node_at[node])


def sags(
    frame: Lattice, held: Supports, piece: Ints, at: Floats, down: Floats, nodes: Floats
) -> Floats:
    """How far stations lie below the line between the supports beside them: (s, c), mm.

    `down` (s, c): how far each station goes down; `nodes` (n, c): how far each node does. Beyond
    the last support the line goes on level.
    """
    far = float(frame.bones.size[:, 0].max(initial=0.0)) + 1.0
    key, key_held = piece * far + at, held.piece * far + held.at
    after = np.searchsorted(key_held, key - 1e-6)
    before = np.clip(after - 1, 0, None)
    after = np.clip(after, None, max(len(key_held) - 1, 0))
    if not len(key_held):
        return np.zeros_like(down)
    own_before, own_after = held.piece[before] == piece, held.piece[after] == piece
    before, after = np.where(own_before, before, after), np.where(own_after, after, before)
    span = held.at[after] - held.at[before]
    share = np.where(span > 0, (at - held.at[before]) / np.where(span > 0, span, 1.0), 0.0)[:, None]
    line = nodes[held.node[before]] * (1 - share) + nodes[held.node[after]] * share
    return np.where((own_before | own_after)[:, None], down - line, 0.0)


def sag_limits(frame: Lattice, held: Supports) -> Floats:
    """How far each piece of the frame may sag, mm; inf where no limit applies: (p,).

    What runs on past its last support may sag as a span twice as long: so do its two halves.
    """
    span = np.zeros(len(frame.bones.piece))
    same = held.piece[1:] == held.piece[:-1]
    np.maximum.at(span, held.piece[1:][same], np.diff(held.at)[same])
    for free in (held.at, frame.bones.size[held.piece, 0] - held.at):
        least = np.full(len(span), np.inf)
        np.minimum.at(least, held.piece, free)
        np.maximum.at(span, held.piece, 2 * least[held.piece])
    limits = np.full(len(span), np.inf)
    for i, role in enumerate(frame.bones.role):
        if role in SAG_LIMITS and span[i] > 0:
            limit = SAG_LIMITS[role]
            limits[i] = min(limit.share * span[i], limit.most)
    return limits


def judged(roles: tuple[str, ...], cases: tuple[Case, ...]) -> Bools:
    """(p, c): whether a piece's sag is judged in a case."""
    known = {
        role: [case.key in limit.cases for case in cases] for role, limit in SAG_LIMITS.items()
    }
    return np.array([known.get(role, [False] * len(cases)) for role in roles], bool)
