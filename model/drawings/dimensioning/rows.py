"""Dimensions in rows outside a view: the shortest nearest to it, the whole farthest.

Reckoned along a side and out from the view, alike for all four sides. Lines are 7 to 8 mm apart,
the first 10 mm from the outline. Source: ISO 129-1, from memory.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from itertools import pairwise
from typing import NamedTuple

from model.cutting.record import Box
from model.drawings.dimension import PAST, TICK, WORDS
from model.drawings.dimensioning.runs import Run, Side, axis_of, distinct
from model.drawings.letters import words_width
from model.drawings.measures import ABOVE
from model.drawings.paper import Item, Measure, Point, Stroke, grown, is_free
from model.units import Mm

FIRST: Mm = 10.0
ROW: Mm = 7.5
LIFT: Mm = 1.75 * WORDS  # words that fit nowhere on their line stand so much farther out
HIGH: Mm = 1.4 * WORDS  # room of a line of words, tails of letters included
AIR: Mm = 0.8  # between words and what stands beside them
_SHARES = (0.5, 0.3, 0.7, 0.15, 0.85)  # where along a span its words are tried
_LIFTS = 3


class Rows(NamedTuple):
    """Dimensions of one side; `box` holds view, lines and words, `words` each of these alone."""

    items: tuple[Item, ...]
    box: Box
    words: tuple[Box, ...] = ()


class _Word(NamedTuple):
    """Where words stand: their middle and half their length along, their middle out."""

    at: Mm
    half: Mm
    out: Mm

    def hits(self, other: _Word) -> bool:
        near = self.half + other.half + AIR
        return abs(self.at - other.at) < near and abs(self.out - other.out) < HIGH

    def holds(self, line: Mm) -> bool:
        """Whether a leading line would run through them."""
        return abs(line - self.at) < self.half + AIR / 2


def rows(
    view: Box, side: Side, runs: Iterable[Run], first: Mm = FIRST, taken: Sequence[Box] = ()
) -> Rows:
    """Lay runs out on one side of a view, their words clear of each other, of all lines that lead
    through their row, and of what is taken (as the words of another side beyond a corner).
    """
    return _Layout(view, side, distinct(runs, side), taken).rows(first)


def row_numbers(runs: Sequence[Run], side: Side) -> list[int]:
    """The row of each run: no two share ground in a row, and none lies within a shorter one."""
    spans = [(run.along(side)[0], run.along(side)[-1]) for run in runs]
    order = sorted(
        range(len(runs)), key=lambda k: (runs[k].level, spans[k][1] - spans[k][0], spans[k])
    )
    numbers = [0] * len(runs)
    done: list[int] = []
    for k in order:
        low, high = spans[k]
        under = [
            numbers[j]
            for j in done
            if runs[j].level < runs[k].level or _share_ground(spans[j], spans[k])
        ]
        numbers[k] = max(under, default=-1) + 1
        done.append(k)
    return numbers


def _share_ground(one: tuple[Mm, Mm], other: tuple[Mm, Mm]) -> bool:
    return one[0] < other[1] - 0.01 and other[0] < one[1] - 0.01


class _Layout:
    """One side of a view while its rows are filled, from the nearest on."""

    def __init__(self, view: Box, side: Side, runs: Sequence[Run], taken: Sequence[Box]) -> None:
        self._view, self._side, self._runs, self._taken = view, side, runs, taken
        self._axis = axis_of(side)
        self._numbers = row_numbers(runs, side)
        self._up = side in ("above", "left")  # words stand farther out than their line, else nearer
        self._words: list[_Word] = []
        self._items: list[Item] = []

    def rows(self, first: Mm) -> Rows:
        out = first
        for number in range(max(self._numbers, default=-1) + 1):
            numbered = zip(self._runs, self._numbers, strict=True)
            here = [run for run, row in numbered if row == number]
            lifted = max((self._one_run(run, here, out, number) for run in here), default=0)
            out += ROW + lifted * LIFT
        return Rows(tuple(self._items), self._box(), tuple(map(self._word_box, self._words)))

    def _one_run(self, run: Run, here: Sequence[Run], out: Mm, number: int) -> int:
        """Lay one run; returns how many lines its words needed beyond its own."""
        along, most = run.along(self._side), 0
        for k, (low, high) in enumerate(pairwise(along)):
            word, lift = self._word(run, k, (low, high), out, number, here)
            self._words.append(word)
            most = max(most, lift)
            self._measure(run, k, out, word, lift)
        return most

    def _lines_through(self, number: int) -> list[Mm]:
        """Leading lines that pass through a row on their way to it or beyond it."""
        return sorted(
            at
            for each, row in zip(self._runs, self._numbers, strict=True)
            if row >= number
            for at in each.along(self._side)
        )

    def _word(
        self, run: Run, k: int, ends: tuple[Mm, Mm], out: Mm, number: int, here: Sequence[Run]
    ) -> tuple[_Word, int]:  # fmt: skip
        """The first place that is clear: on the line, beyond an end of the run, farther out."""
        half = words_width(run.words[k], WORDS) / 2
        lines = self._lines_through(number)
        level = out + (ABOVE if self._up else -ABOVE) * WORDS
        for at in self._tried(run, k, ends, half, lines):
            word = _Word(at, half, level)
            if self._is_clear(word, lines, ends) and self._is_off(word, run, here, ends):
                return word, 0
        beyond = self._lines_through(number + 1)
        for lift in range(1, _LIFTS + 1):
            lifted = out + (0.6 if self._up else -0.25) * WORDS + lift * LIFT
            for share in (0.5, 0.2, 0.8, -0.5, 1.5, -1.5, 2.5, -3, 4):
                middle = ends[0] + 0.5 * (ends[1] - ends[0])
                word = _Word(middle + (share - 0.5) * 2 * half, half, lifted)
                if self._is_clear(word, beyond, ends):
                    return word, lift
        return _Word((ends[0] + ends[1]) / 2, half, level), 0

    def _tried(
        self, run: Run, k: int, ends: tuple[Mm, Mm], half: Mm, lines: Sequence[Mm]
    ) -> Iterator[Mm]:
        low, high = ends
        spare = high - low - 2 * half - 2 * AIR
        if spare >= 0:
            yield from (low + half + AIR + share * spare for share in _SHARES)
            within = [low, *(at for at in lines if low < at < high), high]
            yield from ((a + b) / 2 for a, b in pairwise(within))
        beyond = half + AIR + TICK
        if k == len(run.sizes) - 1:
            yield high + beyond
        if k == 0:
            yield low - beyond

    def _is_clear(self, word: _Word, lines: Sequence[Mm], ends: tuple[Mm, Mm]) -> bool:
        return (
            not any(word.holds(at) for at in lines)
            and not any(word.hits(other) for other in self._words)
            and (not self._taken or self._is_untaken(word, ends))
        )

    def _is_untaken(self, word: _Word, ends: tuple[Mm, Mm]) -> bool:
        """Whether words, and the line that runs on to them from an end, keep clear of other words;
        the line lies no farther from the words than the tails of letters reach.
        """
        near = min(max(word.at, ends[0]), ends[1])
        low, high = min(near, word.at - word.half), max(near, word.at + word.half)
        long = _Word((low + high) / 2, (high - low) / 2, word.out)
        return is_free(grown(self._word_box(long), 0.4 * WORDS), self._taken)

    def _word_box(self, word: _Word) -> Box:
        low = self._point(word.at - word.half, self._paper(word.out) - HIGH / 2)
        high = self._point(word.at + word.half, self._paper(word.out) + HIGH / 2)
        return Box(*low, *high)

    def _is_off(self, word: _Word, run: Run, here: Sequence[Run], ends: tuple[Mm, Mm]) -> bool:
        """Whether words beyond an end keep off the other runs of their row."""
        if ends[0] <= word.at <= ends[1]:
            return True
        others = (each.along(self._side) for each in here if each is not run)
        reach = word.half + AIR
        return all(word.at + reach < o[0] or word.at - reach > o[-1] for o in others)

    # ------------------------------------------------------------ on paper

    def _measure(self, run: Run, k: int, out: Mm, word: _Word, lift: int) -> None:
        line = self._paper(out)
        words_at = self._point(word.at, self._paper(word.out))
        if lift:
            middle = (run.along(self._side)[k] + run.along(self._side)[k + 1]) / 2
            foot = max(word.at - word.half, min(middle, word.at + word.half))
            near = self._paper(word.out - 0.5 * HIGH)
            self._items.append(
                Stroke((self._point(middle, line), self._point(foot, near)), "narrow")
            )
        self._items.append(
            Measure(
                run.points[k],
                run.points[k + 1],
                line,
                self._axis == 1,
                run.words[k],
                run.sizes[k],
                words_at,
            )  # fmt: skip
        )

    def _paper(self, out: Mm) -> Mm:
        view = self._view
        return {
            "below": view.y0 - out, "above": view.y1 + out,
            "left": view.x0 - out, "right": view.x1 + out,
        }[self._side]  # fmt: skip

    def _point(self, along: Mm, across: Mm) -> Point:
        return (along, across) if self._axis == 0 else (across, along)

    def _box(self) -> Box:
        """All that was laid, and the view."""
        view, outs, alongs = self._view, [0.0], [self._low(), self._high()]
        for word in self._words:
            outs += [word.out + HIGH / 2]
            alongs += [word.at - word.half, word.at + word.half]
        for item in self._items:
            if isinstance(item, Measure):
                outs.append(abs(item.line - self._paper(0.0)) + PAST)
        far = max(outs)
        if self._axis == 0:
            y0, y1 = (view.y0 - far, view.y1) if self._side == "below" else (view.y0, view.y1 + far)
            return Box(min(alongs), y0, max(alongs), y1)
        x0, x1 = (view.x0 - far, view.x1) if self._side == "left" else (view.x0, view.x1 + far)
        return Box(x0, min(alongs), x1, max(alongs))

    def _low(self) -> Mm:
        return self._view.x0 if self._axis == 0 else self._view.y0

    def _high(self) -> Mm:
        return self._view.x1 if self._axis == 0 else self._view.y1
