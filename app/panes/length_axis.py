"""An axis of lengths: counted in mm, marked where the maker's tape has marks."""

from __future__ import annotations

from typing import Any

from pyqtgraph import AxisItem

from model.units import INCH, show_length

# mm between marks, finest first: fractions of an inch halve, whole ones go by feet; mm go by tens.
STEPS = {
    "inch": tuple(INCH * part for part in (1 / 64, 1 / 32, 1 / 16, 1 / 8, 1 / 4, 1 / 2, 1, 2, 4, 6,
                                           12, 24, 48, 96)),
    "mm": (0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000),
}  # fmt: skip
APART = {
    True: 64.0,
    False: 26.0,
}  # px from mark to mark, so that numbers do not touch: lying, upright


class LengthAxis(AxisItem):
    """Shows lengths in the unit that it is told."""

    def __init__(self, side: str) -> None:
        super().__init__(side)
        self.unit = "mm"
        self.enableAutoSIPrefix(False)

    def show_unit(self, unit: str) -> None:
        """Count in mm or inches from here on."""
        self.unit = unit
        self.picture = None
        self.update()

    def tickSpacing(self, low: float, high: float, size: float) -> list[tuple[float, float]]:
        """One kind of marks: the finest whose numbers stand clear of each other."""
        steps, span = STEPS[self.unit], max(high - low, 1e-9)
        apart = APART[self.orientation in ("bottom", "top")]
        fitting = (step for step in steps if step / span * size >= apart)
        return [(next(fitting, steps[-1]), 0)]

    def tickStrings(self, values: Any, scale: float, spacing: float) -> list[str]:
        """Lengths with their unit, so that the axis needs no room for a name."""
        return [show_length(value, self.unit) for value in values]
