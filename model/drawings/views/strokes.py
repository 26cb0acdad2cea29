"""Lines on the paper, each drawn once: of those that lie on one another the foremost is kept.

Outlines of cut faces go before visible edges, visible ones before hidden ones, near ones before
far ones. What goes on straight is one stroke.
Source: ISO 128-2, precedence of lines, from memory.
"""

from __future__ import annotations

from typing import NamedTuple

import numpy as np

from model.parts.pieces import Bools, Floats, Ints
from model.units import Mm

SECTION, VISIBLE, HIDDEN = 0, 1, 2
SAME: Mm = 0.015  # lines, and ends on a line, nearer than this are one
LEAST: Mm = 0.05  # of a stroke: less is left over from two ends that should be one
_PARALLEL = 1e-5  # radians between two lines of one direction
_REACH: Mm = 1e5  # of a drawing from its origin
_STEP: Mm = 1e-3


class Lines(NamedTuple):
    """Straight lines: `ends` (n, 2, 2), mm; `piece` (n,); `rank` (n,): SECTION, VISIBLE or HIDDEN;
    `near` (n,): how near to the eye, mm.
    """

    ends: Floats
    piece: Ints
    rank: Ints
    near: Floats


def drawn_once(lines: Lines) -> Lines:
    """The strokes to draw, ordered by rank, piece and place; `near` is that of some part of each.

    Every line is painted onto the ground it covers, from the last to the foremost, and what is left
    in the end is read off.
    """
    lines = _taken(lines, _long(lines.ends) > _STEP)
    if not len(lines.piece):
        return lines
    line, along, origin, way = _on_lines(lines.ends)
    stops, span = _stops(line, along)
    owner = _painted(len(stops.at), span, np.lexsort((lines.near, -lines.rank)))
    begin, end = _runs(owner, stops.line, lines)
    of = owner[begin]
    own = stops.line[begin]
    ends = np.stack([stops.at[begin], stops.at[end]], axis=1)
    points = origin[own, None] + ends[..., None] * way[own, None]
    found = Lines(points + 0.0, lines.piece[of], lines.rank[of], lines.near[of])
    found = _taken(found, _long(points) > LEAST)
    order = np.lexsort((*np.round(found.ends.reshape(-1, 4), 3).T[::-1], found.piece, found.rank))
    return _taken(found, order)


def _taken(lines: Lines, rows: Ints | Bools) -> Lines:
    return Lines(lines.ends[rows], lines.piece[rows], lines.rank[rows], lines.near[rows])


def _long(ends: Floats) -> Floats:
    return np.asarray(np.linalg.norm(ends[:, 1] - ends[:, 0], axis=1))


# ---------------------------------------------------------------- which lines are one


def _on_lines(ends: Floats) -> tuple[Ints, Floats, Floats, Floats]:
    """The endless line of each (n,), where it begins and ends on it (n, 2); of each endless line a
    point (m, 2) and the way it runs (m, 2).
    """
    step = ends[:, 1] - ends[:, 0]
    step = step / np.linalg.norm(step, axis=1, keepdims=True)
    upright = np.abs(step[:, 0]) < _PARALLEL
    step = step * np.where(upright, np.sign(step[:, 1]), np.sign(step[:, 0]))[:, None]
    direction = _alike(np.arctan2(step[:, 1], step[:, 0]), _PARALLEL)
    way = step[_firsts(direction)][direction]
    off = way[:, 0] * ends[:, 0, 1] - way[:, 1] * ends[:, 0, 0]
    line = _alike(off + direction * 2 * _REACH, SAME)
    first = _firsts(line)
    way, off = way[first], off[first]
    along = np.sort(np.einsum("nij,nj->ni", ends, way[line]), axis=1)
    return line, along, off[:, None] * np.stack([-way[:, 1], way[:, 0]], axis=1), way


def _alike(values: Floats, within: float) -> Ints:
    """Numbers values so that those that follow each other within a distance share one."""
    order = np.argsort(values, kind="stable")
    new = np.diff(values[order], prepend=values[order[:1]]) > within
    found = np.empty(len(values), np.intp)
    found[order] = np.cumsum(new)
    return found


def _firsts(number: Ints) -> Ints:
    """The first of all that share a number."""
    return np.unique(number, return_index=True)[1]


# ---------------------------------------------------------------- painting


class _Stops(NamedTuple):
    """Every place at which something begins or ends: its `line`, and where it lies on it, mm."""

    line: Ints
    at: Floats


def _stops(line: Ints, along: Floats) -> tuple[_Stops, Ints]:
    """All stops in order, and the two (n, 2) of each stroke."""
    every = np.round(along / _STEP) * _STEP + line[:, None] * 2 * _REACH
    number = _alike(every.ravel(), SAME)
    first = _firsts(number)
    at = np.round(along.ravel()[first] / _STEP) * _STEP
    return _Stops(np.repeat(line, 2)[first], at), number.reshape(-1, 2)


def _painted(stops: int, span: Ints, order: Ints) -> Ints:
    """The last painted stroke over each stretch from a stop to the next; -1 for none."""
    owner = np.full(stops, -1, np.intp)
    for stroke, (begin, end) in zip(order.tolist(), span[order].tolist(), strict=True):
        owner[begin:end] = stroke
    return owner


def _runs(owner: Ints, line: Ints, lines: Lines) -> tuple[Ints, Ints]:
    """First stop and last stop of what is one stroke: a piece's own, of one rank, without a gap."""
    inked = owner >= 0
    same = (lines.piece[owner][1:] == lines.piece[owner][:-1]) & inked[1:] & inked[:-1]
    same &= (lines.rank[owner][1:] == lines.rank[owner][:-1]) & (line[1:] == line[:-1])
    begins = inked & ~np.concatenate([[False], same])
    ends = inked & ~np.concatenate([same, [False]])
    return np.flatnonzero(begins), np.flatnonzero(ends) + 1
