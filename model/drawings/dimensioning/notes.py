"""Notes above a view, each with a leader straight down to what it tells of.

A leader never runs through words: a note whose words lie over another's leader stands in a row
farther out than that one.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import combinations
from math import ceil
from typing import NamedTuple

from model.cutting.record import Box
from model.drawings.letters import words_width
from model.drawings.paper import Item, Point, Ring, Stroke, Text
from model.units import Mm

HEIGHT: Mm = 1.9  # of capitals
ROW: Mm = 3.6
NEAREST: Mm = 3.0  # from the view to the lowest words
MOST = (0.5, 0.3, 0.2)  # of the room along x: longer notes are broken in two lines
DOT: Mm = 0.35
AIR: Mm = 0.8
APART: Mm = 0.9  # between two leaders
_BEAD: Mm = 0.6  # between a leader and the words that stand on it


class Note(NamedTuple):
    """Words, and the place in the view that they tell of."""

    at: Point
    words: str
    about: str = ""


class Notes(NamedTuple):
    """Notes as laid out; `top` is how high they reach."""

    items: tuple[Item, ...]
    top: Mm


class _Laid(NamedTuple):
    note: Note
    lines: tuple[str, ...]
    x: Mm
    start: Mm
    end: Mm

    def covers(self, x: Mm) -> bool:
        return self.start - AIR < x < self.end + AIR


def notes_above(
    notes: Sequence[Note], view: Box, low: Mm, high: Mm, taken: Sequence[Box] = ()
) -> Notes:
    """Notes in rows above a view, their words between `low` and `high` along x where they fit, and
    clear of what is taken.
    """
    ordered = sorted(notes, key=lambda note: (note.at[0], note.at[1], note.words))
    tries = (_laid(ordered, low, high, most, left) for left in (False, True) for most in MOST)
    laid = next((each for each in tries if not _has_knot(each)), _laid(ordered, low, high, 0.0))
    first = view.y1 + NEAREST
    rows = _rows(laid, [(box, (box.y1 - first + HEIGHT) / ROW) for box in taken])
    items: list[Item] = []
    for each, row in zip(laid, rows, strict=True):
        items += _ink(each, first + row * ROW)
    tops = (row + len(each.lines) - 1 for each, row in zip(laid, rows, strict=True))
    top = first + max(tops, default=0) * ROW + HEIGHT if laid else view.y1
    return Notes(tuple(items), top)


def _laid(notes: Sequence[Note], low: Mm, high: Mm, most: float, left: bool = False) -> list[_Laid]:
    """To the right of their leaders, or to the left where there is no room at the right; to the
    `left` first where those at the right would stand in a knot.
    """
    found: list[_Laid] = []
    last = -1e9
    for note in notes:
        x = max(note.at[0], last + APART)
        last = x
        lines = _lines(note.words, most * (high - low))
        long = max(words_width(line, HEIGHT) for line in lines)
        start = x if x + long <= high else max(min(x - long, high - long), low)
        if left and x - long >= low:
            start = x - long
        found.append(_Laid(note, lines, x, start, start + long))
    return found


def _lines(words: str, most: Mm) -> tuple[str, ...]:
    """In two lines where one would be too long, broken after the comma nearest to its middle."""
    breaks = [k + 2 for k in range(len(words)) if words.startswith(", ", k)]
    if words_width(words, HEIGHT) <= most or not breaks:
        return (words,)
    at = min(breaks, key=lambda k: abs(k - len(words) / 2))
    return (words[:at].rstrip(), words[at:])


def _has_knot(laid: Sequence[_Laid]) -> bool:
    """Whether two notes stand over each other's leaders."""
    return any(one.covers(other.x) and other.covers(one.x) for one, other in combinations(laid, 2))


def _rows(laid: Sequence[_Laid], taken: Sequence[tuple[Box, float]]) -> list[int]:
    """The least row of each note in which leaders and words keep clear; what is taken reaches up to
    a row.
    """
    rows = [-1] * len(laid)
    waiting = list(range(len(laid)))
    while waiting:
        ready = [
            k for k in waiting if not any(laid[k].covers(laid[j].x) for j in waiting if j != k)
        ]
        for k in ready or waiting[-1:]:
            rows[k] = _free_row(k, laid, rows, taken)
            waiting.remove(k)
    return rows


def _free_row(
    k: int, laid: Sequence[_Laid], rows: Sequence[int], taken: Sequence[tuple[Box, float]]
) -> int:
    below = [rows[j] + 1 for j in range(len(laid)) if rows[j] >= 0 and laid[k].covers(laid[j].x)]
    own = laid[k]
    below += [ceil(up) for box, up in taken if box.x0 < own.end + AIR and own.start < box.x1 + AIR]
    row = max(below, default=0)
    while any(_overlap(own, row, laid[j], rows[j]) for j in range(len(laid)) if rows[j] >= 0):
        row += 1
    return row


def _overlap(one: _Laid, row: int, other: _Laid, its_row: int) -> bool:
    """Whether words of two notes would share room."""
    aside = one.start < other.end + 2 and other.start < one.end + 2
    return aside and row < its_row + len(other.lines) and its_row < row + len(one.lines)


def _ink(laid: _Laid, y: Mm) -> Iterator[Item]:
    at, about = laid.note.at, laid.note.about
    foot = y - HEIGHT / 2 - _BEAD
    knee = (laid.x, min(at[1] + 1.0, foot))
    points = (at, (laid.x, foot)) if abs(laid.x - at[0]) < 1e-6 else (at, knee, (laid.x, foot))
    yield Stroke(points, "fine", about)
    yield Ring(at, DOT, "narrow", about=about)
    for k, line in enumerate(reversed(laid.lines)):
        yield Text((laid.start, y + k * ROW), line, HEIGHT, "left", about=about)
