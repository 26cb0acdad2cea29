"""The wood of one part as an outer surface, in the part's own axes.

`surface` gives the faces of its wood on shared corners, `creases` the lines where faces meet,
`volume` what its boxes hold (`model/parts/wood.py`).
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence

import numpy as np
import numpy.typing as npt

from model.parts.pieces import Bools, Floats, Ints
from model.units import Mm3


def volume(boxes: Floats) -> Mm3:
    """What boxes (k, 2, 3) that share no space hold together."""
    return float((boxes[:, 1] - boxes[:, 0]).prod(axis=1).sum())


def stacked(woods: Sequence[Bools]) -> Bools:
    """Cells of several shapes in one array (s, ...) with empty cells all around each."""
    size = np.max([wood.shape for wood in woods], axis=0) + 2
    full = np.zeros((len(woods), *size), bool)
    for k, wood in enumerate(woods):
        a, b, c = wood.shape
        full[k, 1 : a + 1, 1 : b + 1, 1 : c + 1] = wood
    return full


def surface(stack: Bools) -> tuple[Ints, Ints]:
    """Outer faces of `stacked` shapes: corners (n, 4), as shape and grid lines, and quads (m, 4).

    Quads index the corners and run counter-clockwise seen from outside. Those of a shape share
    corners, and no corner lies within another quad's edge, so each surface is watertight. Corners
    and quads rise with the shape.
    """
    _, b, c, d = stack.shape
    step = (c * d, d, 1)
    quads = []
    for axis in range(3):
        low = [slice(None), slice(1, -1), slice(1, -1), slice(1, -1)]
        high = low.copy()
        low[axis + 1], high[axis + 1] = slice(0, -1), slice(1, None)
        before, after = stack[tuple(low)], stack[tuple(high)]
        at = np.nonzero(before != after)
        corner = ((at[0] * b + at[1]) * c + at[2]) * d + at[3]
        one, two = step[(axis + 1) % 3], step[(axis + 2) % 3]
        begins = after[at]  # wood begins here: the face looks down the axis
        second, last = np.where(begins, two, one), np.where(begins, one, two)
        quads.append(np.stack((corner, corner + second, corner + one + two, corner + last), 1))
    every = np.concatenate(quads)
    every = every[np.argsort(every[:, 0] // (b * c * d), kind="stable")]
    used, corners = np.unique(every, return_inverse=True)
    return np.stack(np.unravel_index(used, stack.shape), 1), corners.reshape(-1, 4)


def creases(stack: Bools, bends: Mapping[int, int] | None = None) -> Ints:
    """Lines along which `stacked` surfaces turn a corner: (m, 2, 4), shape and grid lines.

    `bends` names, for some shapes, the grid line across the length at which the outer faces change
    direction (a taper begins): lines are broken there, and the ring around is a crease as well.
    """
    bends = bends or {}
    whole = stack.astype(np.int8)
    lines = []
    for axis in range(3):
        order = (0, axis + 1, (axis + 1) % 3 + 1, (axis + 2) % 3 + 1)
        w = whole.transpose(order)[:, 1:-1]
        a, b, c, d = w[:, :, :-1, :-1], w[:, :, 1:, :-1], w[:, :, :-1, 1:], w[:, :, 1:, 1:]
        wooden = a + b + c + d
        sharp = wooden % 2 == 1  # two of four that meet by the edge alone are refused before
        for k, bend in bends.items() if axis else ():
            sharp[k] |= _ring(stack[k], wooden[k], axis, bend)
        runs = _runs(sharp, {} if axis else bends)
        lines.append(runs[:, :, np.argsort(order)])
    return np.concatenate(lines)


def _ring(wood: Bools, wooden: npt.NDArray[np.int8], axis: int, bend: int) -> Bools:
    """Edges along an axis on the outside of a shape, at the grid line where a taper begins."""
    ring = np.zeros(wooden.shape, bool)
    across, on_ring = (wooden, ring) if axis == 2 else (wooden.swapaxes(1, 2), ring.swapaxes(1, 2))
    filled = np.flatnonzero(wood.any(axis=tuple({0, 1, 2} - {3 - axis})))
    for side in (filled[0] - 1, filled[-1]):
        on_ring[:, bend, side] = across[:, bend, side] == 2
    return ring


def _runs(sharp: Bools, broken: Mapping[int, int]) -> Ints:
    """Join sharp edges that continue each other along axis 1: (m, 2, 4), indices of both ends."""
    padded = np.zeros((sharp.shape[0], sharp.shape[1] + 2, *sharp.shape[2:]), bool)
    padded[:, 1:-1] = sharp
    begins, ends = padded[:, 1:] & ~padded[:, :-1], padded[:, :-1] & ~padded[:, 1:]
    for k, bend in broken.items():
        through = sharp[k, bend] & sharp[k, bend - 1]
        begins[k, bend] |= through
        ends[k, bend] |= through
    # With axis 1 last, begins and ends of one line follow each other in the same order.
    s, p, q, low = np.nonzero(begins.transpose(0, 2, 3, 1))
    high = np.nonzero(ends.transpose(0, 2, 3, 1))[3]
    return np.stack((np.stack((s, low, p, q), 1), np.stack((s, high, p, q), 1)), 1)
