"""Which sums of pieces still fit beside a block: what its size comes down to.

Two blocks are alike to the rest of a sheet when the same sums of pieces fit beside them. Their
real sizes are kept for joining all the same, because two classes say nothing about the class of
their sum.
"""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from model.cutting.bounds.question import ACROSS, ALONG, Axis, Question

Whole = NDArray[np.int64]

MOST_SUMS = 20_000


class Beside:
    """Classes of lengths and of widths for the sheets of a question."""

    def __init__(self, asked: Question) -> None:
        self._breaks = _breaks(asked, ALONG), _breaks(asked, ACROSS)

    def classes(self, axis: Axis, lengths: Whole) -> Whole:
        """By how many breaks a length is past; lengths themselves where there are no breaks."""
        breaks = self._breaks[axis]
        return lengths if breaks is None else np.searchsorted(breaks, lengths).astype(np.int64)


def _breaks(asked: Question, axis: Axis) -> Whole | None:
    """The longest lengths beside which some sum of pieces fits, on some sheet; None when there are
    too many sums.
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
