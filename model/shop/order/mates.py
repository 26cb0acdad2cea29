"""Which parts meet in a joint: found on the bed, where a cut's room is another part's wood."""

from __future__ import annotations

from collections.abc import Iterable

import numpy as np

from model.bed import Bed
from model.part import Cut, Hole
from model.parts.marks import Mark
from model.parts.pieces import Floats
from model.shop.order.record import Spot

INSIDE = 0.05  # mm: a box is shrunk by this, so that faces that only touch do not count
SLACK = 0.3  # mm: what goes between two walls may be this much thicker than their distance
BEYOND = 0.5  # mm: how far before a hole's mouth the other part is looked for

Owners = list[int]


class Mates:
    """The marks that meet at the cuts and holes of a bed's parts."""

    def __init__(self, bed: Bed) -> None:
        self.marks = {mark.mark: mark for mark in bed.marks}
        pieces = bed.pieces
        owner = np.full(len(pieces), -1)
        for k, mark in enumerate(bed.marks):
            owner[list(mark.pieces)] = k
        self._owner = owner[pieces.piece]
        self._lo, self._hi = pieces.lo, pieces.hi
        self._names = tuple(self.marks)

    def at(self, mark: Mark, spots: Iterable[Spot]) -> tuple[str, ...]:
        """The marks that go into these cuts of a mark (or stand before its holes), in their order;
        where nothing goes in between the walls, all that fill them in part.
        """
        own = self._names.index(mark.mark)
        meeting: set[int] = set()
        between: set[int] = set()
        for spot in spots:
            low, high = _room(mark.features[spot.feature])
            for matrix in mark.matrices:
                met, inside = self._in(matrix, low, high, spot.against.axis)
                meeting.update(met)
                between.update(inside)
        found = (between or meeting) - {own, -1}
        return tuple(self._names[k] for k in sorted(found))

    def _in(self, matrix: Floats, low: Floats, high: Floats, across: int) -> tuple[Owners, Owners]:
        """Whose wood lies in a box, and whose of these lies between its walls `across`."""
        ends = np.array([low, high]) @ matrix[:3, :3].T + matrix[:3, 3]
        a, b = ends.min(axis=0) + INSIDE, ends.max(axis=0) - INSIDE
        meets = ((self._lo < b) & (self._hi > a)).all(axis=1)
        axis = int(np.abs(matrix[:3, across]).argmax())
        fits = (self._lo[:, axis] > a[axis] - SLACK) & (self._hi[:, axis] < b[axis] + SLACK)
        return self._owner[meets].tolist(), self._owner[meets & fits].tolist()


def _room(feature: Cut | Hole) -> tuple[Floats, Floats]:
    """The box where the other part is looked for, in the part's own axes."""
    if isinstance(feature, Cut):
        return np.asarray(feature.low, float), np.asarray(feature.high, float)
    before = np.asarray(feature.at, float) - BEYOND * np.asarray(feature.toward, float)
    return before - 2 * INSIDE, before + 2 * INSIDE
