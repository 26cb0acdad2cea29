"""Screws and bored holes of a bed as lines with a radius, and those of them that come near each
other in one piece of wood.

Bolts, nuts and dowels are told by the holes that they fill. A screw and the holes that it goes
through share an axis and are one fastener.
"""

from __future__ import annotations

from typing import NamedTuple, cast

import numpy as np

from model.part import Hole, Part, Screw
from model.parts.pieces import Bools, Floats, Ints, Pieces, as_cut
from model.solids.near import TOUCH
from model.units import Mm

BORES = ("bolt hole", "nut hole", "counterbore", "dowel hole", "pocket hole", "vent")
ONE_BODY = ({"bolt hole", "nut hole"}, {"vent"}, {"pocket hole"})  # meant to be where they are
REACH: Mm = 6.0  # what stands farther apart is of no concern: the wood that is asked is less
_PARALLEL = 1e-9  # square of the sine below which two axes run alike


class Shank(NamedTuple):
    """One screw or bore of a part: what it is called, and whether it is a screw."""

    part: Part
    kind: str
    is_screw: bool
    diameter: Mm


class Meeting(NamedTuple):
    """Two fasteners near each other in one wood: `gap` mm of it between them, below zero where
    they share space; `pieces` carry them.
    """

    one: Shank
    other: Shank
    gap: Mm
    pieces: tuple[int, int]


class _Own(NamedTuple):
    """Shanks of one part, in the axes that it is cut in: start and way (k, 3), radius (k,)."""

    shanks: tuple[Shank, ...]
    start: Floats
    way: Floats
    radius: Floats


class _Lines(NamedTuple):
    """Shanks of all pieces (n), in bed axes and in order of where they begin along the bed."""

    shank: Ints
    piece: Ints
    start: Floats
    way: Floats
    radius: Floats
    low: Floats
    high: Floats


def meetings(pieces: Pieces) -> tuple[Meeting, ...]:
    """Every two fasteners of the bed, or of the first drawer of a row, that come within `REACH` of
    each other in one piece of wood; of places that are alike the nearest.
    """
    lines, shanks = _lines(pieces)
    if not len(lines.shank):
        return ()
    one, other = _near(pieces, lines)
    gap, ends = _apart(lines, one, other)
    kept = np.flatnonzero((gap < REACH) & _in_one_wood(pieces, ends, gap))
    return tuple(_met(lines, shanks, one[kept], other[kept], gap[kept]))


def _met(lines: _Lines, shanks: list[Shank], one: Ints, other: Ints, gap: Floats) -> list[Meeting]:
    """The nearest of alike pairs, nearest first."""
    order = np.argsort(gap, kind="stable")
    one, other = one[order], other[order]
    alike = zip(lines.shank[one].tolist(), lines.shank[other].tolist(), strict=True)
    pieces = zip(lines.piece[one].tolist(), lines.piece[other].tolist(), strict=True)
    nearest: dict[tuple[int, int], tuple[Mm, tuple[int, int]]] = {}
    for pair, room, carried in zip(alike, gap[order].tolist(), pieces, strict=True):
        nearest.setdefault(pair, (room, carried))
    found = [Meeting(shanks[a], shanks[b], *near) for (a, b), near in nearest.items()]
    return [m for m in found if not any({m.one.kind, m.other.kind} <= body for body in ONE_BODY)]


def _own(part: Part) -> _Own:
    found = part.__dict__.get("_shanks")
    if found is None:
        found = part.__dict__["_shanks"] = _read(as_cut(part))
    return cast(_Own, found)


def _read(part: Part) -> _Own:
    bores = [hole for hole in part.holes if hole.kind in BORES]
    rows = [(s, s.length - s.diameter / 2, True) for s in part.screws]  # round up to its very tip
    every: list[tuple[Screw | Hole, float, bool]] = [*rows, *((h, h.depth, False) for h in bores)]
    way = np.array([each.toward for each, _, _ in every], np.float64).reshape(-1, 3)
    way /= np.maximum(np.linalg.norm(way, axis=1, keepdims=True), TOUCH)
    return _Own(
        tuple(Shank(part, each.kind, is_screw, each.diameter) for each, _, is_screw in every),
        np.array([each.at for each, _, _ in every], np.float64).reshape(-1, 3),
        way * np.array([deep for _, deep, _ in every], np.float64)[:, None],
        np.array([each.diameter / 2 for each, _, _ in every], np.float64),
    )


def _lines(pieces: Pieces) -> tuple[_Lines, list[Shank]]:
    every = [_own(part) for part in pieces.parts]
    count = np.array([len(each.shanks) for each in every], np.intp)
    own = [each for each in every if each.shanks]
    of_group = np.array([not name or name.endswith("-1") for name in pieces.groups], bool)
    piece = np.flatnonzero(of_group[pieces.group] & (count[pieces.part] > 0))
    many = count[pieces.part[piece]]
    begins = (np.cumsum(count) - count)[pieces.part[piece]]
    row = np.arange(many.sum()) + np.repeat(begins - (np.cumsum(many) - many), many)
    piece = np.repeat(piece, many)
    turn, shift = pieces.matrices[piece, :3, :3], pieces.matrices[piece, :3, 3]
    start = np.concatenate([np.zeros((0, 3)), *(each.start for each in own)])[row]
    way = np.concatenate([np.zeros((0, 3)), *(each.way for each in own)])[row]
    radius = np.concatenate([np.zeros(0), *(each.radius for each in own)])[row]
    start = np.einsum("nij,nj->ni", turn, start) + shift
    way = np.einsum("nij,nj->ni", turn, way)
    end, wide = start + way, radius[:, None]
    low, high = np.minimum(start, end) - wide, np.maximum(start, end) + wide
    at = np.argsort(low[:, 1], kind="stable")
    lines = _Lines(row[at], piece[at], start[at], way[at], radius[at], low[at], high[at])
    return lines, [shank for each in own for shank in each.shanks]


def _near(pieces: Pieces, lines: _Lines) -> tuple[Ints, Ints]:
    """Pairs whose bounds come within reach and that move together."""
    rows = np.arange(len(lines.shank))
    last = np.searchsorted(lines.low[:, 1], lines.high[:, 1] + REACH, side="right")
    count = np.maximum(last - rows - 1, 0)
    one = np.repeat(rows, count)
    other = np.arange(len(one)) - np.repeat(np.cumsum(count) - count, count) + one + 1
    group = pieces.group[lines.piece]
    kept = group[one] == group[other]
    for axis in (0, 2):
        low, high = lines.low[:, axis], lines.high[:, axis]
        kept &= (low[one] <= high[other] + REACH) & (low[other] <= high[one] + REACH)
    return one[kept], other[kept]


def _apart(lines: _Lines, one: Ints, other: Ints) -> tuple[Floats, tuple[Floats, Floats]]:
    """Room between pairs of shanks, mm, and their points nearest to each other, (k, 3) each.

    Nearest points of two segments; on one axis they are one fastener, and infinitely far apart,
    unless two screws come point to point.
    """
    p, u, q, v = lines.start[one], lines.way[one], lines.start[other], lines.way[other]
    between = p - q
    a, e, b = (u * u).sum(axis=1), (v * v).sum(axis=1), (u * v).sum(axis=1)
    c, f = (u * between).sum(axis=1), (v * between).sum(axis=1)
    across = a * e - b * b
    skew = across > _PARALLEL * a * e
    s = np.where(skew, np.clip((b * f - c * e) / np.where(skew, across, 1.0), 0, 1), 0.0)
    t = np.clip((b * s + f) / e, 0, 1)
    s = np.clip((b * t - c) / a, 0, 1)
    ends = p + s[:, None] * u, q + t[:, None] * v
    apart = np.linalg.norm(ends[0] - ends[1], axis=1)
    off = between - (c / a)[:, None] * u
    coaxial = ~skew & ((off * off).sum(axis=1) < TOUCH**2)
    to_each_other = (b < 0) & (c < 0)
    gap = apart - lines.radius[one] - lines.radius[other]
    gap[coaxial & ~to_each_other] = np.inf
    return gap, ends


def _in_one_wood(pieces: Pieces, ends: tuple[Floats, Floats], gap: Floats) -> Bools:
    """Whether the nearest points of each pair lie in one box of wood; of a pair that meets, the
    point between them.
    """
    wood = np.array([not part.hardware for part in pieces.parts])[pieces.part][pieces.piece]
    low, high = pieces.lo[wood], pieces.hi[wood]
    found = np.zeros(len(gap), bool)
    near = np.flatnonzero(gap < REACH)
    one, other = (each[near] for each in ends)
    meets = (gap[near] < 0)[:, None]
    middle = (one + other) / 2
    one, other = np.where(meets, middle, one), np.where(meets, middle, other)
    least, most = np.minimum(one, other) + TOUCH, np.maximum(one, other) - TOUCH
    about = (low <= least.max(axis=0, initial=-np.inf)).all(axis=1)
    about &= (high >= most.min(axis=0, initial=np.inf)).all(axis=1)
    low, high = (np.ascontiguousarray(each[about].T) for each in (low, high))
    inside = (low[1] <= least[:, 1, None]) & (high[1] >= most[:, 1, None])
    for axis in (0, 2):
        inside &= low[axis] <= least[:, axis, None]
        inside &= high[axis] >= most[:, axis, None]
    found[near] = inside.any(axis=1)
    return found
