"""The most that a board can be worth when no strip is cut more often than it is wanted.

Band after band, all that may lead to more than the best so far is kept: what the bands so far hold,
and what the rest of the blank could be worth if each band counted for itself. Where something was
taken off the worth of lots (and given back once for every strip wanted), few are left to look at.
Source: bounding by a relaxation, branching over its parts; here level by level (from memory).
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

import numpy as np

from model.cutting.boards.full import Full, full_bands
from model.cutting.boards.pattern import Pattern
from model.cutting.boards.pricing import Prices, Pricing
from model.cutting.lengths.master import Column
from model.cutting.lengths.sums import Ints, Values

MOST_PAIRS = 1_500_000  # of what there is so far and a band more
MOST_KEPT = 50_000

Trace = tuple["Trace | None", int, int, int]  # what was before, blank, way, and band


class _Parts(NamedTuple):
    """Ways to fill a part of a board: counts (n, lots), the room left in the blank, the last band
    (bands come in order), and how it came about.
    """

    counts: Ints
    room: Ints
    last: Ints
    traces: list[Trace | None]

    def only(self, kept: Ints) -> _Parts:
        traces = [self.traces[number] for number in kept.tolist()]
        return _Parts(self.counts[kept], self.room[kept], self.last[kept], traces)


class _Blank(NamedTuple):
    """A blank in one way: its bands, what each is worth, and what a rest could be worth."""

    place: int
    way: int
    full: Full
    worth: Ints
    sums: Ints
    values: Values
    room: int

    def rest(self, room: Ints) -> Values:
        entries = np.searchsorted(self.sums, np.maximum(room, 0), side="right") - 1
        return self.values[entries]


class Exact:
    """The boards of a rack; the bands of blanks are found once. `pairs` counts the pairs of what
    there is so far and a band more that were looked at: what it all takes.
    """

    def __init__(self, pricing: Pricing, demand: Sequence[int]) -> None:
        self.pricing = pricing
        self.demand: Ints = np.array(demand, dtype=np.int64)
        self.pairs = 0
        self._full: dict[tuple[int, int, int], Full | None] = {}

    def most(
        self, prices: Prices, board: int, taken: Ints, target: int
    ) -> tuple[int, Column[Pattern] | None]:
        """The most a board is worth or `target`, whichever is more, and the column if that is more.

        `prices` are those of this board with `taken` off the worth of each lot.
        """
        upper, column = target, None
        for form, numbers in enumerate(self.pricing.blanks[board]):
            relaxed = int(prices.forms[prices.boards.index(board)][form])
            relaxed += int(taken @ self.demand)
            if relaxed <= upper:
                continue
            hunt = _Hunt(self, prices, numbers, taken, upper)
            is_whole = hunt.is_whole()
            self.pairs += hunt.pairs
            upper = hunt.best if is_whole else relaxed
            if hunt.trace is not None:
                column = self._column(board, form, hunt)
        return upper, column

    def blank(self, prices: Prices, place: int, way: int, number: int) -> _Blank | None:
        """None where it has bad spans or too many bands."""
        bands = self.pricing.ways[way]
        values = bands.rest(prices.valued[way], number)
        key = (way, *bands.rooms(number))
        if values is not None and key not in self._full:
            self._full[key] = full_bands(bands, number, self.demand.tolist())
        full = self._full.get(key)
        if values is None or full is None:
            return None
        worth: Ints = full.counts @ np.asarray(prices.worth, dtype=np.int64)
        return _Blank(place, way, full, worth, bands.outer.sums, values, bands.rooms(number)[1])

    def _column(self, board: int, form: int, hunt: _Hunt) -> Column[Pattern]:
        cuts = tuple(
            self.pricing.ways[way].placed(number, bands)
            for number, (way, bands) in zip(
                self.pricing.blanks[board][form], hunt.chosen(), strict=True
            )
        )
        pattern = Pattern(board, form, cuts)
        counts = [pattern.counts[lot] for lot in range(len(self.demand))]
        return Column(board, tuple(np.minimum(counts, self.demand).tolist()), pattern)


class _Hunt:
    """One form of one board: the best above a target, if there is any."""

    def __init__(
        self, exact: Exact, prices: Prices, numbers: Sequence[int], taken: Ints, target: int
    ) -> None:
        self.demand, self.best = exact.demand, target
        self.less: Ints = np.asarray(prices.worth, dtype=np.int64)
        self.whole, self.given = self.less + taken, int(taken @ exact.demand)
        self.trace: Trace | None = None
        self.pairs = 0
        self._blanks = [
            [exact.blank(prices, place, way, number) for way in (0, 1)]
            for place, number in enumerate(numbers)
        ]
        each = [max(int(v.values[number]) for v in prices.valued) for number in numbers]
        self._after = [sum(each[place + 1 :]) for place in range(len(each))]

    def is_whole(self) -> bool:
        """Whether all that could be better was looked at."""
        none: Ints = np.zeros(1, dtype=np.int64)
        parts = _Parts(np.zeros((1, len(self.demand)), dtype=np.int64), none, none, [None])
        for ways, after in zip(self._blanks, self._after, strict=True):
            reached = [parts]
            for blank in ways:
                if blank is None or not self._fill(blank, parts, after, reached):
                    return False
            parts = _joined(reached)
            parts = parts.only(np.flatnonzero(self._linear(parts.counts) + after > self.best))
        return True

    def chosen(self) -> list[tuple[int, list[list[int]]]]:
        """The way and the bands of each blank."""
        made: list[tuple[int, list[list[int]]]] = [(0, []) for _ in self._blanks]
        at = self.trace
        while at is not None:
            at, place, way, band = at
            blank = self._blanks[place][way]
            if blank is not None:
                made[place] = (way, [*made[place][1], blank.full.counts[band].tolist()])
        return made

    def _linear(self, counts: Ints) -> Ints:
        """What counts are worth at most, once what was taken off is given back."""
        worth: Ints = counts @ self.less + self.given
        return worth

    def _fill(self, blank: _Blank, parts: _Parts, after: int, reached: list[_Parts]) -> bool:
        """All that the blank may hold, band after band; False where it is too much."""
        count = len(parts.room)
        start = np.full(count, blank.room), np.zeros(count, dtype=np.int64)
        parts = parts._replace(room=start[0], last=start[1])
        while len(parts.room):
            more = self._one_more(blank, parts, after)
            if more is None:
                return False
            if len(self._blanks) > 1:
                reached.append(more)
            parts = more
        return True

    def _one_more(self, blank: _Blank, parts: _Parts, after: int) -> _Parts | None:
        linear, sizes = self._linear(parts.counts), blank.full.sizes
        hope = linear.max() + blank.worth + blank.rest(blank.room - sizes) + after
        bands = np.flatnonzero((hope > self.best) & (sizes <= blank.room))
        pairs = len(bands) * len(linear)
        self.pairs += min(pairs, MOST_PAIRS)
        if pairs > MOST_PAIRS:
            return None
        left = parts.room[:, None] - sizes[bands][None, :]
        hope = linear[:, None] + blank.worth[bands][None, :] + blank.rest(left) + after
        fits = (left >= 0) & (bands[None, :] >= parts.last[:, None])
        old, new = np.nonzero(fits & (hope > self.best))
        last = bands[new]
        counts = np.minimum(parts.counts[old] + blank.full.counts[last], self.demand)
        worth = counts @ self.whole
        if len(worth) and int(worth.max()) > self.best:
            at = int(worth.argmax())
            self.best = int(worth[at])
            self.trace = (parts.traces[int(old[at])], blank.place, blank.way, int(last[at]))
        room = left[old, new]
        hope = self._linear(counts) + blank.rest(room) + after
        kept = np.flatnonzero(hope > self.best)
        kept = kept[_different(counts[kept], room[kept], last[kept])]
        if len(kept) > MOST_KEPT:
            return None
        traces: list[Trace | None] = [
            (parts.traces[at], blank.place, blank.way, band)
            for at, band in zip(old[kept].tolist(), last[kept].tolist(), strict=True)
        ]
        return _Parts(counts[kept], room[kept], last[kept], traces)


def _joined(parts: Sequence[_Parts]) -> _Parts:
    return _Parts(
        np.concatenate([each.counts for each in parts]),
        np.concatenate([each.room for each in parts]),
        np.concatenate([each.last for each in parts]),
        [trace for each in parts for trace in each.traces],
    )


def _different(counts: Ints, room: Ints, last: Ints) -> Ints:
    """Each counts and room once, with the first of the last bands: most may follow it."""
    order = np.lexsort((last, room, *counts.T))
    keys = np.column_stack((counts, room))[order]
    first = np.ones(len(order), dtype=np.bool_)
    first[1:] = (keys[1:] != keys[:-1]).any(axis=1)
    return np.sort(order[first])
