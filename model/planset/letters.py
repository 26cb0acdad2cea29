"""The set's own typography: one family in four heights, lines broken where they are full."""

from __future__ import annotations

import re
from collections.abc import Iterator

from model.drawings.fonts import CAPITAL
from model.drawings.letters import words_width
from model.units import Mm, Share

# Heights of capitals. The smallest are 7.2 points: read at arm's length on a bench.
TITLE: Mm = 4.6
HEADING: Mm = 2.7
BODY: Mm = 2.0
SMALL: Mm = 1.75

_FRACTION = re.compile(r"(?<=\d) (?=\d+/\d)")
HELD = "\u00a0"
HAIR: Mm = 1e-9

LEADING: Share = 1.42  # from line to line, in sizes of the letters


def leading(height: Mm) -> Mm:
    """From one line to the next."""
    return height / CAPITAL * LEADING


def wrapped(words: str, width: Mm, height: Mm, bold: bool = False) -> tuple[str, ...]:
    """The lines of a paragraph; a word that is longer than a line is broken within, and a whole
    number stays with its fraction.
    """
    lines: list[list[str]] = [[]]
    space, taken = words_width(" ", height, bold), 0.0
    held = _FRACTION.sub(HELD, " ".join(words.split()))
    for word in _fitting(held.split(" "), width, height, bold):
        wide = words_width(word, height, bold)
        if lines[-1] and taken + space + wide > width + HAIR:
            lines.append([])
            taken = 0.0
        taken += wide + (space if lines[-1] else 0.0)
        lines[-1].append(word)
    return tuple(" ".join(line).replace(HELD, " ") for line in lines)


def _fitting(words: list[str], width: Mm, height: Mm, bold: bool) -> Iterator[str]:
    for word in words:
        while words_width(word, height, bold) > width and len(word) > 1:
            part = _longest(word, width, height, bold)
            yield word[:part]
            word = word[part:]
        yield word


def _longest(word: str, width: Mm, height: Mm, bold: bool) -> int:
    """How many of its letters fit a line, one at least."""
    fits = (n for n in range(len(word) - 1, 1, -1) if words_width(word[:n], height, bold) <= width)
    return next(fits, 1)
