"""Where shafts break through the flat faces of a part, and whether they can stay round there.

A shaft is kept round where it breaks through flat faces only, well within each: its rims are then
circles, or ellipses on a slanted face.
"""

from __future__ import annotations

import math
from typing import NamedTuple

import numpy as np

from model.parts.pieces import Bools, Floats, Ints
from model.solids.planar import Planar
from model.solids.shafts import ALIKE, NEAR, OVERSHOOT, Bore, Shaft, axes_across


class Breach(NamedTuple):
    """Where a shaft breaks through a flat face: `along` its axis; `enters` wood or leaves it."""

    along: float
    face: int
    radius: float
    enters: bool


class Edges(NamedTuple):
    """All edges of a planar surface: `start` and `end` (e, 3), in the order of faces; `first` (f,)
    the first edge of each face.
    """

    start: Floats
    end: Floats
    first: Ints

    @classmethod
    def of(cls, surface: Planar) -> Edges:
        rings = [ring for own in surface.loops for ring in own]
        start = surface.corners[np.concatenate(rings)]
        end = surface.corners[np.concatenate([np.roll(ring, -1) for ring in rings])]
        count = [sum(len(ring) for ring in own) for own in surface.loops]
        return cls(start, end, np.cumsum([0, *count[:-1]]))


def breaches(shaft: Shaft, surface: Planar, edges: Edges) -> list[Breach] | None:
    """Where a shaft breaks through the faces of a solid in which it is not yet, along its way.

    None where it cannot be kept round.
    """
    found: list[Breach] = []
    for bore in _reaching(shaft, surface, edges):
        through = _through(shaft, bore, surface, edges)
        if through is None:
            return None
        found += through
    found.sort()
    turns = [each.enters for each in found]
    if not turns or any(one == other for one, other in zip(turns, turns[1:], strict=False)):
        return None
    return found


def _reaching(shaft: Shaft, surface: Planar, edges: Edges) -> tuple[Bore, ...]:
    """The bores, drawn out at each end whose axis just reaches a face: the drill comes out there,
    on a slanted face with all its rim.
    """
    bores = list(shaft.bores)
    last = len(bores) - 1
    for k, end, way in ((0, bores[0].start, -1), (last, bores[last].end, 1)):
        cosine, along, near, inside = _seen(shaft, bores[k].radius, surface, edges)
        out = inside & ~near & (way * cosine > ALIKE) & (np.abs(along - end) < ALIKE)
        for face in np.flatnonzero(out):
            beyond = end + way * (_reach(bores[k].radius, cosine[face]) + OVERSHOOT)
            bores[k] = bores[k]._replace(**{"start" if way < 0 else "end": float(beyond)})
    return tuple(bores)


def _through(shaft: Shaft, bore: Bore, surface: Planar, edges: Edges) -> list[Breach] | None:
    """Faces that one bore breaks through; None where one of them is not breached cleanly."""
    cosine, along, near, inside = _seen(shaft, bore.radius, surface, edges)
    is_flat = np.abs(cosine) < ALIKE
    reach = _reach(bore.radius, np.where(is_flat, 1.0, cosine))
    low, high = along - reach, along + reach
    if is_flat.any():
        on_axis = [(each - shaft.at) @ shaft.way for each in (edges.start, edges.end)]
        reached = np.minimum(*on_axis), np.maximum(*on_axis)
        low = np.where(is_flat, np.minimum.reduceat(reached[0], edges.first), low)
        high = np.where(is_flat, np.maximum.reduceat(reached[1], edges.first), high)
    meets = (low < bore.end + NEAR) & (high > bore.start - NEAR)
    whole = (low > bore.start + ALIKE) & (high < bore.end - ALIKE)
    if np.any(meets & (near | (inside & ~is_flat & ~whole))):
        return None
    through = np.flatnonzero(meets & inside & ~is_flat)
    return [Breach(float(along[f]), int(f), bore.radius, bool(cosine[f] < 0)) for f in through]


def _reach(radius: float, cosine: Floats) -> Floats:
    """How far before and behind its middle the rim on a slanted face lies, along the axis."""
    return np.asarray(radius * np.sqrt(np.clip(1 - cosine**2, 0, None)) / np.abs(cosine))


def _seen(
    shaft: Shaft, radius: float, surface: Planar, edges: Edges
) -> tuple[Floats, Floats, Bools, Bools]:
    """Every face (f,) as the axis meets it: the cosine to its normal, how far along, whether an
    edge comes as near to the axis as the radius, and whether the axis goes through the face.

    All edges are seen along the axis, where the shaft is a circle on any face.
    """
    cosine = surface.normals @ shaft.way
    gap = surface.offsets - surface.normals @ shaft.at
    along = gap / np.where(np.abs(cosine) < ALIKE, math.inf, cosine)
    a, b = (_across(each - shaft.at, shaft.way) for each in (edges.start, edges.end))
    step = b - a
    long = np.maximum((step**2).sum(axis=1), ALIKE**2)
    share = np.clip(-(a * step).sum(axis=1) / long, 0, 1)
    apart = np.linalg.norm(a + share[:, None] * step, axis=1)
    near = np.minimum.reduceat(apart, edges.first) < radius + NEAR
    turned = np.arctan2(a[:, 0] * b[:, 1] - a[:, 1] * b[:, 0], (a * b).sum(axis=1))
    around = np.abs(np.add.reduceat(turned, edges.first))
    return cosine, along, near, around > math.pi


def _across(points: Floats, way: Floats) -> Floats:
    """Points (n, 3) seen along a way: (n, 2)."""
    one, two = axes_across(way)
    return np.stack([points @ one, points @ two], 1)
