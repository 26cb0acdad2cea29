"""One sheet filled for the most value: what a sheet can hold at best, or nearly."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from model.cutting.blocks.beside import Beside
from model.cutting.blocks.boxes import Boxes
from model.cutting.blocks.counts import Counts
from model.cutting.blocks.enumerate import MOST_BOXES, Blocks, Search, limits
from model.cutting.blocks.record import Pattern, counted
from model.cutting.bounds.question import Question, Size

Floats = NDArray[np.float64]
Whole = NDArray[np.int64]

HAIR = 1e-9
MOST_ADDED = 8  # pieces by one join: more made no sheet fuller, and took ever longer
ROUGHLY = 20  # times the width are kept while boxes of the same pieces are among them


@dataclass(frozen=True, kw_only=True)
class Filled:
    """The best pattern found; `is_best` when no edge-to-edge cuts make more of the sheet."""

    value: int
    pattern: Pattern
    is_best: bool


class Filler:
    """One sheet of a question, filled again and again with other values."""

    def __init__(self, asked: Question, sheet: int) -> None:
        self.number = sheet
        self.sheet = asked.sheets[sheet]
        sizes = (tuple(filter(self.sheet.takes, size.ways)) for size in asked.sizes)
        self.asked = Question(
            sizes=tuple(
                Size(ways, size.demand if ways else 0)
                for ways, size in zip(sizes, asked.sizes, strict=True)
            ),
            sheets=(self.sheet,),
        )
        self.limits = limits(self.asked)
        self.beside = Beside(self.asked)

    def best_filled(
        self, values: Sequence[int], width: int, demand: Sequence[int] | None = None
    ) -> Filled | None:
        """The pattern worth most that holds at most what is wanted (or `demand`, if less).

        Values are whole, none below zero. None when nothing of value fits.

        Blocks are built up by numbers of pieces; of each number only the `width` most promising
        are built on, and none that cannot beat the best so far even if all else were filled with
        the densest piece.
        """
        most = self.limits if demand is None else tuple(map(min, self.limits, demand))
        worth = tuple(each if value > 0 else 0 for each, value in zip(most, values, strict=True))
        counts = Counts(_capped(worth))
        if not any(worth) or not counts.fits:
            return None
        beam = _Beam(self.asked, counts, values, width)
        search = Search(self.asked, counts, self.beside, beam)
        is_all = search.run(MOST_BOXES) and not beam.is_narrowed and counts.limits == worth
        found = Blocks(asked=self.asked, counts=counts, boxes=search.boxes, is_complete=is_all)
        best = int(np.argmax(search.boxes.worth))
        tree = found.tree(best)
        pattern = Pattern(sheet=self.number, counts=counted(tree, len(self.asked.sizes)), tree=tree)
        return Filled(value=int(search.boxes.worth[best]), pattern=pattern, is_best=is_all)


def _capped(limits: tuple[int, ...]) -> tuple[int, ...]:
    """Limits small enough to be counted in one number, the largest brought down."""
    cap = max(limits, default=0)
    while cap > 1 and not Counts(tuple(min(each, cap) for each in limits)).fits:
        cap //= 2
    return tuple(min(each, cap) for each in limits)


class _Beam:
    """Thins out each level to what promises most: its worth, and the rest of the sheet as if it
    were filled with the densest piece.
    """

    def __init__(self, asked: Question, counts: Counts, values: Sequence[int], width: int) -> None:
        self.worth = values
        self.room = asked.sheets[0].area
        self.densest = max(
            value / size.area
            for value, size, limit in zip(values, asked.sizes, counts.limits, strict=True)
            if limit
        )
        self.width = width
        self.is_narrowed = False
        self.most = 0

    def most_added(self, half: int) -> int:
        self.is_narrowed |= half > MOST_ADDED
        return min(half, MOST_ADDED)

    def roughly(self, boxes: Boxes) -> Boxes:
        return self._thinned(boxes, ROUGHLY * self.width)

    def __call__(self, boxes: Boxes) -> Boxes:
        return self._thinned(boxes, self.width)

    def _thinned(self, boxes: Boxes, width: int) -> Boxes:
        self.most = max(self.most, int(boxes.worth.max(initial=0)))
        # Areas may pass what 64 bits hold: in floats, and a hair above for their rounding.
        free = self.room - boxes.lengths.astype(float) * boxes.widths
        promise: Floats = (boxes.worth + self.densest * free) * (1 + HAIR)
        places = np.flatnonzero((promise > self.most) | (boxes.worth == self.most))
        if len(places) > width:
            self.is_narrowed = True
            places = places[np.argsort(-promise[places], kind="stable")[:width]]
        return boxes.take(places)
