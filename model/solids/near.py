"""Pieces that come near each other, and the gap on each axis between their boxes.

All proofs start here: a piece is compared only with those whose bounding box comes within reach.
"""

from __future__ import annotations

from typing import NamedTuple

import numpy as np

from model.parts.pieces import Floats, Ints, Pieces
from model.units import Mm

TOUCH: Mm = 1e-3  # what proofs call touching: far above the 1 nm of the boxes, far below any saw


class Near(NamedTuple):
    """Pairs of pieces (m) within reach, `one` below `other`, and all pairs of their boxes (k).

    `start` (m) is the first box pair of each piece pair, `pair` (k) the piece pair of a box pair;
    `gap` (3, k) is the room between two boxes on each bed axis, mm: below zero they overlap there.
    """

    one: Ints
    other: Ints
    start: Ints
    pair: Ints
    box_one: Ints
    box_other: Ints
    gap: Floats


def near(pieces: Pieces, reach: Mm = TOUCH) -> Near:
    """All pairs of pieces whose bounding boxes come within `reach` of each other."""
    lo, hi = pieces.bounds
    close = np.tri(len(lo), k=-1, dtype=bool).T
    for axis in range(3):
        before = lo[:, axis, None] <= hi[None, :, axis] + reach
        close &= before
        close &= before.T
    one, other = np.nonzero(close)
    start, pair, box_one, box_other = box_pairs(pieces, one, other)
    gap = gaps(pieces.lo[box_one], pieces.hi[box_one], pieces.lo[box_other], pieces.hi[box_other])
    return Near(one, other, start, pair, box_one, box_other, gap)


def box_pairs(pieces: Pieces, one: Ints, other: Ints) -> tuple[Ints, Ints, Ints, Ints]:
    """Every box of `one` with every box of `other`: start of each pair, pair, box, other box."""
    many = np.diff(pieces.first)[other]
    count = np.diff(pieces.first)[one] * many
    start = np.cumsum(count) - count
    pair = np.repeat(np.arange(len(one)), count)
    at = np.arange(len(pair)) - start[pair]
    first, second = np.divmod(at, many[pair])
    return start, pair, pieces.first[one][pair] + first, pieces.first[other][pair] + second


def gaps(lo: Floats, hi: Floats, other_lo: Floats, other_hi: Floats) -> Floats:
    """Room between boxes row by row on each axis: (3, k), mm; below zero where they overlap."""
    return np.ascontiguousarray(np.maximum(other_lo - hi, lo - other_hi).T)


def largest(gap: Floats) -> Floats:
    """The largest of three gaps: how far two boxes are apart, below zero if they share space."""
    return np.asarray(np.maximum(np.maximum(gap[0], gap[1]), gap[2]))


def middle(gap: Floats) -> Floats:
    """The middle of three gaps: below zero where two boxes face each other squarely."""
    a, b, c = gap
    return np.asarray(np.maximum(np.minimum(a, b), np.minimum(np.maximum(a, b), c)))


def shared_volume(pieces: Pieces, box_one: Ints, box_other: Ints) -> Floats:
    """The space that boxes share, row by row, mm3."""
    low = np.maximum(pieces.lo[box_one], pieces.lo[box_other])
    high = np.minimum(pieces.hi[box_one], pieces.hi[box_other])
    return np.asarray(np.clip(high - low, 0, None).prod(axis=1))
