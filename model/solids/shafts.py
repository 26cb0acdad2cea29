"""Round holes as true cylinders: which of them meet flat faces only, and where.

Coaxial holes that run into each other (a bolt hole in its counterbore) are one shaft of several
widths. A shaft is kept round where it breaks through flat faces only, well within each, and comes
near no other: its rims are then circles, or ellipses on a slanted face.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from functools import lru_cache
from typing import NamedTuple

import numpy as np

from model.part import Hole
from model.parts.pieces import Bools, Floats, Ints
from model.solids.planar import Planar

_NEAR = 0.01  # mm: closer than this to an edge a rim is left to the exact solid's flats
_ALIKE = 1e-6  # mm, or 1 - cosine: nothing in the bed is finer
_OVERSHOOT = 0.1  # mm that a drill starts before the face and ends behind one that it reaches


class Bore(NamedTuple):
    """A stretch of a shaft with one radius, mm; `start` and `end` along its way."""

    start: float
    end: float
    radius: float


class Shaft(NamedTuple):
    """Coaxial holes run together: `at` and `way` (3,) its axis, `bores` from its start on, `holes`
    those of the part that it is made of.
    """

    at: Floats
    way: Floats
    bores: tuple[Bore, ...]
    holes: tuple[int, ...]


class Breach(NamedTuple):
    """Where a shaft breaks through a flat face: `along` its axis; `enters` wood or leaves it."""

    along: float
    face: int
    radius: float
    enters: bool


def shafts(holes: Sequence[Hole]) -> list[Shaft]:
    """All holes of a part as shafts, in their order."""
    lines = [_line(hole) for hole in holes]
    groups: list[list[int]] = []
    for k, line in enumerate(lines):
        meeting = [group for group in groups if any(_runs_on(line, lines[each]) for each in group)]
        merged = [each for group in meeting for each in group]
        groups = [group for group in groups if group not in meeting]
        groups.append([*merged, k])
    return [_shaft(sorted(group), lines) for group in sorted(groups, key=min)]


def near_another(every: Sequence[Shaft]) -> Bools:
    """Which shafts come so near to another that their walls may meet: (s,)."""
    near = np.zeros(len(every), bool)
    ends = np.array([_ends(shaft) for shaft in every]).reshape(-1, 2, 3)
    middle, half = ends.mean(axis=1), np.linalg.norm(ends[:, 1] - ends[:, 0], axis=1) / 2
    reach = np.array([_radius(shaft) for shaft in every]) + _NEAR / 2
    apart = np.linalg.norm(middle[:, None] - middle, axis=2)
    ball = half + reach
    for k, j in np.argwhere(np.triu(apart < ball[:, None] + ball, 1)):
        if _apart(ends[k], ends[j]) < reach[k] + reach[j]:
            near[k] = near[j] = True
    return near


class _Line(NamedTuple):
    """A hole as a line: its axis, and how far before and behind `at` it reaches."""

    at: Floats
    way: Floats
    start: float
    end: float
    radius: float


def _line(hole: Hole) -> _Line:
    way = np.array(hole.toward, float)
    way /= np.linalg.norm(way)
    radius = float(hole.diameter) / 2
    square = abs(float(way[hole.face.axis]))
    lip = radius * math.sqrt(max(0.0, 1 - square**2)) / max(square, 0.1)
    at = np.array(hole.at, float)
    return _Line(at, way, -lip - _OVERSHOOT, float(hole.depth), radius)


def _runs_on(one: _Line, other: _Line) -> bool:
    """Whether two holes have one axis and overlap along it."""
    along = float(one.way @ other.way)
    if 1 - abs(along) > _ALIKE**2:
        return False
    apart = other.at - one.at
    if np.linalg.norm(apart - (apart @ one.way) * one.way) > _ALIKE:
        return False
    ends = sorted(float(apart @ one.way) + along * each for each in (other.start, other.end))
    return ends[0] <= one.end + _ALIKE and ends[1] >= one.start - _ALIKE


def _shaft(holes: list[int], lines: list[_Line]) -> Shaft:
    """The widest hole counts wherever several overlap."""
    first = lines[holes[0]]
    spans = []
    for each in (lines[k] for k in holes):
        middle, way = float((each.at - first.at) @ first.way), float(each.way @ first.way)
        low, high = sorted((middle + way * each.start, middle + way * each.end))
        spans.append(Bore(low, high, each.radius))
    stops = sorted({end for span in spans for end in span[:2]})
    bores: list[Bore] = []
    for low, high in zip(stops, stops[1:], strict=False):
        if high - low < _ALIKE:
            continue
        over = [span.radius for span in spans if span.start < high - _ALIKE and span.end > low]
        wide = max((each for each in over), default=0.0)
        if bores and bores[-1].radius == wide:
            bores[-1] = Bore(bores[-1].start, high, wide)
        else:
            bores.append(Bore(bores[-1].end if bores else low, high, wide))
    return Shaft(first.at, first.way, tuple(bores), tuple(holes))


def _radius(shaft: Shaft) -> float:
    return max(bore.radius for bore in shaft.bores)


def _ends(shaft: Shaft) -> Floats:
    """Where the axis of a shaft begins and ends: (2, 3)."""
    along = np.array([shaft.bores[0].start, shaft.bores[-1].end])
    return np.asarray(shaft.at + along[:, None] * shaft.way)


def _apart(a: Floats, b: Floats) -> float:
    """The least distance between two straight lines, each (2, 3): where they cross, or at an end of
    one of them.
    """
    at_ends = (*(_from_line(point, b) for point in a), *(_from_line(point, a) for point in b))
    return min(*at_ends, _crossing(a, b))


def _from_line(point: Floats, line: Floats) -> float:
    way = line[1] - line[0]
    share = min(1.0, max(0.0, float((point - line[0]) @ way / (way @ way))))
    return float(np.linalg.norm(point - line[0] - share * way))


def _crossing(a: Floats, b: Floats) -> float:
    """How far two lines pass each other where both are within their ends; else no limit."""
    u, v, w = a[1] - a[0], b[1] - b[0], a[0] - b[0]
    square = np.cross(u, v)
    long = float(square @ square)
    if long < _ALIKE * float(u @ u) * float(v @ v):
        return math.inf
    s = float(np.cross(v, w) @ square) / long
    t = float(np.cross(u, w) @ square) / long
    inside = 0 <= s <= 1 and 0 <= t <= 1
    return abs(float(w @ square)) / math.sqrt(long) if inside else math.inf


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
        out = inside & ~near & (way * cosine > _ALIKE) & (np.abs(along - end) < _ALIKE)
        for face in np.flatnonzero(out):
            beyond = end + way * (_reach(bores[k].radius, cosine[face]) + _OVERSHOOT)
            bores[k] = bores[k]._replace(**{"start" if way < 0 else "end": float(beyond)})
    return tuple(bores)


def _through(shaft: Shaft, bore: Bore, surface: Planar, edges: Edges) -> list[Breach] | None:
    """Faces that one bore breaks through; None where one of them is not breached cleanly."""
    cosine, along, near, inside = _seen(shaft, bore.radius, surface, edges)
    is_flat = np.abs(cosine) < _ALIKE
    reach = _reach(bore.radius, np.where(is_flat, 1.0, cosine))
    low, high = along - reach, along + reach
    if is_flat.any():
        on_axis = [(each - shaft.at) @ shaft.way for each in (edges.start, edges.end)]
        reached = np.minimum(*on_axis), np.maximum(*on_axis)
        low = np.where(is_flat, np.minimum.reduceat(reached[0], edges.first), low)
        high = np.where(is_flat, np.maximum.reduceat(reached[1], edges.first), high)
    meets = (low < bore.end + _NEAR) & (high > bore.start - _NEAR)
    whole = (low > bore.start + _ALIKE) & (high < bore.end - _ALIKE)
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
    along = gap / np.where(np.abs(cosine) < _ALIKE, math.inf, cosine)
    a, b = (_across(each - shaft.at, shaft.way) for each in (edges.start, edges.end))
    step = b - a
    long = np.maximum((step**2).sum(axis=1), _ALIKE**2)
    share = np.clip(-(a * step).sum(axis=1) / long, 0, 1)
    apart = np.linalg.norm(a + share[:, None] * step, axis=1)
    near = np.minimum.reduceat(apart, edges.first) < radius + _NEAR
    turned = np.arctan2(a[:, 0] * b[:, 1] - a[:, 1] * b[:, 0], (a * b).sum(axis=1))
    around = np.abs(np.add.reduceat(turned, edges.first))
    return cosine, along, near, around > math.pi


def _across(points: Floats, way: Floats) -> Floats:
    """Points (n, 3) seen along a way: (n, 2)."""
    one, two = axes_across(way)
    return np.stack([points @ one, points @ two], 1)


def axes_across(way: Floats) -> tuple[Floats, Floats]:
    """Two unit vectors square to a way and each other, so that the three are right-handed."""
    return _axes_across(*way.tolist())


@lru_cache(maxsize=4096)
def _axes_across(x: float, y: float, z: float) -> tuple[Floats, Floats]:
    way = np.array([x, y, z])
    side = np.zeros(3)
    side[np.abs(way).argmin()] = 1.0
    one = np.cross(side, way)
    one /= np.linalg.norm(one)
    return one, np.cross(way, one)
