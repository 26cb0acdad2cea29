"""All bands that a blank can have, each so full that no strip can be added."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

import numpy as np

from model.cutting.boards.bands import Bands
from model.cutting.lengths.sums import Ints

MOST_BANDS = 40_000
ENDLESS = 1 << 60


class Full(NamedTuple):
    """`counts` of strips in each band (n, lots), and how wide it is, kerf included (n); the widest
    first.
    """

    counts: Ints
    sizes: Ints


def full_bands(bands: Bands, number: int, demand: Sequence[int]) -> Full | None:
    """The bands of a clear blank, by its number, with no more strips than are wanted; None where
    there are too many.
    """
    room, width = bands.rooms(number)
    found = [np.zeros((0, len(demand)), dtype=np.int64)]
    sizes = [np.zeros(0, dtype=np.int64)]
    for widest in reversed([each for each in bands.classes if each + bands.kerf <= width]):
        limits = [
            wanted if across <= widest else 0
            for wanted, across in zip(demand, bands.across, strict=True)
        ]
        counts = fullest([each + bands.kerf for each in bands.along], limits, room)
        if counts is None or sum(map(len, found)) > MOST_BANDS:
            return None
        counts = counts[(counts[:, np.array(bands.across) == widest] > 0).any(axis=1)]
        found.append(counts)
        sizes.append(np.full(len(counts), widest + bands.kerf))
    return Full(np.concatenate(found), np.concatenate(sizes))


def fullest(sizes: Sequence[int], limits: Sequence[int], room: int) -> Ints | None:
    """Counts (n, sizes) that a room holds and to which nothing can be added; None where there are
    too many to look at.
    """
    counts: Ints = np.zeros((1, len(sizes)), dtype=np.int64)
    left: Ints = np.array([room])
    least: Ints = np.array([ENDLESS])  # the shortest of what was not taken as often as it may be
    to_come = sum(size * limit for size, limit in zip(sizes, limits, strict=True))
    for item in sorted(range(len(sizes)), key=lambda n: (-sizes[n], n)):
        size, limit = sizes[item], limits[item]
        to_come -= size * limit
        times = np.minimum(left // size, limit) + 1
        before = np.repeat(np.arange(len(times)), times)
        taken = np.arange(len(before)) - np.repeat(np.cumsum(times) - times, times)
        left = left[before] - taken * size
        least = np.where(taken < limit, np.minimum(least[before], size), least[before])
        kept = np.flatnonzero(left - to_come < least)
        if len(kept) > MOST_BANDS:
            return None
        left, least, counts = left[kept], least[kept], counts[before[kept]]
        counts[:, item] = taken[kept]
    return counts
