"""Which triangle a line of sight meets first. Right for turned, cut and moved parts alike."""

from __future__ import annotations

import numpy as np
import numpy.typing as npt

Array = npt.NDArray[np.float64]


def first_hit(origin: Array, direction: Array, triangles: npt.NDArray[np.floating]) -> int:
    """The index of the nearest triangle (n, 3, 3) on the line, or -1.

    Moeller and Trumbore's test for all triangles at once.
    """
    if not len(triangles):
        return -1
    a = triangles[:, 0].astype(float)
    e1, e2 = triangles[:, 1] - a, triangles[:, 2] - a
    p = np.cross(direction, e2)
    det = np.einsum("ij,ij->i", e1, p)
    with np.errstate(all="ignore"):  # triangles seen edge-on divide by zero; `meets` drops them
        u = np.einsum("ij,ij->i", origin - a, p) / det
        q = np.cross(origin - a, e1)
        v = q @ direction / det
        along = np.einsum("ij,ij->i", e2, q) / det
        meets = (np.abs(det) > 1e-9) & (u >= 0) & (v >= 0) & (u + v <= 1) & (along > 0)
    return int(np.where(meets, along, np.inf).argmin()) if meets.any() else -1
