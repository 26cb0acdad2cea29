"""The best filling of a room: a bounded knapsack over the lengths that can be reached at all.

Only sums of pieces matter as places, so that the table has as many entries as there are different
sums, however fine the whole numbers are.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

Ints = NDArray[np.int64]
Values = NDArray[np.int64] | NDArray[np.float64]

MOST = 60_000  # sums kept apart; beyond, sizes are rounded up to a grid of the room


@dataclass(frozen=True)
class _Step:
    """One more of an item: from `start` on, where it paid."""

    item: int
    start: int
    paid: NDArray[np.bool_]


@dataclass(frozen=True)
class Filled:
    """Values of the best filling for every sum (room), and how they came about.

    `after[i]` are the values once items 0..i have been offered, where they were asked for.
    """

    values: Values
    steps: tuple[_Step, ...]
    ends: tuple[int, ...]
    after: tuple[Values, ...]


@dataclass(frozen=True)
class FilledEach:
    """Values (sums, cases) of the best fillings, and how they came about."""

    values: Values
    steps: tuple[_Step, ...]


class Sums:
    """All sums of `sizes` (item i at most `limits[i]` times) up to the largest room.

    `is_exact` is False where sizes were rounded up to a grid, because there were too many or the
    caller wants them coarse (a filling still fits, but its value bounds nothing).
    """

    def __init__(
        self, sizes: Sequence[int], limits: Sequence[int], largest: int, grid: int = 1
    ) -> None:
        sums = None
        while sums is None:
            sums = _sums([-(-size // grid) * grid for size in sizes], limits, largest)
            fitting, grid = grid, max(grid * 2, largest // MOST)
        grid = fitting
        self.is_exact = grid == 1
        self.sums = sums
        self._sizes = [-(-size // grid) * grid for size in sizes]
        self._starts = [int(np.searchsorted(sums, size)) for size in self._sizes]
        self._back = [
            np.searchsorted(sums, sums[start:] - size, side="right") - 1
            for size, start in zip(self._sizes, self._starts, strict=True)
        ]

    def at(self, rooms: Sequence[int]) -> Ints:
        """The entry of each room: the largest sum that it holds; -1 for a negative room."""
        return np.searchsorted(self.sums, np.asarray(rooms, dtype=np.int64), side="right") - 1

    def fill(self, profits: Values, limits: Sequence[int], keep: bool = False) -> Filled:
        """The best value for every room, item i taken at most `limits[i]` times."""
        values: Values = (0 * profits[:1]).repeat(len(self.sums))
        steps: list[_Step] = []
        ends: list[int] = []
        after: list[Values] = []
        for item, profit in enumerate(profits.tolist()):
            if profit > 0:
                values = self._offer(values, item, profit, limits[item], steps)
            ends.append(len(steps))
            if keep:
                after.append(values)
        return Filled(values, tuple(steps), tuple(ends), tuple(after))

    def counts(self, filled: Filled, entry: int, items: int | None = None) -> list[int]:
        """How many of each item the best filling of an entry takes, of the first `items`."""
        counts = [0] * len(self._sizes)
        last = len(self._sizes) if items is None else items
        steps = filled.steps[: filled.ends[last - 1]] if last else ()
        for step in reversed(steps):
            if entry >= step.start and step.paid[entry - step.start]:
                counts[step.item] += 1
                entry = int(self._back[step.item][entry - step.start])
        return counts

    def fill_each(self, profits: Values) -> FilledEach:
        """The best value for every room, items taken as often as they fit.

        `profits`: (items, n), n cases that differ only in what items are worth. The values are
        (sums, n).
        """
        values: Values = (0 * profits[:1]).repeat(len(self.sums), axis=0)
        steps: list[_Step] = []
        for item, profit in enumerate(profits):
            if profit.any():
                steps.append(self._offer_often(values, item, profit))
        return FilledEach(values, tuple(steps))

    def counts_of(self, filled: FilledEach, entry: int, case: int) -> list[int]:
        """How many of each item the best filling of an entry takes in one case."""
        counts = [0] * len(self._sizes)
        for step in reversed(filled.steps):
            while entry >= step.start and step.paid[entry - step.start, case]:
                counts[step.item] += 1
                entry = int(self._back[step.item][entry - step.start])
        return counts

    def _offer_often(self, values: Values, item: int, profit: Values) -> _Step:
        """As often as it fits, in place: block by block as long as the item, the lowest first."""
        start, back, size = self._starts[item], self._back[item], self._sizes[item]
        paid = np.zeros((len(self.sums) - start, len(profit)), dtype=np.bool_)
        ends = np.arange(2 * size, int(self.sums[-1]) + 2 * size, size)
        low = start
        for high in np.searchsorted(self.sums, ends).tolist():
            more = values[back[low - start : high - start]] + profit
            better = more > values[low:high]
            np.copyto(values[low:high], more, where=better)
            paid[low - start : high - start] = better
            low = high
        return _Step(item, start, paid)

    def _offer(
        self, values: Values, item: int, profit: float, limit: int, steps: list[_Step]
    ) -> Values:
        start, back = self._starts[item], self._back[item]
        for _ in range(limit):
            more = values[back] + profit
            paid = more > values[start:]
            if not paid.any():
                break
            values = np.concatenate((values[:start], np.where(paid, more, values[start:])))
            steps.append(_Step(item, start, paid))
        return values


def _sums(sizes: Sequence[int], limits: Sequence[int], largest: int) -> Ints | None:
    sums: Ints = np.zeros(1, dtype=np.int64)
    for size, limit in sorted(zip(sizes, limits, strict=True), reverse=True):
        layer = sums
        for _ in range(min(limit, largest // max(size, 1))):
            layer = layer[layer <= largest - size] + size
            sums = np.union1d(sums, layer)
            if len(sums) > MOST:
                return None
    return sums
