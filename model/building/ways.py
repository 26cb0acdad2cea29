"""Ways in: along which bed axis a piece can leave its place, if others stand where they do.

What can be taken out along an axis can be brought in along it. The wood of a piece is boxes, and a
box pushed along an axis sweeps a box, so this is exact for wood. What is bought is left out: it is
round, springs, or is fitted last.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import NamedTuple

import numpy as np

from model.building.joined import Joined
from model.part import Point
from model.parts.pieces import Bools, Floats, Ints
from model.solids.near import TOUCH


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
        self._pieces = joined.pieces
        self._is_wood = np.array([joined.is_wood(k) for k in range(len(joined.pieces))], bool)

    def rows(self, pieces: Iterable[int]) -> Ints:
        """The boxes of the wood among some pieces."""
        first = self._pieces.first
        own = [np.arange(first[k], first[k + 1]) for k in sorted(pieces) if self._is_wood[k]]
        return np.concatenate(own) if own else np.zeros(0, np.intp)

    def is_free(self, moving: Iterable[int], others: Iterable[int], way: Way) -> bool:
        """Whether some pieces can leave together along a way, past others that stand."""
        mine, theirs = self.rows(moving), self.rows(others)
        if not len(mine) or not len(theirs):
            return True
        beside = self._beside(mine, theirs, way.axis)
        lo, hi = self._pieces.lo[:, way.axis], self._pieces.hi[:, way.axis]
        if way.sign > 0:
            ahead = hi[theirs][None, :] > lo[mine][:, None] + TOUCH
        else:
            ahead = lo[theirs][None, :] < hi[mine][:, None] - TOUCH
        return not bool(np.any(beside & ahead))

    def first_free(
        self, moving: Sequence[int], others: Sequence[int], ways: Iterable[Way]
    ) -> Way | None:
        """The first of some ways that is free."""
        return next((way for way in ways if self.is_free(moving, others, way)), None)

    def leaving(self, moving: Sequence[int], others: Iterable[int]) -> list[Way]:
        """Ways that lead away from a face that touches one of the others."""
        mine, theirs = self.rows(moving), self.rows(others)
        if not len(mine) or not len(theirs):
            return []
        found = []
        for axis in range(3):
            faces = self._beside(mine, theirs, axis)
            lo, hi = self._pieces.lo[:, axis], self._pieces.hi[:, axis]
            below = np.abs(lo[mine][:, None] - hi[theirs][None, :]) <= TOUCH
            above = np.abs(hi[mine][:, None] - lo[theirs][None, :]) <= TOUCH
            found += [Way(axis, 1)] * bool(np.any(faces & below))
            found += [Way(axis, -1)] * bool(np.any(faces & above))
        return found

    def _beside(self, mine: Ints, theirs: Ints, axis: int) -> Bools:
        """Box by box whether they overlap on both other axes: (m, t)."""
        beside = np.ones((len(mine), len(theirs)), bool)
        for other in range(3):
            if other != axis:
                lo, hi = self._pieces.lo[:, other], self._pieces.hi[:, other]
                beside &= _overlap(lo[mine], hi[mine], lo[theirs], hi[theirs])
        return beside


def _overlap(lo: Floats, hi: Floats, other_lo: Floats, other_hi: Floats) -> Bools:
    found: Bools = (lo[:, None] + TOUCH < other_hi[None, :]) & (
        other_lo[None, :] + TOUCH < hi[:, None]
    )
    return found
