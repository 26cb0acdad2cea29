"""The scales that part drawings are made at, the largest first.

Sources: ISO 5455 for mm, its 1:1 to 1:20; for inches the fractions of architects' scales, from
memory.
"""

from __future__ import annotations

from collections.abc import Iterator

from model.drawings.dimensioning.told import Unit
from model.units import Share

SCALES: dict[Unit, tuple[int, ...]] = {
    "mm": (1, 2, 5, 10, 20),
    "inch": (1, 2, 4, 8, 12, 16, 24),
}


def scales(unit: Unit) -> Iterator[tuple[Share, str]]:
    """mm on paper to mm of wood, and as it is written."""
    for size in SCALES[unit]:
        yield 1 / size, f"1:{size}"
