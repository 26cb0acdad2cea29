"""Areas of the bed's wood: what is glued, and what shows once fixed pieces cover each other.

All from the pieces as they are cut and stand: box by box, mm2. Holes, eased edges and tapers are
left out: they change an area by less than a brush does.
"""

from __future__ import annotations

import math
from typing import NamedTuple

import numpy as np

from model.bed import Bed
from model.parts.pieces import Bools, Floats, Ints, Pieces
from model.solids.holding import reach_of
from model.solids.near import TOUCH, box_pairs, gaps, near
from model.units import Mm2


class Met(NamedTuple):
    """Pairs of pieces (m) that a joint fixes to each other, each once, `one` below `other`.

    `area` (m) is what they cover of each other, mm2; `glued` whether the joint is glued.
    """

    one: Ints
    other: Ints
    area: Floats
    glued: Bools


def fixed(bed: Bed) -> Met:
    """Every pair of pieces that stays together when the bed comes apart, and the area between."""
    holding, count = bed.proof.holding, len(bed.pieces)
    holds = holding.holds
    stays = np.array([not hold.knock_down for hold in holds], bool)[holding.hold]
    at = np.flatnonzero(stays)
    pair = np.sort(np.stack([holding.one[at], holding.other[at]]), axis=0)
    key, which = np.unique(pair[0] * count + pair[1], return_inverse=True)
    within, glued = np.zeros(len(key)), np.zeros(len(key), bool)
    np.maximum.at(within, which, np.array([hold.within for hold in holds])[holding.hold[at]])
    np.logical_or.at(glued, which, np.array([hold.glued for hold in holds])[holding.hold[at]])
    one, other = np.divmod(key, count)
    return Met(one, other, _areas(bed, one, other, within), glued)


def _areas(bed: Bed, one: Ints, other: Ints, within: Floats) -> Floats:
    """What pieces turn to each other with no more room than `within`: (m,), mm2."""
    close = near(bed.pieces, reach_of(bed.parts))
    known = {pair: k for k, pair in enumerate(zip(one.tolist(), other.tolist(), strict=True))}
    pairs = zip(close.one.tolist(), close.other.tolist(), strict=True)
    joint = np.array([known.get(pair, -1) for pair in pairs], np.intp)[close.pair]
    kept = np.flatnonzero(joint >= 0)
    a, b, gap = close.box_one[kept], close.box_other[kept], close.gap[:, kept]
    faced = _faced(bed.pieces, a, b, gap, within[joint[kept]] + TOUCH)
    found: Floats = np.bincount(joint[kept], faced, len(one)).astype(float)
    return found


def _faced(pieces: Pieces, a: Ints, b: Ints, gap: Floats, within: Floats) -> Floats:
    """The area that two boxes turn to each other across a room of at most `within`, mm2."""
    shared = np.minimum(pieces.hi[a], pieces.hi[b]) - np.maximum(pieces.lo[a], pieces.lo[b])
    total = np.zeros(len(a))
    for axis in range(3):
        first, second = (axis + 1) % 3, (axis + 2) % 3
        faces = (gap[axis] >= -TOUCH) & (gap[axis] <= within)
        faces &= (shared[:, first] > TOUCH) & (shared[:, second] > TOUCH)
        total += np.where(faces, shared[:, first] * shared[:, second], 0.0)
    return total


def glued_area(bed: Bed, met: Met) -> Mm2:
    """All that glue joins of one part to another: faces, and the rounds of dowels."""
    is_dowel = np.array([part.is_round for part in bed.pieces.parts])[bed.pieces.part]
    flat = met.glued & ~is_dowel[met.one] & ~is_dowel[met.other]
    return float(met.area[flat].sum()) + _dowels(bed)


def _dowels(bed: Bed) -> Mm2:
    parts = [bed.pieces.parts[k] for k in bed.pieces.part.tolist()]
    glued = [part for part in parts if part.is_round and any(hold.glued for hold in part.held)]
    return math.fsum(math.pi * part.size[1] * part.size[0] for part in glued)


def surface(pieces: Pieces) -> Floats:
    """The whole surface of every piece, grooves and mortises included: (n,), mm2."""
    side = pieces.hi - pieces.lo
    skin = 2 * (side[:, 0] * side[:, 1] + side[:, 1] * side[:, 2] + side[:, 2] * side[:, 0])
    total = np.bincount(pieces.piece, skin, len(pieces)).astype(float)
    every = np.arange(len(pieces))
    _, pair, a, b = box_pairs(pieces, every, every)
    kept = np.flatnonzero(a != b)
    a, b, pair = a[kept], b[kept], pair[kept]
    gap = gaps(pieces.lo[a], pieces.hi[a], pieces.lo[b], pieces.hi[b])
    inside = _faced(pieces, a, b, gap, np.full(len(a), TOUCH))
    # Each shared face is met from both sides, and is no skin of either box.
    found: Floats = total - np.bincount(pair, inside, len(pieces))
    return found


def shown(bed: Bed, met: Met) -> Floats:
    """What of each piece is not covered by what it is fixed to: (n,), mm2."""
    covered = np.bincount(met.one, met.area, len(bed.pieces))
    covered += np.bincount(met.other, met.area, len(bed.pieces))
    left: Floats = np.maximum(surface(bed.pieces) - covered, 0.0)
    return left
