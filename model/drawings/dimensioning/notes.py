"""Notes above a view, each with a leader straight down to what it tells of.

A leader never runs through words: a note whose words lie over another's leader stands in a row
farther out than that one.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import NamedTuple

from model.cutting.record import Box
from model.drawings.letters import words_width
from model.drawings.paper import Item, Point, Ring, Stroke, Text
from model.units import Mm

HEIGHT: Mm = 1.9  # of capitals
ROW: Mm = 3.6
NEAREST: Mm = 3.0  # from the view to the lowest words
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
    x: Mm
    start: Mm
    end: Mm

    def covers(self, x: Mm) -> bool:
        return self.start - AIR < x < self.end + AIR


def notes_above(notes: Sequence[Note], view: Box, low: Mm, high: Mm) -> Notes:
    """Notes in rows above a view, their words between `low` and `high` along x where they fit."""
    laid = _laid(sorted(notes, key=lambda note: (note.at[0], note.at[1], note.words)), low, high)
    rows = _rows(laid)
    items: list[Item] = []
    for each, row in zip(laid, rows, strict=True):
        items += _ink(each, view.y1 + NEAREST + row * ROW)
    top = view.y1 + NEAREST + max(rows, default=-1) * ROW + HEIGHT if laid else view.y1
    return Notes(tuple(items), top)


def _laid(notes: Sequence[Note], low: Mm, high: Mm) -> list[_Laid]:
    """To the right of their leaders, or to the left where there is no room at the right."""
    found: list[_Laid] = []
    last = -1e9
    for note in notes:
        x = max(note.at[0], last + APART)
        last = x
        long = words_width(note.words, HEIGHT)
        start = x if x + long <= high else max(min(x - long, high - long), low)
        found.append(_Laid(note, x, start, start + long))
    return found


def _rows(laid: Sequence[_Laid]) -> list[int]:
    """The least row of each note so that leaders and words keep clear; mutual ones are turned."""
    rows = [-1] * len(laid)
    waiting = list(range(len(laid)))
    while waiting:
        ready = [
            k for k in waiting if not any(laid[k].covers(laid[j].x) for j in waiting if j != k)
        ]
        for k in ready or waiting[-1:]:
            rows[k] = _free_row(k, laid, rows)
            waiting.remove(k)
    return rows


def _free_row(k: int, laid: Sequence[_Laid], rows: Sequence[int]) -> int:
    below = [rows[j] + 1 for j in range(len(laid)) if rows[j] >= 0 and laid[k].covers(laid[j].x)]
    row = max(below, default=0)
    while any(
        rows[j] == row and laid[j].start < laid[k].end + 2 and laid[k].start < laid[j].end + 2
        for j in range(len(laid))
        if j != k
    ):
        row += 1
    return row


def _ink(laid: _Laid, y: Mm) -> Iterator[Item]:
    at, about = laid.note.at, laid.note.about
    foot = y - HEIGHT / 2 - _BEAD
    knee = (laid.x, min(at[1] + 1.0, foot))
    points = (at, (laid.x, foot)) if abs(laid.x - at[0]) < 1e-6 else (at, knee, (laid.x, foot))
    yield Stroke(points, "fine", about)
    yield Ring(at, DOT, "narrow", about=about)
    yield Text((laid.start, y), laid.note.words, HEIGHT, "left", about=about)
