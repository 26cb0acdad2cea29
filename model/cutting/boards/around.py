"""The worthiest bands of a blank with bad spans on part of its width: sawn around.

What a band is worth depends on the spans that it meets, so on where it lies: it is crosscut (or
ripped) into the rooms between them. Where a band may begin: at the edge, behind a span, and a band
or more further on; anything between could be moved back without meeting another span.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

import numpy as np

from model.cutting.boards.rack import Blank
from model.cutting.lengths.saw import Rect
from model.cutting.lengths.sums import Filled, Ints, Sums, Values
from model.cutting.record import Way

MOST_PLACES = 6000
NEVER = -(1 << 60)


class Room(NamedTuple):
    """A clear stretch of a band, and its entry in the table of fillings."""

    low: int
    high: int
    entry: int


class Found(NamedTuple):
    """A band: its class, where it begins, and its rooms."""

    kind: int
    low: int
    rooms: tuple[Room, ...]


class Around:
    """One blank, cut in one way; `inner` and `ends` are the fillings of bands of each class."""

    def __init__(
        self, way: Way, blank: Blank, classes: Sequence[int], inner: Sums, kerf: int
    ) -> None:
        self._way: Way = way
        self._other: Way = "crosscut" if way == "rip" else "rip"
        self._blank, self._inner, self._kerf = blank, inner, kerf
        self._low, self._high = blank.rect.span(way)
        self._classes = classes
        self._places = self._all_places()
        self._rooms: list[list[tuple[Room, ...]]] = []  # of each class, the different sets of rooms
        self._which: list[Ints] = []  # of each class, the set at each place, -1 where it sticks out
        self._next: list[Ints] = []  # of each class, the place behind a band at each place
        for size in classes:
            self._look(size)

    def value(self, filled: Filled, ends: Sequence[int]) -> tuple[float, Values, Ints]:
        """The most it is worth; for the bands: what begins at each place or later, and the class
        that begins there.
        """
        worth = [
            np.array([sum(filled.after[end][r.entry] for r in rooms) for rooms in sets] + [NEVER])
            for end, sets in zip(ends, self._rooms, strict=True)
        ]
        from_here: Values = (0 * filled.values[:1]).repeat(len(self._places) + 1)
        while True:
            each = np.array(
                [
                    w[s] + from_here[n]
                    for w, s, n in zip(worth, self._which, self._next, strict=True)
                ]
            )
            kind = each.argmax(axis=0)
            last = 0 * each[0, :1]
            ahead = np.concatenate((each.max(axis=0), last))[::-1]
            best: Values = np.maximum.accumulate(ahead)[::-1]
            if (best == from_here).all():
                return best[0], best, kind
            from_here = best

    def bands(self, best: Values, kind: Ints) -> list[Found]:
        """The bands of the best cutting, in order."""
        found, place = [], 0
        while place < len(self._places) and best[place] > 0:
            while place + 1 < len(best) and best[place + 1] == best[place]:
                place += 1
            chosen = int(kind[place])
            rooms = self._rooms[chosen][int(self._which[chosen][place])]
            found.append(Found(chosen, int(self._places[place]), rooms))
            place = int(self._next[chosen][place])
        return found

    def _all_places(self) -> Ints:
        starts = {self._low} | {span.span(self._way)[1] for span in self._blank.bad}
        places: set[int] = set()
        waiting = sorted(start for start in starts if start < self._high)
        least = min(self._classes)
        while waiting and len(places) < MOST_PLACES:
            places.update(waiting)
            further = {at + size + self._kerf for at in waiting for size in self._classes}
            waiting = sorted(at for at in further - places if at + least <= self._high)
        return np.array(sorted(places), dtype=np.int64)

    def _look(self, size: int) -> None:
        ends = self._places + size
        sets: list[tuple[Room, ...]] = []
        known: dict[tuple[int, ...], int] = {}
        which = np.full(len(self._places), -1)
        for number, (low, high) in enumerate(
            zip(self._places.tolist(), ends.tolist(), strict=True)
        ):
            if high > self._high:
                break
            met = tuple(n for n, s in enumerate(self._blank.bad) if self._meets(s, low, high))
            if met not in known:
                known[met] = len(sets)
                sets.append(self._between(met))
            which[number] = known[met]
        self._rooms.append(sets)
        self._which.append(which)
        self._next.append(np.searchsorted(self._places, ends + self._kerf))

    def _meets(self, span: Rect, low: int, high: int) -> bool:
        begin, end = span.span(self._way)
        return begin < high and low < end

    def _between(self, met: Sequence[int]) -> tuple[Room, ...]:
        at, end = self._blank.rect.span(self._other)
        rooms = []
        for low, high in sorted(self._blank.bad[number].span(self._other) for number in met):
            if low > at:
                rooms.append((at, low))
            at = max(at, high, low + self._kerf if low > at else 0)
        if end > at:
            rooms.append((at, end))
        entries = self._inner.at([high - low + self._kerf for low, high in rooms]).tolist()
        return tuple(
            Room(low, high, entry) for (low, high), entry in zip(rooms, entries, strict=True)
        )
