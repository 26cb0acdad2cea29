"""No two pieces in the same space: at rest, and while drawers are pulled."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np

from model.parts.pieces import Floats, Ints, Pieces
from model.solids.bars import Bars, bars
from model.solids.near import TOUCH, Near, box_pairs, gaps, largest, near, shared_volume
from model.units import Mm, Mm3

Travel = Mapping[str, tuple[tuple[float, float, float], Mm]]


@dataclass(frozen=True, kw_only=True)
class Overlap:
    """Two pieces that fill the same space; `one` and `other` are their places among the pieces."""

    one: int
    other: int
    names: tuple[str, str]
    rules: tuple[str, ...]
    volume: Mm3

    def sentence(self) -> str:
        """What is wrong, as the maker reads it."""
        return f"{_start(self.names[0])} and {self.names[1]} fill the same space."


@dataclass(frozen=True, kw_only=True)
class Hit:
    """A drawer's piece that strikes another when the drawer has come out by `after` mm."""

    drawer: str
    one: int
    other: int
    names: tuple[str, str]
    rules: tuple[str, ...]
    after: Mm
    volume: Mm3

    def sentence(self) -> str:
        """What is wrong, as the maker reads it."""
        return f"When drawer {self.drawer} is pulled, its {self.names[0]} strikes {self.names[1]}."


def _start(name: str) -> str:
    return name[:1].upper() + name[1:]


def overlaps(
    pieces: Pieces, close: Near | None = None, round_bars: Bars | None = None
) -> tuple[Overlap, ...]:
    """Pairs of pieces that share more than a thousandth of a mm on every axis.

    Round bars may go through wood where it is drilled for them (see `model.solids.bars`).
    `close` and `round_bars` are taken from an earlier step where there is one.
    """
    close = near(pieces) if close is None else close
    round_bars = bars(pieces, close) if round_bars is None else round_bars
    deep = np.flatnonzero(largest(close.gap) < -TOUCH)
    deep = deep[~round_bars.is_bar[close.pair[deep]]]
    volume = shared_volume(pieces, close.box_one[deep], close.box_other[deep])
    shared = np.bincount(close.pair[deep], volume, len(close.one)) + round_bars.shared
    return tuple(
        Overlap(
            one=int(close.one[k]),
            other=int(close.other[k]),
            names=(pieces.labels[close.one[k]], pieces.labels[close.other[k]]),
            rules=pieces.made_by(close.one[k], close.other[k]),
            volume=float(shared[k]),
        )
        for k in np.flatnonzero(shared > 0)
    )


def sweeps(pieces: Pieces, travel: Travel) -> tuple[Hit, ...]:
    """What each drawer's pieces strike on the way out, with every other drawer anywhere on its way.

    `travel`: for each drawer (`left-1`) the way it comes out, a unit vector along a bed axis, and
    how far. A box pulled along an axis sweeps a box, so this is exact. Contact is no hit.
    """
    moves = _moves(pieces, travel)
    moving = np.flatnonzero(np.any(moves != 0.0, axis=1))
    if not len(moving):
        return ()
    lo, hi = pieces.bounds
    one, other = _swept_pairs(pieces, moves, moving, lo, hi)
    _, pair, box, box_other = box_pairs(pieces, one, other)
    move, move_other = moves[one][pair], moves[other][pair]
    a, b = _swept(pieces.lo[box], pieces.hi[box], move)
    c, d = _swept(pieces.lo[box_other], pieces.hi[box_other], move_other)
    struck = np.flatnonzero(largest(gaps(a, b, c, d)) < -TOUCH)
    shared = (np.minimum(b, d)[struck] - np.maximum(a, c)[struck]).prod(axis=1)
    volume = np.bincount(pair[struck], shared, len(one))
    room = _room(pieces.lo[box[struck]], pieces.hi[box[struck]], c[struck], d[struck], move[struck])
    after = np.full(len(one), np.inf)
    np.minimum.at(after, pair[struck], room)
    return tuple(
        Hit(
            drawer=pieces.groups[pieces.group[one[k]]],
            one=int(one[k]),
            other=int(other[k]),
            names=(pieces.parts[pieces.part[one[k]]].name, pieces.labels[other[k]]),
            rules=pieces.made_by(one[k], other[k]),
            after=float(after[k]),
            volume=float(volume[k]),
        )
        for k in np.flatnonzero(volume > 0)
    )


def _moves(pieces: Pieces, travel: Travel) -> Floats:
    """How far each piece moves on each bed axis, mm: (n, 3)."""
    of_group = np.zeros((len(pieces.groups), 3))
    for k, name in enumerate(pieces.groups):
        if name in travel:
            way, far = travel[name]
            of_group[k] = np.asarray(way, float) * float(far)
    if np.any((of_group != 0.0).sum(axis=1) > 1):
        raise ValueError("drawers are swept along one bed axis only")
    return of_group[pieces.group]


def _swept(lo: Floats, hi: Floats, move: Floats) -> tuple[Floats, Floats]:
    return lo + np.minimum(move, 0.0), hi + np.maximum(move, 0.0)


def _swept_pairs(
    pieces: Pieces, moves: Floats, moving: Ints, lo: Floats, hi: Floats
) -> tuple[Ints, Ints]:
    """Moving pieces and others, not of the same drawer, whose swept bounds meet; each pair once."""
    low, high = _swept(lo, hi, moves)
    meet = pieces.group[moving][:, None] != pieces.group[None]
    for axis in range(3):
        meet &= low[moving, axis][:, None] + TOUCH < high[None, :, axis]
        meet &= low[None, :, axis] + TOUCH < high[moving, axis][:, None]
    row, other = np.nonzero(meet)
    one = moving[row]
    does_move = np.zeros(len(lo), bool)
    does_move[moving] = True
    once = ~does_move[other] | (one < other)
    return one[once], other[once]


def _room(lo: Floats, hi: Floats, other_lo: Floats, other_hi: Floats, move: Floats) -> Floats:
    """How far boxes can move before they meet the other ones, mm; 0 where they meet at rest."""
    rows, axis = np.arange(len(move)), np.abs(move).argmax(axis=1)
    ahead, behind = (other_lo - hi)[rows, axis], (lo - other_hi)[rows, axis]
    return np.asarray(np.maximum(np.where(move[rows, axis] > 0, ahead, behind), 0.0))
