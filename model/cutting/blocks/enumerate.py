"""Every block that edge-to-edge cuts can part into wanted pieces, as far as they are few.

A block is a box of pieces, joined two by two along or across (Wang, Two algorithms for constrained
two-dimensional cutting stock problems, Operations Research 31:573-586, 1983; from memory). Of all
boxes with the same pieces only those are kept that no other can stand in for.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Protocol

import numpy as np

from model.cutting.blocks.beside import Beside
from model.cutting.blocks.boxes import CROSSCUT, PIECE, RIP, Boxes, Whole, smallest, together
from model.cutting.blocks.counts import Counts
from model.cutting.blocks.record import Leaf, Tree, joined
from model.cutting.bounds.question import ACROSS, ALONG, Axis, Question

MOST_BOXES = 20_000
MOST_PAIRS = 10_000_000  # of boxes looked at for joining
MOST_JOINS = 400_000
AT_A_TIME = 400_000


class Narrow(Protocol):
    """Thins out a level before it is built on: what each size is worth, and what stays."""

    worth: Sequence[int]

    def most_added(self, half: int) -> int:
        """How many pieces a join adds at most, of a `half` that would miss nothing."""

    def roughly(self, boxes: Boxes) -> Boxes:
        """Quickly, with boxes of the same pieces still among them."""

    def __call__(self, boxes: Boxes) -> Boxes:
        """What is built on."""


NOTHING = Boxes(*np.zeros((7, 0), np.int64))


@dataclass(frozen=True, kw_only=True)
class Blocks:
    """All blocks found. `is_complete`: no multiset of pieces that fits a sheet is missing."""

    asked: Question
    counts: Counts
    boxes: Boxes
    is_complete: bool

    def tree(self, at: int) -> Tree:
        boxes = self.boxes
        low, high, cut = int(boxes.low[at]), int(boxes.high[at]), boxes.cuts[at]
        if cut == PIECE:
            return Leaf(low, int(boxes.lengths[at]), int(boxes.widths[at]))
        return joined("crosscut" if cut == CROSSCUT else "rip", self.tree(low), self.tree(high))


def blocks(asked: Question, most: int = MOST_BOXES) -> Blocks | None:
    """Every block that fits a sheet; given up (not complete) above `most` boxes.

    None where the counts are too many to be told apart.
    """
    counts = Counts(limits(asked))
    if not counts.fits:
        return None
    search = Search(asked, counts, Beside(asked))
    is_complete = search.run(most)
    return Blocks(asked=asked, counts=counts, boxes=search.boxes, is_complete=is_complete)


def limits(asked: Question) -> tuple[int, ...]:
    """How many of each size one sheet can hold at most, by area."""
    rooms = (
        max((sheet.area for sheet in asked.sheets if any(map(sheet.takes, size.ways))), default=0)
        for size in asked.sizes
    )
    return tuple(
        min(size.demand, room // size.area if room else 0)
        for size, room in zip(asked.sizes, rooms, strict=True)
    )


class Search:
    """Level by level: boxes of one piece, of two, of three.

    The later block of a join is never the larger one, nor itself joined the same way: a chain of
    blocks is built up from its first, its smallest last, and none of its blocks is lost by that.
    `narrow` may thin out a level before it is built on.
    """

    def __init__(
        self, asked: Question, counts: Counts, beside: Beside, narrow: Narrow | None = None
    ) -> None:
        self.asked = asked
        self.counts = counts
        self.beside = beside
        self.narrow = narrow
        self.rooms = (
            max(sheet.length for sheet in asked.sheets),
            max(sheet.width for sheet in asked.sheets),
        )
        self.pairs = 0
        self.joins = 0
        self.boxes = NOTHING
        self.starts = [0]  # of each number of pieces, among the boxes
        self.laters: dict[int, list[Whole]] = {CROSSCUT: [], RIP: []}  # what may be joined so

    def run(self, most: int) -> bool:
        """Build all levels; False when given up, above `most` boxes or, unless levels are thinned
        out, after too many tries.
        """
        self._keep(self._pieces())
        for number in range(2, sum(self.counts.limits) + 1):
            if number > self._reach():
                break
            found = [NOTHING]
            for part in self._joins(number):
                found.append(part)
                if self.narrow is None and self._is_tired():
                    return False
            self._keep(together(found))
            if self.starts[-1] > most:
                return False
        return True

    def _most_added(self, number: int) -> int:
        return number // 2 if self.narrow is None else self.narrow.most_added(number // 2)

    def _is_tired(self) -> bool:
        return self.pairs > MOST_PAIRS or self.joins > MOST_JOINS

    def _reach(self) -> int:
        """The most pieces that a join can still have. A block less any piece is a block: if no
        block has so many pieces, none has more, unless levels were thinned out.
        """
        sizes = np.diff(self.starts)
        if self.narrow is None:
            return len(sizes) + 1 if sizes[-1] else 0
        return 2 * int(np.max(np.flatnonzero(sizes), initial=-1) + 1)

    def _pieces(self) -> Boxes:
        worth = self.narrow.worth if self.narrow else [0] * len(self.asked.sizes)
        rows = [
            (length, width, self.counts.one(at), PIECE, at, 0, worth[at])
            for at, size in enumerate(self.asked.sizes)
            if self.counts.limits[at]
            for length, width in size.ways
        ]
        return Boxes(*np.array(rows, np.int64).reshape(len(rows), 7).T)

    def _keep(self, found: Boxes) -> None:
        if self.narrow is not None:
            found = self.narrow.roughly(found)
        along = self.beside.classes(ALONG, found.lengths)
        across = self.beside.classes(ACROSS, found.widths)
        level = smallest(found, along, across)
        if self.narrow is not None:
            level = self.narrow(level)
        first = len(self.boxes)
        self.boxes = together((self.boxes, level))
        self.starts.append(len(self.boxes))
        for cut, laters in self.laters.items():
            laters.append(first + np.flatnonzero(level.cuts != cut))

    def _joins(self, number: int) -> Iterator[Boxes]:
        """All joins to so many pieces that fit a sheet."""
        for cut in (CROSSCUT, RIP):
            axis: Axis = ALONG if cut == CROSSCUT else ACROSS
            found: list[tuple[Whole, Whole]] = []
            for pairs in self._pairs(number, cut, axis):
                found.append(pairs)
                if sum(len(left) for left, _ in found) > AT_A_TIME:
                    yield self._joined(cut, axis, found)
                    found = []
            if found:
                yield self._joined(cut, axis, found)

    def _pairs(self, number: int, cut: int, axis: Axis) -> Iterator[tuple[Whole, Whole]]:
        """Boxes, by number, that fit a sheet end to end and have so many pieces together."""
        sides = self.boxes.columns[axis]
        for later in range(1, self._most_added(number) + 1):
            right = self.laters[cut][later - 1]
            first, end = self.starts[number - later - 1 : number - later + 1]
            if first == end or not len(right):
                continue
            room = self.rooms[axis] - sides[right]
            step = max(1, AT_A_TIME // len(right))
            for begin in range(first, end, step):
                some = sides[begin : min(begin + step, end)]
                self.pairs += len(some) * len(right)
                low, high = (some[:, None] <= room).nonzero()
                yield low + begin, right[high]

    def _joined(self, cut: int, axis: Axis, pairs: Sequence[tuple[Whole, Whole]]) -> Boxes:
        """The joins of these pairs that hold no more than is wanted and fit a sheet."""
        known = self.boxes
        left = np.concatenate([each for each, _ in pairs])
        right = np.concatenate([each for _, each in pairs])
        keys = known.keys[left] + known.keys[right]
        wanted = self.counts.within(keys)
        left, right, keys = left[wanted], right[wanted], keys[wanted]
        self.joins += len(keys)
        sides, depths = known.columns[axis], known.columns[1 - axis]
        ends = sides[left] + sides[right]
        deepest = np.maximum(depths[left], depths[right])
        lengths, widths = (ends, deepest) if axis == ALONG else (deepest, ends)
        worth = known.worth[left] + known.worth[right]
        boxes = Boxes(lengths, widths, keys, np.full_like(keys, cut), left, right, worth)
        fits = np.zeros(len(keys), bool)
        for sheet in self.asked.sheets:
            fits |= (lengths <= sheet.length) & (widths <= sheet.width)
        return boxes.take(fits)
