"""A dimension: a line between two ends with slanting ticks, its words on it, and lines that lead
to what is measured.
"""

from __future__ import annotations

from collections.abc import Iterator

from model.drawings.paper import Item, Stroke, Text
from model.units import Mm

WORDS: Mm = 2.5
TICK: Mm = 0.9  # half of it, along each axis
PAST: Mm = 1.2  # how far a leading line runs past the dimension
GAP: Mm = 0.8  # between what is measured and its leading line


def level(x0: Mm, x1: Mm, y: Mm, edge: Mm, words: str) -> Iterator[Item]:
    """A dimension along x at height y, of something whose lower edge lies at `edge` above it."""
    yield Stroke(((x0, y), (x1, y)))
    for x in (x0, x1):
        yield Stroke(((x, edge - GAP), (x, y - PAST)))
        yield Stroke(((x - TICK, y - TICK), (x + TICK, y + TICK)))
    yield Text(((x0 + x1) / 2, y - 0.95 * WORDS), words, WORDS)


def upright(y0: Mm, y1: Mm, x: Mm, edge: Mm, words: str) -> Iterator[Item]:
    """A dimension along y at x, of something whose left edge lies at `edge`, right of it."""
    yield Stroke(((x, y0), (x, y1)))
    for y in (y0, y1):
        yield Stroke(((edge - GAP, y), (x - PAST, y)))
        yield Stroke(((x - TICK, y - TICK), (x + TICK, y + TICK)))
    yield Text((x - 0.95 * WORDS, (y0 + y1) / 2), words, WORDS, turned=True)
