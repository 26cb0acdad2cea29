"""Every joint meets, and the bed stands: what each piece is held by, down to the floor."""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass
from typing import NamedTuple

import numpy as np

from model.part import Hold
from model.parts.pieces import Bools, Floats, Ints, Parts, Pieces
from model.solids.bars import Bars, bars
from model.solids.near import TOUCH, Near, box_pairs, gaps, largest, middle, near
from model.units import Mm

FLOOR = "floor"


@dataclass(frozen=True, kw_only=True)
class Loose:
    """A piece that meets nothing of what should hold it.

    `gap` is the smallest room to it, mm: 0 where they touch along an edge only, or share space; inf
    when no such piece is made.
    """

    piece: int
    name: str
    rules: tuple[str, ...]
    by: str
    joint: str
    within: Mm
    gap: Mm

    def sentence(self) -> str:
        """What is wrong, as the maker reads it."""
        by = self.by.replace("_", " ").replace("|", " or ").replace(".", " ")
        start = f"{self.name[:1].upper()}{self.name[1:]}"
        if math.isinf(self.gap):
            return f"{start} has nothing to hold it: this bed has no {by}."
        if self.gap <= TOUCH:
            return f"{start} should be held by {by}, but they share no face."
        return f"{start} should be held by {by}, but ends {self.gap:.2f} mm away from it."


@dataclass(frozen=True, kw_only=True)
class Afloat:
    """A piece that no chain of joints connects to the floor."""

    piece: int
    name: str
    rules: tuple[str, ...]

    def sentence(self) -> str:
        """What is wrong, as the maker reads it."""
        start = f"{self.name[:1].upper()}{self.name[1:]}"
        return f"{start} hangs in the air: no chain of joints connects it to the floor."


class _Claim(NamedTuple):
    """One hold of one part, with the rules its name stands for."""

    part: int
    hold: Hold
    rules: tuple[int, ...]


class Holding(NamedTuple):
    """Which holds are met: `loose` those that are not; `one` (e) are held by `other` (e), as
    `holds[hold]` (e) says; `grounded` (n) pieces that stand on the floor by a hold."""

    loose: tuple[Loose, ...]
    one: Ints
    other: Ints
    holds: tuple[Hold, ...]
    hold: Ints
    grounded: Bools


def reach_of(parts: Parts) -> Mm:
    """How far apart two pieces may be and still be joined: the widest clearance of any hold."""
    holds = (hold for made in parts.values() for part in made for hold in part.held)
    return max((hold.within for hold in holds if hold.by != FLOOR), default=0.0) + TOUCH


def contacts(pieces: Pieces, close: Near, round_bars: Bars) -> Floats:
    """The room between the faces that each pair of pieces turns to each other: (m,), mm.

    0 is wood on wood; inf where no face of one stands before a face of the other, or where they
    share space. A round bar is in contact with what it sits in or bears on with its end.
    """
    apart = largest(close.gap)
    faces = (middle(close.gap) < -TOUCH) & (apart >= -TOUCH)
    gap = np.where(faces, np.maximum(apart, 0.0), np.inf)
    found = np.minimum.reduceat(gap, close.start) if len(close.start) else gap
    bar_gap = np.where(round_bars.sits, 0.0, np.maximum(round_bars.rests, 0.0))
    return np.where(round_bars.is_bar, bar_gap, found)


def joints_meet(
    parts: Parts, pieces: Pieces, close: Near | None = None, room: Floats | None = None
) -> Holding:
    """Compare every hold of every piece with the pieces that touch it.

    A hold is met by a face within its clearance of a piece of the named rule, never the piece
    itself. A drawer's piece is held by pieces of its own drawer or of the bed.
    """
    close = near(pieces, reach_of(parts)) if close is None else close
    room = contacts(pieces, close, bars(pieces, close)) if room is None else room
    claims = _claims(parts, pieces)
    row_claim, row_piece = _rows(pieces, claims)
    within = np.array([claim.hold.within for claim in claims])[row_claim] + TOUCH

    allowed = np.zeros((len(claims), len(pieces.rules)), bool)
    for k, claim in enumerate(claims):
        allowed[k, list(claim.rules)] = True
    row, beside, gap = _neighbours(close, room, row_piece, len(pieces))
    ok = (gap <= within[row]) & allowed[row_claim[row], pieces.rule[beside]]
    drawer, drawer_beside = pieces.group[row_piece[row]], pieces.group[beside]
    ok &= (drawer == 0) | (drawer_beside == 0) | (drawer == drawer_beside)

    to_floor = np.array([FLOOR in _names(claim.hold) for claim in claims], bool)[row_claim]
    stands = to_floor & (pieces.bounds[0][row_piece, 2] <= within)
    met = stands | (np.bincount(row[ok], minlength=len(row_piece)) > 0)
    grounded = np.zeros(len(pieces), bool)
    grounded[row_piece[stands]] = True
    missing = np.flatnonzero(~met).tolist()
    loose = tuple(_loose(pieces, claims[row_claim[k]], int(row_piece[k])) for k in missing)
    return Holding(
        loose,
        row_piece[row[ok]],
        beside[ok],
        tuple(claim.hold for claim in claims),
        row_claim[row[ok]],
        grounded,
    )


def reaches_floor(pieces: Pieces, holding: Holding) -> tuple[Afloat, ...]:
    """Pieces that are not connected to the floor through holds that are met."""
    reached, count = holding.grounded.copy(), -1
    while count != (count := int(reached.sum())):
        reached[holding.other[reached[holding.one]]] = True
        reached[holding.one[reached[holding.other]]] = True
    left = np.flatnonzero(~reached).tolist()
    return tuple(
        Afloat(piece=piece, name=pieces.labels[piece], rules=pieces.made_by(piece))
        for piece in left
    )


def _names(hold: Hold) -> list[str]:
    return [name.strip() for name in hold.by.split("|")]


def _claims(parts: Parts, pieces: Pieces) -> list[_Claim]:
    """All holds; names are looked up once for each rule and name."""
    claims: list[_Claim] = []
    made = [(owner, part) for owner, made in parts.items() for part in made]
    known: dict[tuple[str, str], tuple[int, ...]] = {}
    for k, (owner, part) in enumerate(made):
        for hold in part.held:
            key = (owner, hold.by)
            if key not in known:
                known[key] = pieces.rules_named(*key)
            claims.append(_Claim(k, hold, known[key]))
    return claims


def _rows(pieces: Pieces, claims: list[_Claim]) -> tuple[Ints, Ints]:
    """Every piece of every claim: claim, piece."""
    count = np.bincount(pieces.part, minlength=len(pieces.parts))
    begins = np.cumsum(count) - count
    part = np.array([claim.part for claim in claims], np.intp)
    claim = np.repeat(np.arange(len(claims)), count[part])
    start = np.cumsum(count[part]) - count[part]
    return claim, np.arange(len(claim)) + (begins[part] - start)[claim]


def _neighbours(
    close: Near, room: Floats, row_piece: Ints, total: int
) -> tuple[Ints, Ints, Floats]:
    """For each row the neighbours of its piece that face it: row, neighbour, room."""
    facing = np.flatnonzero(np.isfinite(room))
    one = np.concatenate([close.one[facing], close.other[facing]])
    other = np.concatenate([close.other[facing], close.one[facing]])
    gap = np.concatenate([room[facing], room[facing]])
    order = np.argsort(one, kind="stable")
    degree = np.bincount(one, minlength=total)
    begins = np.cumsum(degree) - degree
    count = degree[row_piece]
    row = np.repeat(np.arange(len(row_piece)), count)
    start = np.cumsum(count) - count
    at = order[np.arange(len(row)) + (begins[row_piece] - start)[row]]
    return row, other[at], gap[at]


def _loose(pieces: Pieces, claim: _Claim, piece: int) -> Loose:
    hold = claim.hold
    gap = _least_gap(pieces, piece, claim.rules)
    if FLOOR in _names(hold):
        gap = min(gap, float(pieces.bounds[0][piece, 2]))
    return Loose(
        piece=piece,
        name=pieces.labels[piece],
        rules=(*pieces.made_by(piece), *(pieces.rules[k] for k in claim.rules)),
        by=hold.by,
        joint=hold.joint,
        within=hold.within,
        gap=gap,
    )


def _least_gap(pieces: Pieces, piece: int, rules: Iterable[int]) -> Mm:
    """The room to the nearest piece that the rules made, in the same drawer or on the bed."""
    group = pieces.group[piece]
    fits = np.isin(pieces.rule, list(rules)) & (np.arange(len(pieces)) != piece)
    if group:
        fits &= (pieces.group == 0) | (pieces.group == group)
    others = np.flatnonzero(fits)
    if not len(others):
        return math.inf
    _, _, a, b = box_pairs(pieces, np.full(len(others), piece), others)
    apart = largest(gaps(pieces.lo[a], pieces.hi[a], pieces.lo[b], pieces.hi[b]))
    return max(float(apart.min()), 0.0)
