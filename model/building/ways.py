"""Ways in: along which bed axis a piece can leave its place, if others stand where they do.

What can be taken out along an axis can be brought in along it. The wood of a piece is boxes, and a
box pushed along an axis sweeps a box, so this is exact for wood. What is bought is left out: it is
round, springs, or is fitted last.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from typing import NamedTuple

import numpy as np

from model.building.joined import Joined
from model.part import Point
from model.parts.pieces import Bools, Floats, Ints
from model.solids.near import TOUCH
from model.units import Mm


class Way(NamedTuple):
    """A direction along a bed axis: `axis` 0, 1 or 2, `sign` 1 or -1."""

    axis: int
    sign: int

    @property
    def out(self) -> Point:
        """The unit vector of a piece that leaves."""
        return self._vector(self.sign)

    @property
    def into(self) -> Point:
        """The unit vector of a piece that comes."""
        return self._vector(-self.sign)

    def _vector(self, sign: int) -> Point:
        at = [0.0, 0.0, 0.0]
        at[self.axis] = float(sign)
        return (at[0], at[1], at[2])


UP, DOWN = Way(2, 1), Way(2, -1)
ALL = (UP, DOWN, Way(0, 1), Way(0, -1), Way(1, 1), Way(1, -1))


class Ways:
    """Free ways of the pieces of a bed."""

    def __init__(self, joined: Joined) -> None:
        pieces = joined.pieces
        self._lo, self._hi, self._piece = pieces.lo, pieces.hi, pieces.piece
        self._first = pieces.first.tolist()
        is_wood = np.array([joined.is_wood(k) for k in range(len(pieces))], bool)
        self._is_wood = is_wood
        self._of_wood = is_wood[pieces.piece]

    def is_free(
        self, moving: Iterable[int], others: Iterable[int], way: Way, reach: Mm = math.inf
    ) -> bool:
        """Whether some pieces can leave together along a way, past others that stand.

        What is farther off than `reach` is no bar: there the pieces can be turned aside.
        """
        mine = self._rows(moving)
        if not len(mine):
            return True
        axis, low, high = way.axis, self._lo[mine].min(axis=0), self._hi[mine].max(axis=0)
        near = self._ahead(way, low, high)
        for k in range(3):
            if k != axis:
                near &= (self._lo[:, k] < high[k] - TOUCH) & (self._hi[:, k] > low[k] + TOUCH)
        theirs = self._among(near, others)
        if not len(theirs):
            return True
        beside = self._beside(mine, theirs, axis)
        lo, hi = self._lo[:, axis], self._hi[:, axis]
        if way.sign > 0:
            bars = hi[theirs][None, :] > lo[mine][:, None] + TOUCH
            bars &= lo[theirs][None, :] < hi[mine][:, None] + reach
        else:
            bars = lo[theirs][None, :] < hi[mine][:, None] - TOUCH
            bars &= hi[theirs][None, :] > lo[mine][:, None] - reach
        return not bool((beside & bars).any())

    def first_free(
        self,
        moving: Sequence[int],
        others: Sequence[int],
        ways: Iterable[Way],
        reach: Mm = math.inf,
    ) -> Way | None:
        """The first of some ways that is free."""
        return next((way for way in ways if self.is_free(moving, others, way, reach)), None)

    def room(self, piece: int, others: Iterable[int], way: Way) -> Mm:
        """How far a piece can go along a way before it meets another; inf where it meets none."""
        mine = self._rows((piece,))
        if not len(mine):
            return math.inf
        theirs = self._among(self._of_wood, (other for other in others if other != piece))
        lo, hi = self._lo[:, way.axis], self._hi[:, way.axis]
        if way.sign > 0:
            room = lo[theirs][None, :] - hi[mine][:, None]
        else:
            room = lo[mine][:, None] - hi[theirs][None, :]
        met = room[self._beside(mine, theirs, way.axis) & (room >= -TOUCH)]
        return float(max(met.min(), 0.0)) if len(met) else math.inf

    def leaving(self, moving: Sequence[int], others: Iterable[int]) -> list[Way]:
        """Ways that lead away from a face that touches one of the others."""
        mine = self._rows(moving)
        if not len(mine):
            return []
        low, high = self._lo[mine].min(axis=0) - TOUCH, self._hi[mine].max(axis=0) + TOUCH
        near = self._of_wood & ((self._lo <= high) & (self._hi >= low)).all(axis=1)
        theirs = self._among(near, others)
        found: list[Way] = []
        for axis in range(3) if len(theirs) else ():
            faces = self._beside(mine, theirs, axis)
            lo, hi = self._lo[:, axis], self._hi[:, axis]
            below = np.abs(lo[mine][:, None] - hi[theirs][None, :]) <= TOUCH
            above = np.abs(hi[mine][:, None] - lo[theirs][None, :]) <= TOUCH
            found += [Way(axis, 1)] * bool((faces & below).any())
            found += [Way(axis, -1)] * bool((faces & above).any())
        return found

    def _rows(self, pieces: Iterable[int]) -> Ints:
        """The boxes of the wood among some pieces."""
        own = [
            row
            for k in pieces
            if self._is_wood[k]
            for row in range(self._first[k], self._first[k + 1])
        ]
        return np.array(own, np.intp)

    def _among(self, near: Bools, others: Iterable[int]) -> Ints:
        """Of the boxes near by, those of some pieces."""
        rows = np.flatnonzero(near)
        if not len(rows):
            return rows
        wanted = np.zeros(len(self._is_wood), bool)
        wanted[list(others)] = True
        return rows[wanted[self._piece[rows]]]

    def _ahead(self, way: Way, low: Floats, high: Floats) -> Bools:
        """Boxes of wood that lie ahead of a block that leaves, or beside it."""
        if way.sign > 0:
            found: Bools = self._of_wood & (self._hi[:, way.axis] > low[way.axis] + TOUCH)
        else:
            found = self._of_wood & (self._lo[:, way.axis] < high[way.axis] - TOUCH)
        return found

    def _beside(self, mine: Ints, theirs: Ints, axis: int) -> Bools:
        """Box by box whether they overlap on both other axes: (m, t)."""
        beside = np.ones((len(mine), len(theirs)), bool)
        for other in range(3):
            if other != axis:
                lo, hi = self._lo[:, other], self._hi[:, other]
                beside &= lo[mine][:, None] + TOUCH < hi[theirs][None, :]
                beside &= lo[theirs][None, :] + TOUCH < hi[mine][:, None]
        return beside
