"""Many boxes at once, as columns of numbers."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

Whole = NDArray[np.int64]

PIECE, CROSSCUT, RIP = 0, 1, 2  # what the first cut of a box is


@dataclass(frozen=True)
class Boxes:
    """Boxes with their packed counts (`keys`); of a piece `low` is its size, else `low` and `high`
    are the numbers of the boxes that are joined. `worth` adds up what the pieces are worth.
    """

    lengths: Whole
    widths: Whole
    keys: Whole
    cuts: Whole
    low: Whole
    high: Whole
    worth: Whole

    def __len__(self) -> int:
        return len(self.keys)

    @property
    def columns(self) -> tuple[Whole, ...]:
        return (
            *(self.lengths, self.widths, self.keys, self.cuts),
            *(self.low, self.high, self.worth),
        )

    def take(self, places: Whole | NDArray[np.bool_]) -> Boxes:
        return Boxes(*(column[places] for column in self.columns))


def together(parts: Iterable[Boxes]) -> Boxes:
    columns = zip(*(each.columns for each in parts), strict=True)
    return Boxes(*(np.concatenate(each) for each in columns))


def smallest(boxes: Boxes, along: Whole, across: Whole) -> Boxes:
    """Of boxes with the same pieces those that no other undercuts in both classes of size: `along`
    and `across`, from 0 up. Of equals the first stays.
    """
    order = np.lexsort((across, along, boxes.keys))
    keys = boxes.keys[order]
    group = np.cumsum(np.diff(keys, prepend=keys[:1]) != 0)
    # Each group starts below all before it, so that one running minimum serves them all.
    height = across[order] - group * (np.max(across, initial=0) + 1)
    lowest_before = np.minimum.accumulate(height)[:-1]
    kept = np.concatenate((np.ones(min(1, len(keys)), bool), height[1:] < lowest_before))
    return boxes.take(order[kept])
