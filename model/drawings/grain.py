"""Grain: fine strokes along a piece, of uneven lengths, alike on every drawing of it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from model.cutting.record import Box
from model.drawings.paper import Stroke, grown
from model.units import Mm

ROWS: Mm = 3.1  # from one row of strokes to the next
SHORT, LONG = 5.0, 17.0  # of the strokes, mm
NEAR, FAR = 6.0, 26.0  # from one stroke to the next
LEAST: Mm = 2.0  # what is left of a stroke beside words
_UNEVEN = 0.6180339887  # multiples of it, whole part dropped, are spread evenly and never repeat


def grain_strokes(place: Box, taken: Sequence[Box], about: str = "") -> Iterator[Stroke]:
    """Strokes along x inside a place, clear of what is taken."""
    room = grown(place, -0.7)
    first, last = int(room.y0 // ROWS) + 1, int(room.y1 // ROWS)
    for row in range(first, last + 1):
        y = row * ROWS
        near = [box for box in taken if box.y0 - 0.3 < y < box.y1 + 0.3]
        for x0, x1 in _dashes(row, room.x0, room.x1):
            for start, end in _clear(x0, x1, near):
                yield Stroke(((start, y), (end, y)), "fine", about)


def _dashes(row: int, low: Mm, high: Mm) -> Iterator[tuple[Mm, Mm]]:
    """One row of strokes over the whole drawing, as much of it as lies in a span."""
    x, place = -20.0 * _uneven(row, 0), 1
    while x < high:
        end = x + SHORT + (LONG - SHORT) * _uneven(row, place)
        if min(end, high) - max(x, low) > LEAST:
            yield max(x, low), min(end, high)
        x = end + NEAR + (FAR - NEAR) * _uneven(place, row)
        place += 1


def _uneven(one: int, other: int) -> float:
    return ((one * 7 + other * 3 + 1) * _UNEVEN) % 1.0


def _clear(x0: Mm, x1: Mm, taken: Sequence[Box]) -> Iterator[tuple[Mm, Mm]]:
    for box in sorted(taken):
        if box.x0 - 0.6 < x1 and box.x1 + 0.6 > x0:
            if box.x0 - 0.6 - x0 > LEAST:
                yield x0, box.x0 - 0.6
            x0 = max(x0, box.x1 + 0.6)
    if x1 - x0 > LEAST:
        yield x0, x1
