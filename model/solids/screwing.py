"""Screw points: each one ends in wood, with wood before its point and wood beside its shank."""

from __future__ import annotations

from dataclasses import dataclass
from typing import NamedTuple

import numpy as np

from model.part import Screw
from model.parts.pieces import Bools, Floats, Ints, Parts, Pieces, as_cut
from model.solids.near import TOUCH
from model.units import Mm

_BACK: Mm = 1e-2  # how far behind its point a screw is asked for wood: clear of faces it stops at


@dataclass(frozen=True, kw_only=True)
class ScrewPoint:
    """Where one screw of a part ends. `piece` carries its head, `into` its point (-1: no wood).

    `bite` is how deep it goes into that piece, `cover` the wood before its point, both mm along the
    screw; `has_walls` tells whether its shank keeps inside the wood there.
    """

    piece: int
    name: str
    rules: tuple[str, ...]
    screw: Screw
    into: int
    bite: Mm
    cover: Mm
    has_walls: bool

    @property
    def holds(self) -> bool:
        """Whether the point is in the right wood, with enough of it before and beside it."""
        return self.into >= 0 and self.has_walls and self.cover >= self.screw.cover - TOUCH

    def sentence(self) -> str:
        """What becomes of the screw, as the maker reads it."""
        into = self.screw.into.replace("_", " ").replace("|", " or ").replace(".", " ")
        start = f"A {self.screw.kind} of the {self.name}"
        if self.into < 0:
            return f"{start} does not end in {into}."
        if not self.has_walls:
            return f"{start} comes out at the side of {into}."
        left = f"{start} leaves {self.cover:.1f} mm of wood before its point in {into}"
        return f"{left}." if self.holds else f"{left}; {self.screw.cover:.1f} mm are wanted."


class _Shanks(NamedTuple):
    """Screws row by row, in bed axes: head, direction, length, radius, the piece they belong to."""

    head: Floats
    toward: Floats
    length: Floats
    radius: Floats
    piece: Ints


def screw_points(parts: Parts, pieces: Pieces) -> tuple[ScrewPoint, ...]:
    """Look where every screw ends, for the first piece of every part."""
    first = np.flatnonzero(pieces.place == 0).tolist()
    made = [part for each in parts.values() for part in each if part.places]
    rows = [
        (p, screw) for p, part in zip(first, made, strict=True) for screw in as_cut(part).screws
    ]
    if not rows:
        return ()
    shanks = _shanks(pieces, rows)
    row, other = _candidates(pieces, rows, shanks)
    bite, cover, has_walls = _through(pieces, shanks, row, other)
    best = np.full(len(rows), -1)
    order = np.argsort(np.where(bite > 0, cover, -1.0), kind="stable")
    best[row[order]] = order
    found = []
    for k, (piece, screw) in enumerate(rows):
        at = int(best[k])
        ends = at >= 0 and bite[at] > 0
        found.append(
            ScrewPoint(
                piece=piece,
                name=pieces.parts[pieces.part[piece]].name,
                rules=pieces.made_by(piece, *([int(other[at])] if ends else [])),
                screw=screw,
                into=int(other[at]) if ends else -1,
                bite=float(bite[at]) if ends else 0.0,
                cover=float(cover[at]) if ends else 0.0,
                has_walls=bool(has_walls[at]) if ends else False,
            )
        )
    return tuple(found)


def _shanks(pieces: Pieces, rows: list[tuple[int, Screw]]) -> _Shanks:
    piece = np.array([p for p, _ in rows])
    matrix = pieces.matrices[piece]
    at = np.array([screw.at for _, screw in rows], float)
    way = np.array([screw.toward for _, screw in rows], float)
    way /= np.linalg.norm(way, axis=1, keepdims=True)
    turn = matrix[:, :3, :3]
    return _Shanks(
        np.einsum("sij,sj->si", turn, at) + matrix[:, :3, 3],
        np.einsum("sij,sj->si", turn, way),
        np.array([float(screw.length) for _, screw in rows]),
        np.array([float(screw.diameter) for _, screw in rows]) / 2,
        piece,
    )


def _candidates(
    pieces: Pieces, rows: list[tuple[int, Screw]], shanks: _Shanks
) -> tuple[Ints, Ints]:
    """Pieces of the named rule whose bounds hold the point of a screw: row, piece."""
    lo, hi = pieces.bounds
    point = shanks.head + shanks.toward * (shanks.length - _BACK)[:, None]
    inside = _allowed(pieces, rows)
    inside &= np.arange(len(pieces)) != shanks.piece[:, None]
    group = pieces.group[shanks.piece][:, None]
    inside &= (group == 0) | (pieces.group == 0) | (pieces.group == group)
    for axis in range(3):
        inside &= lo[:, axis] <= point[:, axis, None]
        inside &= point[:, axis, None] <= hi[:, axis]
    row, other = np.nonzero(inside)
    return row, other


def _allowed(pieces: Pieces, rows: list[tuple[int, Screw]]) -> Bools:
    """Which pieces each screw may end in: (s, n)."""
    known: dict[tuple[int, str], int] = {}
    masks: list[Bools] = []
    which = []
    for piece, screw in rows:
        key = (int(pieces.rule[piece]), screw.into)
        if key not in known:
            known[key] = len(masks)
            mask = np.zeros(len(pieces.rules), bool)
            mask[list(pieces.rules_named(pieces.rules[key[0]], screw.into))] = True
            masks.append(mask[pieces.rule])
        which.append(known[key])
    return np.array(masks)[which]


def _through(
    pieces: Pieces, shanks: _Shanks, row: Ints, other: Ints
) -> tuple[Floats, Floats, Bools]:
    """Depth in each candidate, wood before the point, and whether the shank keeps inside it.

    The shank is looked at as its axis and four lines along its sides.
    """
    lines, tip = 5, shanks.length[row]
    origin, toward = _lines(shanks)
    count = np.tile(np.diff(pieces.first)[other], lines)
    pair = np.repeat(np.arange(len(count)), count)
    start = np.cumsum(count) - count
    box = np.arange(len(pair)) + (np.tile(pieces.first[other], lines) - start)[pair]
    at = np.tile(row, lines) + np.repeat(np.arange(lines) * len(shanks.piece), len(row))
    ends = np.tile(tip, lines)
    depth, room = _along(pieces, origin[at[pair]], toward[at[pair]], box, pair, ends)
    depth = depth.reshape(lines, len(row))
    bite, beside = depth[0], depth[1:].min(axis=0)
    slant = _slant(shanks.toward[row]) * shanks.radius[row]
    return bite, room[: len(row)], beside >= bite - slant - 10 * TOUCH


def _lines(shanks: _Shanks) -> tuple[Floats, Floats]:
    """Start and direction of every screw, then of four lines along its sides: (5 s, 3) each."""
    one, two = _across(shanks.toward)
    reach = (shanks.radius - TOUCH)[:, None]
    beside = [shanks.head + side * reach for side in (one, two, -one, -two)]
    return np.concatenate([shanks.head, *beside]), np.tile(shanks.toward, (5, 1))


def _along(
    pieces: Pieces, origin: Floats, toward: Floats, box: Ints, pair: Ints, tip: Floats
) -> tuple[Floats, Floats]:
    """Wood along a line, for each pair: mm before `tip`, and mm without a break from `tip` on."""
    flat = np.abs(toward) < 1e-12
    way = np.where(flat, 1.0, toward)
    a, b = (pieces.lo[box] - origin) / way, (pieces.hi[box] - origin) / way
    inside = (pieces.lo[box] < origin) & (origin < pieces.hi[box])
    enter = np.where(flat, np.where(inside, -np.inf, np.inf), np.minimum(a, b)).max(axis=1)
    leave = np.where(flat, np.where(inside, np.inf, -np.inf), np.maximum(a, b)).min(axis=1)
    # Up to _BACK before the point counts as at the point: that is where its wood was looked for.
    before = np.clip(np.minimum(leave, tip[pair]) - np.maximum(enter, 0.0), 0.0, None)
    bite: Floats = np.bincount(pair, before, len(tip)).astype(float)
    end = tip - _BACK
    for _ in range(len(box) + 1):
        goes_on = (enter <= end[pair] + TOUCH) & (leave > end[pair] + TOUCH)
        if not goes_on.any():
            break
        np.maximum.at(end, pair[goes_on], leave[goes_on])
    return bite, np.maximum(end - tip, 0.0)


def _slant(toward: Floats) -> Floats:
    """How much sooner one side of a slanted shank of radius 1 meets a face than its axis does."""
    straight = np.abs(toward).max(axis=1)
    return np.asarray(np.sqrt(np.clip(1 - straight**2, 0, None)) / straight)


def _across(toward: Floats) -> tuple[Floats, Floats]:
    """Two unit vectors square to each direction, the first also square to a bed axis."""
    rows = np.arange(len(toward))
    least = np.zeros_like(toward)
    least[rows, np.abs(toward).argmin(axis=1)] = 1.0
    one = np.cross(toward, least)
    one /= np.linalg.norm(one, axis=1, keepdims=True)
    return one, np.cross(toward, one)
