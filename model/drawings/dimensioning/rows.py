"""Dimensions in rows outside a view: the shortest nearest to it, the whole farthest.

Reckoned along a side and out from the view, alike for all four sides. Lines are 7 to 8 mm apart,
the first 10 mm from the outline. Source: ISO 129-1, from memory.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from functools import partial
from itertools import pairwise
from typing import NamedTuple

from model.cutting.record import Box
from model.drawings.dimensioning.in_order import Asked, Placed, in_order, keeps_order
from model.drawings.dimensioning.row_numbers import row_numbers
from model.drawings.dimensioning.runs import Run, Side, axis_of, distinct
from model.drawings.dimensioning.words_room import AIR, HIGH, Leader, Word, WordsRoom
from model.drawings.letters import words_width
from model.drawings.measures import ABOVE, PAST, TICK, WORDS
from model.drawings.paper import Item, Measure, Point, Stroke, grown, is_free
from model.units import Mm

FIRST: Mm = 10.0
ROW: Mm = 7.5
LIFT: Mm = 1.75 * WORDS  # words that fit nowhere on their line stand so much farther out
_SHARES = (0.5, 0.3, 0.7, 0.15, 0.85)  # where along a span its words are tried
_LIFTS = 6  # lines of words that a row may take beyond its own
_NEAR = (
    0.0,
    -2.0,
    2.0,
    -4.0,
    4.0,
    -6.0,
    6.0,
    -9.0,
    9.0,
    -13.0,
    13.0,
    -18.0,
    18.0,
    -24.0,
    24.0,
)  # mm
_ASIDE = (0.0, -0.6, 0.6, -2.0, 2.0, -4.0, 4.0, -7.0, 7.0)  # half lengths from a span's middle


class Rows(NamedTuple):
    """Dimensions of one side; `box` holds view, lines and words, `words` each of these alone."""

    items: tuple[Item, ...]
    box: Box
    words: tuple[Box, ...] = ()


def rows(
    view: Box, side: Side, runs: Iterable[Run], first: Mm = FIRST, taken: Sequence[Box] = ()
) -> Rows:
    """Lay runs out on one side of a view, their words clear of each other, of all lines that lead
    through their row, and of what is taken (as the words of another side beyond a corner).
    """
    return _Layout(view, side, distinct(runs, side), taken).rows(first)


class _Row(NamedTuple):
    """One row while it is filled: how far out its line is, and the lines that lead through it and
    through what lies beyond.
    """

    out: Mm
    runs: tuple[Run, ...]
    lines: tuple[Mm, ...]
    beyond: tuple[Mm, ...]


class _Layout:
    """One side of a view while its rows are filled, from the nearest on."""

    def __init__(self, view: Box, side: Side, runs: Sequence[Run], taken: Sequence[Box]) -> None:
        self._view, self._side, self._runs, self._taken = view, side, runs, taken
        self._axis = axis_of(side)
        self._numbers = row_numbers([run.along(side) for run in runs], [run.level for run in runs])
        self._up = side in ("above", "left")  # words stand farther out than their line, else nearer
        self._room = WordsRoom()
        self._items: list[Item] = []
        self._last: Mm = 0.0  # how far out the farthest line is

    def rows(self, first: Mm) -> Rows:
        out = first
        for number in range(max(self._numbers, default=-1) + 1):
            row = self._row(number, out)
            placed = self._placed(row)
            for each in placed:
                self._items += self._ink(row, each)
            self._last = out
            out += ROW + max(each.lift for each in placed) * LIFT
        words = tuple(self._word_box(word) for word in self._room.words)
        return Rows(tuple(self._items), self._box(), words)

    def _row(self, number: int, out: Mm) -> _Row:
        numbered = list(zip(self._runs, self._numbers, strict=True))
        here = tuple(run for run, row in numbered if row == number)
        lines = tuple(
            tuple(at for run, row in numbered if row >= least for at in run.along(self._side))
            for least in (number, number + 1)
        )
        return _Row(out, here, tuple(sorted(lines[0])), lines[1])

    def _placed(self, row: _Row) -> list[Placed]:
        """The words of a row: each where it fits first, or all anew where their order is lost."""
        asked = list(_asked(row.runs, self._side))
        placed: list[Placed] = []
        for span in asked:
            placed.append(self._word(row, span))
            self._room.take(placed[-1].word, placed[-1].leader)
        if keeps_order(placed):
            return placed
        for each in reversed(placed):
            self._room.drop(each.leader)
        for lines in (row.beyond, ()):  # rather across a leading line than out of order
            found = in_order(asked, partial(self._tried_in_order, row, lines), self._room)
            if found is not None:
                return found
        for each in placed:
            self._room.take(each.word, each.leader)
        return placed

    def _tried_in_order(
        self, row: _Row, lines: Sequence[Mm], asked: Asked, best: Mm
    ) -> Iterator[Placed]:
        """Every clear place of words: on their line, then the nearest beyond it, to their span or
        to where they would stand best.
        """
        found = self._on_line(row, asked)
        if found is not None:
            yield found
        aside = [(abs(each), asked.middle + each) for each in _NEAR]
        aside.append((abs(best - asked.middle) / 2, best))
        places = [(far + lift * LIFT, lift, at) for lift in range(1, _LIFTS + 1)
                  for far, at in aside]  # fmt: skip
        for _, lift, at in sorted(places):
            led = self._led_off(row, asked, lift, at, lines)
            if led is not None:
                yield led

    def _ink(self, row: _Row, placed: Placed) -> Iterator[Item]:
        leader = placed.leader
        if leader is not None:
            start, end = placed.led
            yield Stroke((self._point(start, row.out), self._point(end, leader.far)))
        yield self._measure(row, placed.asked.run, placed.asked.k, placed.word)

    # ------------------------------------------------------------ words

    def _word(self, row: _Row, asked: Asked) -> Placed:
        """The first place that is clear: on the line, beyond an end of the run, farther out."""
        return (
            self._on_line(row, asked)
            or self._lifted(row, asked, row.beyond)
            or self._lifted(row, asked, ())  # rather across a leading line than over words
            or Placed(asked, Word(asked.middle, asked.half, self._level(row)), 0, row.out)
        )

    def _on_line(self, row: _Row, asked: Asked) -> Placed | None:
        level = self._level(row)
        for at in _tried(asked, row.lines):
            word = Word(at, asked.half, level)
            clear = self._room.is_clear(word, row.lines)
            if clear and self._has_line(row, asked.run, word, asked.ends):
                return Placed(asked, word, 0, row.out)
        return None

    def _level(self, row: _Row) -> Mm:
        """How far out words on their line stand."""
        return row.out + (ABOVE if self._up else -ABOVE) * WORDS

    def _lifted(self, row: _Row, asked: Asked, lines: Sequence[Mm]) -> Placed | None:
        """A clear place beyond the line, on the nearest line of words that has one."""
        most = max(asked.half, LIFT)
        tries = ((lift, asked.middle + aside * most) for lift in range(1, _LIFTS + 1)
                 for aside in _ASIDE)  # fmt: skip
        found = (self._led_off(row, asked, lift, at, lines) for lift, at in tries)
        return next((each for each in found if each is not None), None)

    def _led_off(
        self, row: _Row, asked: Asked, lift: int, at: Mm, lines: Sequence[Mm]
    ) -> Placed | None:
        """Words so many lines beyond their own, if they are clear there."""
        farther = row.out + (0.6 if self._up else -0.25) * WORDS + lift * LIFT
        word = Word(at, asked.half, farther)
        leader = Leader.to(word, asked.middle, row.out)
        clear = self._room.is_clear(word, lines, leader)
        if clear and self._is_untaken(row, word, asked.ends):
            return Placed(asked, word, lift, row.out)
        return None

    def _has_line(self, row: _Row, run: Run, word: Word, ends: tuple[Mm, Mm]) -> bool:
        """Whether words on their line, or on what goes on beyond its end, are alone there."""
        if not self._is_untaken(row, word, ends):
            return False
        if ends[0] <= word.at <= ends[1]:
            return True
        others = (each.along(self._side) for each in row.runs if each is not run)
        return all(word.high + AIR < o[0] or word.low - AIR > o[-1] for o in others)

    def _is_untaken(self, row: _Row, word: Word, ends: tuple[Mm, Mm]) -> bool:
        """Whether words, and their line where it runs on to them from an end, keep clear of the
        words of other sides.
        """
        line = _run_on(word, ends, row.out)
        if any(line.hits(other) for other in self._room.words):
            return False
        at = Word((line.low + line.high) / 2, (line.high - line.low) / 2, row.out)
        boxes = (self._word_box(word), self._word_box(at, high=0.4))
        return all(is_free(grown(box, 0.3), self._taken) for box in boxes)

    # ------------------------------------------------------------ on paper

    def _measure(self, row: _Row, run: Run, k: int, word: Word) -> Measure:
        return Measure(
            start=run.points[k], end=run.points[k + 1], line=self._paper(row.out),
            upright=self._axis == 1, words=run.words[k], size=run.sizes[k],
            words_at=self._point(word.at, word.out),
        )  # fmt: skip

    def _paper(self, out: Mm) -> Mm:
        """So far out from the view."""
        view = self._view
        return {
            "below": view.y0 - out, "above": view.y1 + out,
            "left": view.x0 - out, "right": view.x1 + out,
        }[self._side]  # fmt: skip

    def _point(self, along: Mm, out: Mm) -> Point:
        return (along, self._paper(out)) if self._axis == 0 else (self._paper(out), along)

    def _word_box(self, word: Word, high: Mm = HIGH) -> Box:
        x, y = self._point(word.at, word.out)
        wide, high = (word.half, high / 2) if self._axis == 0 else (high / 2, word.half)
        return Box(x - wide, y - high, x + wide, y + high)

    def _box(self) -> Box:
        """All that was laid, and the view."""
        words, v = self._room.words, self._view
        if not words:
            return v
        ends = [at for run in self._runs for at in run.along(self._side)]
        low = min(min(ends) - TICK, *(word.low for word in words))
        high = max(max(ends) + TICK, *(word.high for word in words))
        far = self._paper(max(self._last + PAST, *(word.out + HIGH / 2 for word in words)))
        if self._axis == 0:
            return Box(min(v.x0, low), min(v.y0, far), max(v.x1, high), max(v.y1, far))
        return Box(min(v.x0, far), min(v.y0, low), max(v.x1, far), max(v.y1, high))


def _run_on(word: Word, ends: tuple[Mm, Mm], out: Mm) -> Leader:
    """The line of a span, on to words that stand beyond its end."""
    low, high = ends
    if word.at < low:
        low = word.low
    elif word.at > high:
        high = word.high
    return Leader(low, high, out - 0.1, out + 0.1)


def _asked(runs: Sequence[Run], side: Side) -> Iterator[Asked]:
    """The words of all spans of a row."""
    for run in runs:
        for k, ends in enumerate(pairwise(run.along(side))):
            yield Asked(run, k, ends, words_width(run.words[k], WORDS) / 2)


def _tried(asked: Asked, lines: Sequence[Mm]) -> Iterator[Mm]:
    """Where words may stand along their line: within the span, then beyond an end of the run."""
    run, k, (low, high), half = asked
    if asked.spare >= 0:
        yield from (low + half + AIR + share * asked.spare for share in _SHARES)
        within = [low, *(at for at in lines if low < at < high), high]
        yield from ((a + b) / 2 for a, b in pairwise(within))
    beyond = half + AIR + TICK
    if k == len(run.sizes) - 1:
        yield high + beyond
    if k == 0:
        yield low - beyond
