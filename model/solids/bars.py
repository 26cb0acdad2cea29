"""Bolts, barrel nuts and dowels: round bars, proved against the holes they go through.

The box of a bar overlaps the wood it goes through, for boxes know no holes. That is right only if
the piece has a hole on the bar's axis, wide enough, all the way that the bar goes through wood.
"""

from __future__ import annotations

import math
from typing import NamedTuple

import numpy as np

from model.parts.pieces import Bools, Floats, Ints, Pieces
from model.solids.near import TOUCH, Near

_ALONG = 1 - 1e-9  # cosine: a hole this near to an axis runs along it (0.05 mm in 1 m)


class Bars(NamedTuple):
    """What the round bars do in each pair of pieces near each other.

    `is_bar` (m): a bar takes part in the pair. `shared` (m): wood that a bar goes through without a
    hole, mm3. `sits` (m): a bar sits in a hole of the other. `rests` (m): the least gap, mm, along
    the bar between its end and the other piece; inf where none faces the other.
    """

    is_bar: Bools
    shared: Floats
    sits: Bools
    rests: Floats


class _Holes(NamedTuple):
    """Holes of all pieces in bed axes, in order of pieces; `first` (n + 1) as for boxes."""

    at: Floats
    toward: Floats
    diameter: Floats
    depth: Floats
    first: Ints


def bars(pieces: Pieces, near: Near) -> Bars:
    """Compare every bar with the pieces near it."""
    m = len(near.one)
    found = Bars(np.zeros(m, bool), np.zeros(m), np.zeros(m, bool), np.full(m, np.inf))
    round_part = np.array([part.is_round for part in pieces.parts], bool)
    is_round = round_part[pieces.part]
    if not is_round.any():
        return found
    holes = _holes(pieces)
    ways = ((near.one, near.other), (near.other, near.one))
    shared = [np.full(m, np.inf), np.full(m, np.inf)]
    for way, (bar, other) in enumerate(ways):
        pair = np.flatnonzero(is_round[bar])
        if not len(pair):
            continue
        seen = _Bar.of(pieces, bar[pair])
        hole_row, low, high = _coaxial(seen, holes, other[pair])
        found.is_bar[pair] = True
        within = np.minimum(high, seen.high[hole_row]) - np.maximum(low, seen.low[hole_row])
        found.sits[pair[hole_row[within > TOUCH]]] = True
        wood = near.box_other if way == 0 else near.box_one
        row, box = _boxes_of(near, wood, pair)
        bare, rests = _in_wood(pieces, seen, row, box, hole_row, low, high)
        shared[way][pair] = np.bincount(row, bare, len(pair))
        np.minimum.at(found.rests, pair[row], rests)
    # Of two bars, one need only go through a hole of the other (a bolt through a barrel nut).
    least = np.minimum(*shared)
    found.shared[found.is_bar] = least[found.is_bar]
    return found


class _Bar(NamedTuple):
    """Bars row by row: the bed axis each runs along, its ends there, its centre, its radius."""

    axis: Ints
    low: Floats
    high: Floats
    centre: Floats
    radius: Floats

    @classmethod
    def of(cls, pieces: Pieces, bar: Ints) -> _Bar:
        lo, hi = (bound[bar] for bound in pieces.bounds)
        axis = np.abs(pieces.matrices[bar, :3, 0]).argmax(axis=1)
        rows = np.arange(len(bar))
        width = np.array([float(part.width) for part in pieces.parts])[pieces.part[bar]]
        return cls(axis, lo[rows, axis], hi[rows, axis], (lo + hi) / 2, width / 2)


def _holes(pieces: Pieces) -> _Holes:
    of_part = [len(form.holes) for form in pieces.forms]
    all_holes = [hole for form in pieces.forms for hole in form.holes]
    count = np.array(of_part, np.intp)[pieces.part]
    first = np.concatenate([[0], np.cumsum(count)]).astype(np.intp)
    begins = (np.cumsum(of_part) - of_part).astype(np.intp)[pieces.part]
    row = np.arange(first[-1]) + np.repeat(begins - first[:-1], count)
    matrix = pieces.matrices[np.repeat(np.arange(len(pieces)), count)]
    at = np.array([hole.at for hole in all_holes]).reshape(-1, 3)[row]
    toward = np.array([hole.toward for hole in all_holes]).reshape(-1, 3)[row]
    turn = matrix[:, :3, :3]
    return _Holes(
        np.einsum("hij,hj->hi", turn, at) + matrix[:, :3, 3],
        np.einsum("hij,hj->hi", turn, toward),
        np.array([float(hole.diameter) for hole in all_holes])[row],
        np.array([float(hole.depth) for hole in all_holes])[row],
        first,
    )


def _coaxial(bar: _Bar, holes: _Holes, other: Ints) -> tuple[Ints, Floats, Floats]:
    """Wide enough holes of the other pieces on the bars' axes: row of the bar, ends on its axis."""
    count = holes.first[other + 1] - holes.first[other]
    row = np.repeat(np.arange(len(other)), count)
    hole = np.arange(len(row)) + np.repeat(holes.first[other] - (np.cumsum(count) - count), count)
    axis, k = bar.axis[row], np.arange(len(row))
    way = holes.toward[hole, axis]
    off = np.abs(holes.at[hole] - bar.centre[row])
    off[k, axis] = 0.0
    fits = (np.abs(way) >= _ALONG) & (off.max(axis=1, initial=0.0) <= TOUCH)
    fits &= holes.diameter[hole] >= 2 * bar.radius[row] - TOUCH
    row, hole, way = row[fits], hole[fits], way[fits]
    mouth = holes.at[hole, axis[fits]]
    end = mouth + way * holes.depth[hole]
    return row, np.minimum(mouth, end), np.maximum(mouth, end)


def _boxes_of(near: Near, wood: Ints, pair: Ints) -> tuple[Ints, Ints]:
    """Boxes of the other piece of each pair, once each: row in `pair`, box."""
    row_of = np.full(len(near.one), -1)
    row_of[pair] = np.arange(len(pair))
    row = row_of[near.pair]
    return row[row >= 0], wood[row >= 0]


def _in_wood(
    pieces: Pieces, bar: _Bar, row: Ints, box: Ints, hole_row: Ints, low: Floats, high: Floats
) -> tuple[Floats, Floats]:
    """For each bar and box: wood it goes through without a hole, mm3, and the gap at its ends."""
    axis, k = bar.axis[row], np.arange(len(row))
    lo, hi, centre, radius = pieces.lo[box], pieces.hi[box], bar.centre[row], bar.radius[row]
    aside = np.maximum(np.maximum(lo - centre, centre - hi), 0.0)
    aside[k, axis] = 0.0
    meets = np.hypot.reduce(aside, axis=1) < radius - TOUCH
    start, end = np.maximum(lo[k, axis], bar.low[row]), np.minimum(hi[k, axis], bar.high[row])
    rests = np.where(meets & (start >= end - TOUCH), start - end, np.inf)
    bare = np.zeros(len(row))
    for i in np.flatnonzero(meets & (end - start > TOUCH)).tolist():
        drilled = sorted(zip(low[hole_row == row[i]], high[hole_row == row[i]], strict=True))
        bare[i] = _not_covered(float(start[i]), float(end[i]), drilled)
    bare[bare <= TOUCH] = 0.0
    return bare * math.pi * radius**2, rests


def _not_covered(start: float, end: float, drilled: list[tuple[float, float]]) -> float:
    """How much of a stretch the holes, sorted by their start, leave undrilled."""
    bare, at = 0.0, start
    for low, high in drilled:
        bare += max(0.0, min(low, end) - at)
        at = max(at, min(high, end))
    return bare + max(0.0, end - at)
