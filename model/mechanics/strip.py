"""A strip held by many like fasteners: how they share a load that stands between two of them."""

from __future__ import annotations

from functools import lru_cache

import numpy as np
import numpy.typing as npt

from model.errors import BadInput
from model.units import NewtonPerMm

Floats = npt.NDArray[np.float64]
Places = tuple[float, ...]


@lru_cache(maxsize=64)
def shares(fasteners: Places, loads: Places, bending: float, stiffness: NewtonPerMm) -> Floats:
    """What each fastener takes of a unit load at each place: (fasteners, loads), columns sum to 1.

    The strip is a beam of stiffness `bending` (E I, N mm2) on springs of `stiffness`, free at its
    ends; places in mm along it, fasteners rising. A single fastener takes all.
    Refused: no fastener; a stiffness of nothing. Source: the cubic beam element of textbooks
    """
    if not fasteners or not (bending > 0 and stiffness > 0):
        raise BadInput("screws", "A strip without screws, or without stiffness, holds nothing.")
    if len(fasteners) == 1:
        return np.ones((1, len(loads)))
    nodes = np.unique(np.round((*fasteners, *loads), 6))
    held = np.searchsorted(nodes, np.round(fasteners, 6))
    loaded = np.searchsorted(nodes, np.round(loads, 6))
    stiff = _beam(nodes, bending)
    np.add.at(stiff, (2 * held, 2 * held), stiffness)
    push = np.zeros((2 * len(nodes), len(loads)))
    push[2 * loaded, np.arange(len(loads))] = 1.0
    moved = np.linalg.solve(stiff, push)
    return np.asarray(stiffness * moved[2 * held])


def _beam(nodes: Floats, bending: float) -> Floats:
    """Stiffness of a straight beam through the nodes: sag and slope at each of them."""
    span = np.diff(nodes)
    a, b, c, d = 12 / span**3, 6 / span**2, 4 / span, 2 / span
    own = bending * np.array([[a, b, -a, b], [b, c, -b, d], [-a, -b, a, -b], [b, d, -b, c]])
    rows = 2 * np.arange(len(span)) + np.arange(4)[:, None]
    stiff = np.zeros((2 * len(nodes), 2 * len(nodes)))
    np.add.at(stiff, (rows[:, None, :], rows[None, :, :]), own)
    return stiff
