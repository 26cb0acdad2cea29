"""How many pieces of each size, packed into one whole number, so that adding two adds all counts.

Each size has a field of bits with a guard bit above it, which shows when a count passes its limit.
"""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

Whole = NDArray[np.int64]

BITS = 62  # of a signed 64-bit number, the sign and one more left alone


class Counts:
    """`limits` by size; refused (None from `packed`) when the fields need too many bits."""

    def __init__(self, limits: tuple[int, ...]) -> None:
        self.limits = limits
        widths = [limit.bit_length() + 1 for limit in limits]
        self.shifts = [sum(widths[:at]) for at in range(len(widths))]
        self.fits = sum(widths) <= BITS
        self.guard = sum(
            1 << shift + width - 1 for shift, width in zip(self.shifts, widths, strict=True)
        )
        self.full = self.guard + sum(
            limit << shift for shift, limit in zip(self.shifts, limits, strict=True)
        )

    def one(self, size: int) -> int:
        """One piece of a size."""
        return 1 << self.shifts[size]

    def within(self, packed: Whole) -> NDArray[np.bool_]:
        """Whether no count passes its limit."""
        within: NDArray[np.bool_] = ((self.full - packed) & self.guard) == self.guard
        return within

    def of(self, packed: Whole, size: int) -> Whole:
        """The count of one size."""
        count: Whole = (packed >> self.shifts[size]) & ((1 << self.limits[size].bit_length()) - 1)
        return count

    def all(self, packed: Whole) -> Whole:
        """Counts by packed number and size."""
        return np.stack([self.of(packed, size) for size in range(len(self.limits))], axis=1)
