"""The soft shadow on the floor: footprints of all pieces, drawn coarsely and blurred.

Low pieces leave a dark, sharp shadow, high ones a faint, wide one, as under a cloudy sky.
"""

from __future__ import annotations

from typing import NamedTuple

import numpy as np
import numpy.typing as npt

Array = npt.NDArray[np.float64]
Cells = npt.NDArray[np.float32]

CELL = 25.0  # mm
MARGIN = 650.0  # mm beyond the bed, where the widest shadow has faded out
# Up to which height of its underside a piece counts, how far its shadow spreads (cells), how dark.
LAYERS = ((70.0, 1, 0.42), (260.0, 3, 0.34), (1e9, 7, 0.30))


class Shadow(NamedTuple):
    """Darkness (rows along y, columns along x), 0 to 1, and the floor rectangle it covers, mm."""

    dark: Cells
    low: tuple[float, float]
    high: tuple[float, float]


def floor_shadow(low: Array, high: Array) -> Shadow:
    """The shadow of boxes with corners `low` and `high`, both (n, 3)."""
    origin = np.floor((low[:, :2].min(0) - MARGIN) / CELL) * CELL
    end = np.ceil((high[:, :2].max(0) + MARGIN) / CELL) * CELL
    columns, rows = ((end - origin) / CELL).astype(int)
    light = np.ones((rows, columns), np.float32)
    lowest = 0.0
    for highest, spread, strength in LAYERS:
        held = (low[:, 2] >= lowest - 1e-6) & (low[:, 2] < highest)
        lowest = highest
        if held.any():
            prints = _footprints(low[held] - (*origin, 0), high[held] - (*origin, 0), rows, columns)
            light *= 1 - strength * _blurred(prints, spread)
    return Shadow(1 - light, tuple(origin.tolist()), tuple(end.tolist()))


def _footprints(low: Array, high: Array, rows: int, columns: int) -> Cells:
    """Cells that a box stands over are 1, all others 0."""
    x0, y0 = np.floor(low[:, :2] / CELL + 0.5).astype(int).T
    x1, y1 = np.ceil(high[:, :2] / CELL - 0.5).astype(int).T
    x1, y1 = np.maximum(x1, x0 + 1), np.maximum(y1, y0 + 1)
    cells = np.zeros((rows, columns), np.float32)
    for a, b, c, d in zip(x0.tolist(), y0.tolist(), x1.tolist(), y1.tolist(), strict=True):
        cells[b:d, a:c] = 1
    return cells


def _blurred(cells: Cells, spread: int) -> Cells:
    """Three box blurs each way look like a bell. No matrix product: its threads fight OpenGL's."""
    for _ in range(2):
        for _ in range(3):
            cells = _boxed(cells, spread)
        cells = np.ascontiguousarray(cells.T)
    return cells


def _boxed(cells: Cells, spread: int) -> Cells:
    """The mean along each row; the margin, where nothing stands, stays as it is."""
    sums = cells.cumsum(1)
    wide = 2 * spread + 1
    blurred = np.zeros_like(cells)
    np.subtract(sums[:, wide:], sums[:, :-wide], out=blurred[:, spread + 1 : -spread])
    blurred /= wide
    return blurred
