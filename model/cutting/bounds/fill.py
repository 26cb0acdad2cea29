"""The most value in one row: a bounded knapsack, solved to the last step."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

Whole = NDArray[np.int64]

MOST_STATES = 20_000


@dataclass(frozen=True, kw_only=True)
class Fill:
    """`value` is never less than the most that a row can hold; `counts` reach it, by size, and
    are None where there were too many different sums to look at one by one.
    """

    value: int
    counts: tuple[int, ...] | None


@dataclass(frozen=True)
class _Step:
    """Ways to fill so far, by rising length and value; where each came from, what it took."""

    lengths: Whole
    values: Whole
    origin: Whole
    took: NDArray[np.bool_]


def best_fill(
    sizes: Sequence[int], demands: Sequence[int], values: Sequence[int], room: int
) -> Fill:
    """The most value of pieces whose sizes add up to no more than `room`.

    All are whole, sizes above zero; values and their sums stay under 2^62. Sums of sizes are kept
    while none shorter is worth as much (Kellerer, Pferschy, Pisinger, Knapsack Problems, 2004,
    dynamic programming with lists; from memory), each demand in powers of two.
    """
    lots = [
        (at, number)
        for at, (size, demand, value) in enumerate(zip(sizes, demands, values, strict=True))
        if value > 0
        for number in _powers(min(demand, room // size))
    ]
    step = _Step(
        np.zeros(1, np.int64), np.zeros(1, np.int64), np.zeros(1, np.int64), np.zeros(1, bool)
    )
    steps: list[_Step] = []
    is_exact = True
    for at, number in lots:
        step = _with(step, sizes[at] * number, values[at] * number, room)
        if len(step.lengths) > MOST_STATES:
            is_exact, step = False, _coarser(step, room)
        steps.append(step)
    counts = _counts(steps, lots, len(sizes)) if is_exact else None
    return Fill(value=int(step.values[-1]), counts=counts)


def _powers(count: int) -> list[int]:
    """Numbers whose partial sums are all counts from 0 to `count`: 1, 2, 4, ..., the rest."""
    powers = []
    power = 1
    while count > 0:
        powers.append(min(power, count))
        count -= power
        power *= 2
    return powers


def _with(step: _Step, size: int, value: int, room: int) -> _Step:
    fitting = int(np.searchsorted(step.lengths, room - size, side="right"))
    lengths = np.concatenate((step.lengths, step.lengths[:fitting] + size))
    values = np.concatenate((step.values, step.values[:fitting] + value))
    origin = np.concatenate((np.arange(len(step.lengths)), np.arange(fitting)))
    took = np.arange(len(lengths)) >= len(step.lengths)
    order = np.lexsort((-values, lengths))
    ordered = values[order]
    best_before = np.maximum.accumulate(ordered)[:-1]
    kept = order[np.concatenate(([True], ordered[1:] > best_before))]
    return _Step(lengths[kept], values[kept], origin[kept], took[kept])


def _coarser(step: _Step, room: int) -> _Step:
    """Neighbours taken together: as short as the shortest, worth as much as the best of them."""
    group = step.lengths * (MOST_STATES // 4) // (room + 1)
    first = np.flatnonzero(np.diff(group, prepend=-1))
    last = np.append(first[1:], len(group)) - 1
    return _Step(step.lengths[first], step.values[last], step.origin[first], step.took[first])


def _counts(steps: list[_Step], lots: list[tuple[int, int]], sizes: int) -> tuple[int, ...]:
    counts = [0] * sizes
    place = -1
    for step, (at, number) in zip(reversed(steps), reversed(lots), strict=True):
        if step.took[place]:
            counts[at] += number
        place = int(step.origin[place])
    return tuple(counts)
