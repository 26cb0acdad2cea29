"""Where pieces of the frame bear on each other and on the floor, and what each joint holds.

End conditions, on the safe side for sag: a piece that rests, or is fixed by screws or pocket
screws, turns freely on its support but does not roll over, and slides on what it merely lies on;
tenons, dowels and glue between end rails and posts hold rigidly, and so do the screws of legs and
packers; stiles turn as far as the screws, dowels or tenons at their ends give. Knock-down joints
give: see `knock_down`. The floor only pushes, and holds the posts by friction; legs all but slide.
"""

from __future__ import annotations

from typing import NamedTuple

import numpy as np

from model.part import Hold
from model.parts.pieces import Bools, Floats, Ints, Pieces
from model.solids.holding import Holding
from model.structure.joints import (
    FLOOR,
    FRICTION,
    GLUED,
    HINGE,
    KNOCK_DOWN,
    LEVEL,
    REST,
    RIGID,
    SLIDES,
    STANDS,
    STIFF,
    STILE,
    TIGHT,
    TURNS,
    USUAL_STILE,
    Contacts,
    joined,
)
from model.structure.knock_down import knock_down_joints
from model.structure.skeleton import DECK, FASTENED, PROPS, Skeleton, own_names

_SAME_END = 80.0  # mm: two joints of a bearer nearer than this are at the same end of it


class _Pairs(NamedTuple):
    """Pairs of the bed's pieces that meet, and how; whether pocket screws hold one to the other."""

    one: Ints
    other: Ints
    kind: Ints
    on_top: Bools
    screwed: Bools


def contacts(
    pieces: Pieces, holding: Holding, touching: Ints, bones: Skeleton, host: Ints
) -> Contacts:
    """Every joint of the frame: between its pieces, of its sides to the posts, and to the floor.

    `host`: see `hosts`.
    """
    return joined(
        _between(pieces, _pairs(pieces, holding, touching, bones, host), bones, host),
        knock_down_joints(pieces, holding, bones, host),
        _on_floor(pieces, holding, bones),
    )


def hosts(pieces: Pieces, holding: Holding, bones: Skeleton) -> Ints:
    """(n,): the piece of the frame that each of the bed's pieces is or is fastened to, or -1."""
    host = bones.host.copy()
    fastened = [name in FASTENED for name in own_names(pieces.rules)]
    pair = np.array(fastened, bool)[pieces.rule[holding.one]] & (host[holding.other] >= 0)
    host[holding.one[pair]] = host[holding.other[pair]]
    return host


def _pairs(pieces: Pieces, holding: Holding, touching: Ints, bones: Skeleton, host: Ints) -> _Pairs:
    """Pieces that hold each other, and the deck where it lies on beam and battens; each once."""
    kinds = np.array([_kind(hold) for hold in holding.holds])[holding.hold]
    one, other = host[holding.one], host[holding.other]
    kept = (one >= 0) & (other >= 0) & (one != other) & (kinds != KNOCK_DOWN)
    at = np.flatnonzero(kept)
    prop = bones.is_role(*PROPS)
    is_prop = prop[one[at]] | prop[other[at]]
    kind = np.where(bones.is_role("stile")[one[at]], STILE, kinds[at])
    kind = np.where(is_prop, RIGID, kind)
    deck, below = bones.is_role(*DECK), bones.is_role("centre beam", "deck batten")
    first, second = bones.host[touching].T
    up, down = deck[first] & below[second], deck[second] & below[first]
    on_top = np.concatenate([touching[up], touching[down][:, ::-1]])
    screwed = np.array([hold.joint == "pocket screw" for hold in holding.holds], bool)
    found = _Pairs(
        one=np.concatenate([holding.one[at], on_top[:, 0]]),
        other=np.concatenate([holding.other[at], on_top[:, 1]]),
        kind=np.concatenate([kind, np.full(len(on_top), REST)]),
        on_top=np.repeat([False, True], [len(at), len(on_top)]),
        screwed=np.concatenate([screwed[holding.hold[at]], np.zeros(len(on_top), bool)]),
    )
    return _each_once(found, host)


def _each_once(pairs: _Pairs, host: Ints) -> _Pairs:
    """Two pieces that say of each other that they meet have one joint."""
    both = np.sort(np.stack([host[pairs.one], host[pairs.other]], 1), axis=1)
    _, first = np.unique(both, axis=0, return_index=True)
    first.sort()
    return _Pairs(
        pairs.one[first], pairs.other[first], pairs.kind[first], pairs.on_top[first],
        pairs.screwed[first],
    )  # fmt: skip


def _kind(hold: Hold) -> int:
    if hold.joint == "bed-rail connector":
        return KNOCK_DOWN  # its plates and bolts are looked at one by one
    if hold.joint == "rests":
        return REST
    return RIGID if hold.glued else HINGE


def _between(pieces: Pieces, pairs: _Pairs, bones: Skeleton, host: Ints) -> Contacts:
    low, high = (bound for bound in pieces.bounds)
    low = np.maximum(low[pairs.one], low[pairs.other])
    high = np.minimum(high[pairs.one], high[pairs.other])
    extent = np.maximum(high - low, 0.0)
    one = host[pairs.one]
    found = Contacts(
        one=one,
        other=host[pairs.other],
        at=(low + high) / 2,
        kind=pairs.kind,
        stiffness=_stiffness(bones, one, pairs.kind, pairs.screwed),
        pushes=_lifts(pairs, bones, one)[:, None] * np.array([0.0, 0.0, 1.0]),
        area=extent[:, 0] * extent[:, 1],
    )
    return found.only(_once_at_each_end(found, bones))


def _once_at_each_end(joints: Contacts, bones: Skeleton) -> Bools:
    """A bearer that meets a stile and the rail below it turns on one of them: the stile."""
    along = np.einsum("ji,ji->j", joints.at - bones.start[joints.one], bones.axes[joints.one, 0])
    is_bearer = bones.is_role("bearer")[joints.one]
    on_rail = is_bearer & bones.is_role("bottom rail")[joints.other]
    on_stile = is_bearer & bones.is_role("stile")[joints.other]
    near = np.abs(along[:, None] - along[on_stile][None]) < _SAME_END
    same = joints.one[:, None] == joints.one[on_stile][None]
    return np.asarray(~(on_rail & np.any(near & same, axis=1)))


def _lifts(pairs: _Pairs, bones: Skeleton, one: Ints) -> Bools:
    """Slats that no screw holds lift off their cleats. Wherever else the deck rests, on its beam
    and battens, and panels by their weight, it is taken to stay down.
    """
    is_slat = bones.is_role("slat")[one]
    return np.asarray((pairs.kind == REST) & is_slat & ~pairs.on_top)


def _stiffness(bones: Skeleton, one: Ints, kind: Ints, screwed: Bools) -> Floats:
    """(j, 6): tight upright, as the kind says level; against turning of the piece's own axes.

    The end of a stile turns by what holds it, and the less the farther apart that stands.
    """
    spread = (bones.size[one, 1] / USUAL_STILE) ** 2 * np.where(screwed, 1.0, GLUED / STIFF)
    turns = TURNS[kind] * np.where(kind == STILE, spread, 1.0)[:, None]
    on_bed = np.einsum("jik,ji->jk", bones.axes[one] ** 2, turns)
    level = LEVEL[kind][:, None]
    return np.concatenate([level, level, np.full_like(level, TIGHT), on_bed], axis=1)


def _on_floor(pieces: Pieces, holding: Holding, bones: Skeleton) -> Contacts:
    """Each foot is pushed up by the floor and kept from sliding by friction, legs but weakly."""
    grounded = holding.grounded.copy()
    on_glide = grounded[holding.other] & (bones.host[holding.other] < 0)
    grounded[holding.one[on_glide]] = True
    feet = np.flatnonzero(grounded & (bones.host >= 0))
    low, high = (bound[feet] for bound in pieces.bounds)
    at = np.concatenate([(low[:, :2] + high[:, :2]) / 2, low[:, 2:]], axis=1)
    one, count = bones.host[feet], len(feet)
    stiffness, pushes = np.zeros((2 * count, 6)), np.zeros((2 * count, 3))
    stiffness[:count, 2], pushes[:count, 2] = TIGHT, 1.0
    grip = np.where(bones.is_role("post")[one], TIGHT, SLIDES)
    stiffness[count:, :2] = grip[:, None]
    return Contacts(
        one=np.tile(one, 2),
        other=np.full(2 * count, FLOOR),
        at=np.tile(at, (2, 1)),
        kind=np.repeat([STANDS, FRICTION], count),
        stiffness=stiffness,
        pushes=pushes,
        area=np.tile(np.prod(high[:, :2] - low[:, :2], axis=1), 2),
    )
