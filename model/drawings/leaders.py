"""Names of pieces that are too small to carry them: in a row above the board, each with a line."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import NamedTuple

from model.cutting.record import Box
from model.drawings.letters import words_width
from model.drawings.paper import Item, Ring, Stroke, Text
from model.units import Mm

HEIGHT: Mm = 1.8
ROW: Mm = 3.4  # from one row of names to the next
BETWEEN: Mm = 1.5
DOT: Mm = 0.35


class Small(NamedTuple):
    """A place on paper without room for words, and what would stand there."""

    box: Box
    mark: str
    words: str
    about: str


def runs(small: Sequence[Small]) -> tuple[Small, ...]:
    """Alike pieces of one strip share a name, and a line to the first of them: `U7, 11 pieces`."""
    found: dict[tuple[str, Mm], list[Small]] = {}
    for each in small:
        found.setdefault((each.mark, each.box.y0), []).append(each)
    return tuple(
        run[0] if len(run) == 1 else run[0]._replace(words=f"{mark}, {len(run)} pieces")
        for (mark, _), run in found.items()
    )


def rows_for(small: Sequence[Small], width: Mm) -> int:
    """How many rows their names take."""
    long = sum(words_width(each.words, HEIGHT) + BETWEEN for each in small)
    return -int(-long // width) if small else 0


def led_out(small: Sequence[Small], low: Mm, high: Mm, y: Mm) -> Iterator[Item]:
    """Names between `low` and `high` along x, the first row at height y, and a line to each place.

    In each row the names keep the order of the places; a row holds every so many-th of them.
    """
    rows = max(rows_for(small, high - low), 1)
    ordered = sorted(small, key=lambda each: (each.box.x0, each.box.y0))
    for row in range(rows):
        yield from _one_row(ordered[row::rows], low, high, y + row * ROW)


def _one_row(small: Sequence[Small], low: Mm, high: Mm, y: Mm) -> Iterator[Item]:
    starts: list[Mm] = []
    free = low
    widths = [words_width(each.words, HEIGHT) for each in small]
    for each, wide in zip(small, widths, strict=True):
        free = max(free, (each.box.x0 + each.box.x1 - wide) / 2)
        starts.append(free)
        free += wide + BETWEEN
    limit = high
    for place in reversed(range(len(small))):  # what ran out at the right end is moved back
        starts[place] = min(starts[place], limit - widths[place])
        limit = starts[place] - BETWEEN
    for each, wide, x in zip(small, widths, starts, strict=True):
        middle = ((each.box.x0 + each.box.x1) / 2, (each.box.y0 + each.box.y1) / 2)
        yield Stroke((middle, (x + wide / 2, y - 0.8 * HEIGHT)), "fine", each.about)
        yield Ring(middle, DOT, "narrow", about=each.about)
        yield Text((x, y), each.words, HEIGHT, "left", about=each.about)
