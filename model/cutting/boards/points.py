"""The counts of a short list, each of them a point: which of them fit a room.

The counts of a list of n lots are the points of an n-dimensional box. For each point the least
width is found into which bands of a room hold it (for sections: the least length), band after band,
the shortest first: what has been reached when a band gets too long for a room is what it holds.
"""

from __future__ import annotations

from collections.abc import Sequence
from math import prod

import numpy as np
from numpy.typing import NDArray

from model.cutting.lengths.sums import Ints

Bools = NDArray[np.bool_]
Room = tuple[int, int]  # along the bands and across, of pieces that carry a kerf each

ENDLESS = 1 << 60


class Points:
    """The counts of a list: `every` (points, lots), numbered as digits are."""

    def __init__(self, demand: Sequence[int]) -> None:
        self.demand = tuple(demand)
        self.shape = tuple(each + 1 for each in demand)
        self.size = prod(self.shape)
        self.every: Ints = np.indices(self.shape).reshape(len(demand), -1).T
        self.steps: Ints = np.array(
            [prod(self.shape[n + 1 :]) for n in range(len(demand))], dtype=np.int64
        )

    def number(self, counts: Ints) -> Ints:
        """Of points within the box."""
        numbers: Ints = counts @ self.steps
        return numbers

    def fullest(self, fits: Bools) -> Ints:
        """Points that fit and to which no strip can be added, (n, lots)."""
        box = fits.reshape(self.shape)
        full = box.copy()
        for axis in range(len(self.shape)):
            less, more = _halves(axis)
            full[less] &= ~box[more]
        return self.every[full.ravel()]

    def below(self, points: Ints) -> Bools:
        """Whatever is no more than some of these points, in every lot."""
        marked = np.zeros(self.size, dtype=np.bool_)
        marked[self.number(points)] = True
        box = marked.reshape(self.shape)
        for axis in range(len(self.shape)):
            box = np.flip(np.logical_or.accumulate(np.flip(box, axis), axis), axis)
        return np.ascontiguousarray(box).ravel()


class Cutting:
    """One way of cutting: strips take `along` of a band and make it `across` wide at least, kerfs
    included.
    """

    def __init__(self, points: Points, along: Sequence[int], across: Sequence[int]) -> None:
        self._points = points
        self._sizes = (along, across)
        self.along: Ints = points.every @ np.array(along, dtype=np.int64)
        wide = np.where(points.every > 0, np.array(across, dtype=np.int64), 0)
        self.across: Ints = wide.max(axis=1)

    def fits(self, rooms: Sequence[Room]) -> list[Bools]:
        """What each room holds (points)."""
        bands = self._bands(
            max((room[0] for room in rooms), default=0), max((room[1] for room in rooms), default=0)
        )
        found: dict[Room, Bools] = {}
        least, done = self._nothing(), 0
        for room in sorted(set(rooms)):
            while done < len(bands) and self.along[bands[done]] <= room[0]:
                self._offer(least, bands[done])
                done += 1
            found[room] = least.ravel() <= room[1]
        return [found[room] for room in rooms]

    def bands(self, room: Room, counts: Sequence[int]) -> list[tuple[int, ...]] | None:
        """Counts of each band where a room holds just these."""
        way = Cutting(Points(counts), *self._sizes)
        bands, least = way._bands(*room), way._nothing()
        for band in bands:
            way._offer(least, band)
        flat, every, number = least.ravel(), way._points.every, least.size - 1
        if flat[number] > room[1]:
            return None
        found = []
        while number:
            band = next(
                band
                for band in bands
                if (every[band] <= every[number]).all()
                and flat[number - band] + way.across[band] == flat[number]
            )
            found.append(tuple(every[band].tolist()))
            number -= band
        return found

    def _bands(self, longest: int, widest: int) -> list[int]:
        """Points that may be a band, the shortest first."""
        some = np.flatnonzero((self.along <= longest) & (self.across <= widest))[1:]
        order = np.argsort(self.along[some], kind="stable")
        numbers: list[int] = some[order].tolist()
        return numbers

    def _nothing(self) -> Ints:
        least: Ints = np.full(self._points.shape, ENDLESS)
        least.flat[0] = 0
        return least

    def _offer(self, least: Ints, band: int) -> None:
        """One more band may be used, as often as its strips are there."""
        counts, demand = self._points.every[band].tolist(), self._points.demand
        more = tuple(slice(count, None) for count in counts)
        less = tuple(slice(0, most + 1 - c) for most, c in zip(demand, counts, strict=True))
        target, width = least[more], int(self.across[band])
        for _ in range(min(most // c for most, c in zip(demand, counts, strict=True) if c)):
            np.minimum(target, least[less] + width, out=target)


def _halves(axis: int) -> tuple[tuple[slice, ...], tuple[slice, ...]]:
    before = (slice(None),) * axis
    return (*before, slice(0, -1)), (*before, slice(1, None))
