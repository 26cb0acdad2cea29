"""Round holes as shafts: coaxial holes that run into each other, a bolt hole in its counterbore,
are one of several widths; and which shafts come near each other.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from functools import lru_cache
from typing import NamedTuple

import numpy as np

from model.part import Hole
from model.parts.pieces import Bools, Floats

NEAR = 0.01  # mm: closer than this to each other, or to an edge, holes are left to flats
ALIKE = 1e-6  # mm, or 1 - cosine: nothing in the bed is finer
OVERSHOOT = 0.1  # mm that a drill starts before the face and ends behind one that it reaches


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
    reach = np.array([_radius(shaft) for shaft in every]) + NEAR / 2
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
    return _Line(at, way, -lip - OVERSHOOT, float(hole.depth), radius)


def _runs_on(one: _Line, other: _Line) -> bool:
    """Whether two holes have one axis and overlap along it."""
    along = float(one.way @ other.way)
    if 1 - abs(along) > ALIKE**2:
        return False
    apart = other.at - one.at
    if np.linalg.norm(apart - (apart @ one.way) * one.way) > ALIKE:
        return False
    ends = sorted(float(apart @ one.way) + along * each for each in (other.start, other.end))
    return ends[0] <= one.end + ALIKE and ends[1] >= one.start - ALIKE


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
        if high - low < ALIKE:
            continue
        over = [span.radius for span in spans if span.start < high - ALIKE and span.end > low]
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
    if long < ALIKE * float(u @ u) * float(v @ v):
        return math.inf
    s = float(np.cross(v, w) @ square) / long
    t = float(np.cross(u, w) @ square) / long
    inside = 0 <= s <= 1 and 0 <= t <= 1
    return abs(float(w @ square)) / math.sqrt(long) if inside else math.inf


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
