"""Every block that edge-to-edge cuts can part into wanted pieces, as far as they are few.

A block is a box of pieces, joined two by two along or across (Wang, Two algorithms for constrained
two-dimensional cutting stock problems, Operations Research 31:573-586, 1983; from memory). Of all
boxes with the same pieces only those are kept that no other can stand in for.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from model.cutting.blocks.counts import Counts, Whole
from model.cutting.blocks.record import Leaf, Tree, joined
from model.cutting.bounds.question import ACROSS, ALONG, Axis, Question

MOST_BOXES = 20_000
MOST_PAIRS = 10_000_000  # of boxes looked at for joining
MOST_JOINS = 400_000
AT_A_TIME = 400_000
MOST_SUMS = 20_000

PIECE, CROSSCUT, RIP = 0, 1, 2  # what the first cut of a box is


@dataclass(frozen=True)
class Boxes:
    """Boxes with their packed counts; of a piece `low` is its size, else `low` and `high` are the
    numbers of the boxes that are joined.
    """

    lengths: Whole
    widths: Whole
    keys: Whole
    cuts: Whole
    low: Whole
    high: Whole

    def __len__(self) -> int:
        return len(self.keys)

    def take(self, places: Whole | NDArray[np.bool_]) -> Boxes:
        return Boxes(*(column[places] for column in self.columns))

    @property
    def columns(self) -> tuple[Whole, ...]:
        return (self.lengths, self.widths, self.keys, self.cuts, self.low, self.high)


def together(parts: list[Boxes]) -> Boxes:
    return Boxes(
        *(np.concatenate(each) for each in zip(*(one.columns for one in parts), strict=True))
    )


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
    counts = Counts(tuple(_limit(asked, at) for at in range(len(asked.sizes))))
    if not counts.fits:
        return None
    search = _Search(asked, counts, most)
    is_complete = search.run()
    boxes = together([each for each in search.levels if each is not None])
    return Blocks(asked=asked, counts=counts, boxes=boxes, is_complete=is_complete)


def _limit(asked: Question, at: int) -> int:
    """How many of a size one sheet can hold at most, by area."""
    size = asked.sizes[at]
    room = max(sheet.area for sheet, fits in zip(asked.sheets, asked.fits, strict=True) if fits[at])
    return min(size.demand, room // size.area)


class _Search:
    """Level by level: boxes of one piece, of two, of three.

    The later block of a join is never the larger one, nor itself joined the same way: a chain of
    blocks is built up from its first, its smallest last, and none of its blocks is lost by that.
    """

    def __init__(self, asked: Question, counts: Counts, most: int) -> None:
        self.asked = asked
        self.counts = counts
        self.most = most
        self.pairs = 0
        self.joins = 0
        self.breaks = _breaks(asked, ALONG), _breaks(asked, ACROSS)
        self.levels: list[Boxes] = []
        self.starts: list[int] = []

    def run(self) -> bool:
        self._keep(self._pieces())
        smallest = min(size.area for size in self.asked.sizes)
        room = max(sheet.area for sheet in self.asked.sheets)
        for number in range(2, min(room // smallest, sum(self.counts.limits)) + 1):
            found = []
            for later in range(1, number // 2 + 1):
                self.pairs += 2 * len(self.levels[number - later - 1]) * len(self.levels[later - 1])
                if self.pairs > MOST_PAIRS or self.joins > MOST_JOINS:
                    return False
                found += self._joins(number - later, later)
            if not any(map(len, found)):
                return True
            self._keep(together(found))
            if self.starts[-1] + len(self.levels[-1]) > self.most:
                return False
        return True

    def _pieces(self) -> Boxes:
        rows = [
            (length, width, self.counts.one(at), PIECE, at, 0)
            for at, size in enumerate(self.asked.sizes)
            for length, width in size.ways
        ]
        return Boxes(*np.array(rows, np.int64).T)

    def _keep(self, found: Boxes) -> None:
        self.starts.append(self.starts[-1] + len(self.levels[-1]) if self.levels else 0)
        self.levels.append(found.take(self._best(found)))

    def _joins(self, first: int, later: int) -> list[Boxes]:
        """All joins of boxes of so many pieces that fit a sheet."""
        low, high = self.levels[first - 1], self.levels[later - 1]
        start = self.starts[first - 1], self.starts[later - 1]
        step = max(1, AT_A_TIME // max(1, len(high)))
        found = []
        for cut in (CROSSCUT, RIP):
            right = np.flatnonzero(high.cuts != cut)
            for begin in range(0, len(low), step):
                left = np.arange(begin, min(begin + step, len(low)))
                found.append(self._join(cut, (low, left, start[0]), (high, right, start[1])))
        return found

    def _join(
        self, cut: int, low: tuple[Boxes, Whole, int], high: tuple[Boxes, Whole, int]
    ) -> Boxes:
        (lows, left, low_start), (highs, right, high_start) = low, high
        axis, other = (ALONG, ACROSS) if cut == CROSSCUT else (ACROSS, ALONG)
        a, b = lows.columns[axis][left], highs.columns[axis][right]
        room = max(sheet[axis] for sheet in self.asked.sheets)
        i, j = np.nonzero(a[:, None] + b[None, :] <= room)
        i, j = left[i], right[j]
        keys = lows.keys[i] + highs.keys[j]
        wanted = self.counts.within(keys)
        i, j, keys = i[wanted], j[wanted], keys[wanted]
        sides = [lows.columns[axis][i] + highs.columns[axis][j]]
        sides.append(np.maximum(lows.columns[other][i], highs.columns[other][j]))
        lengths, widths = (sides[axis], sides[other])
        cuts = np.full_like(keys, cut)
        boxes = Boxes(lengths, widths, keys, cuts, i + low_start, j + high_start)
        fits = np.zeros(len(keys), bool)
        for sheet in self.asked.sheets:
            fits |= (lengths <= sheet.length) & (widths <= sheet.width)
        self.joins += len(keys)
        return boxes.take(fits)

    def _best(self, found: Boxes) -> Whole:
        """Boxes that no other of the same pieces can stand in for.

        Compared by class: which sums of pieces still fit beside them. Their real sizes are kept
        for joining, because two classes say nothing about the class of their sum.
        """
        along = _classes(self.breaks[ALONG], found.lengths)
        across = _classes(self.breaks[ACROSS], found.widths)
        order = np.lexsort((across, along, found.keys))
        keys = found.keys[order]
        group = np.cumsum(np.diff(keys, prepend=keys[:1]) != 0)
        height = across[order] - group * (np.max(across, initial=0) + 1)
        lowest_before = np.minimum.accumulate(height)[:-1]
        kept: Whole = order[np.concatenate((height[:1] == height[:1], height[1:] < lowest_before))]
        return kept


def _classes(breaks: Whole | None, lengths: Whole) -> Whole:
    """By how many breaks a length is past; lengths themselves where there are no breaks."""
    return lengths if breaks is None else np.searchsorted(breaks, lengths).astype(np.int64)


def _breaks(asked: Question, axis: Axis) -> Whole | None:
    """Lengths at which one sum of pieces less fits beside a block, on some sheet; None when there
    are too many sums.
    """
    rooms = sorted({sheet[axis] for sheet in asked.sheets})
    sums = np.zeros(1, np.int64)
    for size in asked.sizes:
        sides = {way[axis] for way in size.ways}
        for _ in range(size.demand):
            more = np.unique(np.concatenate([sums, *(sums + side for side in sides)]))
            more = more[more <= rooms[-1]]
            if len(more) > MOST_SUMS:
                return None
            if len(more) == len(sums):
                break
            sums = more
    return np.unique(np.concatenate([room - sums for room in rooms]))
