"""The mattress as a soft body: a box with round corners and swelling sides, smoothly shaded."""

from __future__ import annotations

from functools import lru_cache
from typing import NamedTuple

import numpy as np
import numpy.typing as npt

Floats = npt.NDArray[np.float32]

CORNER = 70.0  # mm, radius seen from above
EDGE = 42.0  # mm, radius of the upper and lower edge
ROUND = 7  # steps per quarter turn
PATTERN = (1000.0, 1000.0, 500.0)  # mm
SEAM = 0.62  # share of the edge's turn at which the piping runs


class Cushion(NamedTuple):
    """Triangles and one normal per corner, both (n, 3, 3), and the piping as edges (m, 2, 3)."""

    triangles: Floats
    normals: Floats
    edges: Floats


def cushion(low: npt.NDArray[np.float64], high: npt.NDArray[np.float64]) -> Cushion:
    """The soft body that fills a box: one pattern, whose far half moves with the box's size."""
    edge = float(min(EDGE, (high[2] - low[2]) / 2.2))
    body = _cushion(edge)
    start, more = low.astype(np.float32), (high - low - PATTERN).astype(np.float32)

    def stretched(points: Floats) -> Floats:
        return points + start + more * (points > np.array(PATTERN, np.float32) / 2)

    return Cushion(stretched(body.triangles), body.normals, stretched(body.edges))


@lru_cache(maxsize=8)
def _cushion(edge: float) -> Cushion:
    size = PATTERN
    rings, normals, seams = [], [], []
    quarter = np.linspace(0, np.pi / 2, ROUND)
    for turn in (*(quarter - np.pi / 2), *quarter):
        inset = edge * (1 - np.cos(turn))
        height = edge + edge * np.sin(turn) if turn <= 0 else size[2] - edge + edge * np.sin(turn)
        if turn == 0 and len(rings) == ROUND:
            height = size[2] - edge
        ring, out = _rounded_ring(size, inset)
        rings.append(np.column_stack((ring, np.full(len(ring), height))))
        normals.append(np.column_stack((out * np.cos(turn), np.full(len(out), np.sin(turn)))))
    count = len(rings[0])
    after = np.roll(np.arange(count), -1)
    corners, faces = [], []
    for k in range(len(rings) - 1):
        for group, source in ((corners, rings), (faces, normals)):
            a, b, c, d = source[k], source[k][after], source[k + 1][after], source[k + 1]
            group += [np.stack((a, b, c), 1), np.stack((a, c, d), 1)]
    for ring, up in ((rings[0], -1.0), (rings[-1], 1.0)):
        fan = np.stack((np.broadcast_to(ring[0], ring.shape), ring, ring[after]), 1)
        corners.append(fan[:, ::-1] if up < 0 else fan)
        faces.append(np.broadcast_to((0.0, 0.0, up), (count, 3, 3)))
    step = round(SEAM * (ROUND - 1))
    for k in (ROUND - 1 - step, ROUND + step):
        seams.append(np.stack((rings[k], rings[k][after]), 1))
    return Cushion(*(np.concatenate(each).astype(np.float32) for each in (corners, faces, seams)))


def _rounded_ring(
    size: tuple[float, float, float], inset: float
) -> tuple[npt.NDArray[np.float64], npt.NDArray[np.float64]]:
    """Points counter-clockwise round a rectangle with round corners, and the way out at each."""
    radius = min(CORNER, size[0] / 3, size[1] / 3)
    turns = np.linspace(0, np.pi / 2, ROUND)
    points, outs = [], []
    for corner, (sx, sy) in enumerate(((1, 1), (0, 1), (0, 0), (1, 0))):
        angle = turns + corner * np.pi / 2
        out = np.column_stack((np.cos(angle), np.sin(angle)))
        centre = np.array((size[0] - radius if sx else radius, size[1] - radius if sy else radius))
        points.append(centre + out * (radius - inset))
        outs.append(out)
    return np.concatenate(points), np.concatenate(outs)
