"""The wood of one part as boxes and as an outer surface, in the part's own axes.

A part is a stock box less box cuts. `wood_boxes` gives boxes that share no space, for proofs;
`surface` the faces of the same wood on shared corners, and `creases` the lines where faces meet.
"""

from __future__ import annotations

import numpy as np

from model.parts.pieces import Bools, Floats, Ints, cells, wood_boxes
from model.units import Mm3

__all__ = ["cells", "creases", "surface", "volume", "wood_boxes"]


def volume(boxes: Floats) -> Mm3:
    """What boxes (k, 2, 3) that share no space hold together."""
    return float((boxes[:, 1] - boxes[:, 0]).prod(axis=1).sum())


def surface(wood: Bools) -> tuple[Ints, Ints]:
    """Outer faces of cells of wood: corners (n, 3) as grid indices, and quads (m, 4) of corners.

    Quads run counter-clockwise seen from outside. They share corners and no corner lies within
    another quad's edge, so the surface is watertight.
    """
    n = np.array(wood.shape) + 1
    step = (int(n[1] * n[2]), int(n[2]), 1)
    full = np.zeros(np.array(wood.shape) + 2, np.int8)
    full[1:-1, 1:-1, 1:-1] = wood
    quads = []
    for axis in range(3):
        inner = [slice(1, -1)] * 3
        inner[axis] = slice(None)
        d = np.diff(full, axis=axis)[tuple(inner)]
        at = np.nonzero(d)
        corner = at[0] * step[0] + at[1] * step[1] + at[2]
        b, c = step[(axis + 1) % 3], step[(axis + 2) % 3]
        begins = d[at] > 0  # wood begins here: the face looks down the axis
        second, last = np.where(begins, c, b), np.where(begins, b, c)
        quads.append(np.stack([corner, corner + second, corner + b + c, corner + last], axis=1))
    used, corners = np.unique(np.concatenate(quads), return_inverse=True)
    grid = np.stack([used // step[0], used // step[1] % n[1], used % n[2]], axis=1)
    return grid, corners.reshape(-1, 4)


def creases(wood: Bools, bend: int | None = None) -> Ints:
    """Lines along which the surface of cells turns a corner: (m, 2, 3) grid indices, joined up.

    At the grid line `bend` across the length the outer faces change direction (a taper begins):
    lines are broken there, and the ring around the part is a crease as well.
    """
    full = np.zeros(np.array(wood.shape) + 2, np.int8)
    full[1:-1, 1:-1, 1:-1] = wood
    lines = []
    for axis in range(3):
        w = full.transpose(axis, (axis + 1) % 3, (axis + 2) % 3)[1:-1]
        a, b, c, d = w[:, :-1, :-1], w[:, 1:, :-1], w[:, :-1, 1:], w[:, 1:, 1:]
        wooden = a + b + c + d
        sharp = (wooden % 2 == 1) | ((wooden == 2) & (a == d))
        if bend is not None and axis != 0:
            sharp |= _ring(wooden, axis, bend)
        lines.append(np.roll(_runs(sharp, bend if axis == 0 else None), axis, axis=2))
    return np.concatenate(lines)


def _ring(wooden: Ints, axis: int, bend: int) -> Bools:
    """Edges along an axis on the outside of the stock, at the grid line where a taper begins."""
    ring = np.zeros(wooden.shape, bool)
    across, on_ring = (wooden, ring) if axis == 2 else (wooden.swapaxes(1, 2), ring.swapaxes(1, 2))
    for side in (0, -1):
        on_ring[:, bend, side] = across[:, bend, side] == 2
    return ring


def _runs(sharp: Bools, broken_at: int | None) -> Ints:
    """Join sharp edges that continue each other: (m, 2, 3), the first axis of `sharp` first."""
    padded = np.zeros((sharp.shape[0] + 2, *sharp.shape[1:]), np.int8)
    padded[1:-1] = sharp
    step = np.diff(padded, axis=0)
    begins, ends = step > 0, step < 0
    if broken_at is not None and 0 < broken_at < sharp.shape[0]:
        through = sharp[broken_at] & sharp[broken_at - 1]
        begins[broken_at] |= through
        ends[broken_at] |= through
    # With the first axis last, begins and ends of one line follow each other in the same order.
    p0, q0, k0 = np.nonzero(np.moveaxis(begins, 0, -1))
    p1, q1, k1 = np.nonzero(np.moveaxis(ends, 0, -1))
    return np.stack([np.stack([k0, p0, q0], 1), np.stack([k1, p1, q1], 1)], axis=1)
