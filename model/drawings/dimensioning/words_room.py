"""Room for the words of dimensions on one side of a view: what is there already, and what is clear.

All in (along the side, out from the view), mm on paper.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from model.drawings.measures import WORDS
from model.units import Mm

HIGH: Mm = 1.4 * WORDS  # room of a line of words, tails of letters included
AIR: Mm = 0.8  # between words and what stands beside them
APART: Mm = 1.5  # between words on one line: figures nearer to each other read as one number


class Word(NamedTuple):
    """Where words stand: their middle and half their length along, their middle out."""

    at: Mm
    half: Mm
    out: Mm

    @property
    def low(self) -> Mm:
        return self.at - self.half

    @property
    def high(self) -> Mm:
        return self.at + self.half

    def hits(self, other: Word) -> bool:
        is_one_line = abs(self.out - other.out) < HIGH / 4
        near = self.half + other.half + (APART if is_one_line else AIR)
        return abs(self.at - other.at) < near and abs(self.out - other.out) < HIGH

    def holds(self, line: Mm) -> bool:
        """Whether a leading line would run through them."""
        return abs(line - self.at) < self.half + AIR / 2


class Leader(NamedTuple):
    """A line from a dimension to words that stand off it, by the room around it."""

    low: Mm
    high: Mm
    near: Mm
    far: Mm

    @classmethod
    def to(cls, word: Word, middle: Mm, out: Mm) -> Leader:
        """From the middle of a span on its line to the nearest of the words."""
        foot = foot_of(word, middle)
        return cls(min(foot, middle), max(foot, middle), out, word.out - HIGH / 2)

    def hits(self, word: Word) -> bool:
        aside = self.low < word.high + AIR / 2 and word.low - AIR / 2 < self.high
        return aside and self.near < word.out + HIGH / 2 and word.out - HIGH / 2 < self.far


def foot_of(word: Word, middle: Mm) -> Mm:
    """Where a leader meets its words, along the side."""
    return max(word.low, min(middle, word.high))


class WordsRoom:
    """What words and leaders there are so far."""

    def __init__(self) -> None:
        self.words: list[Word] = []
        self._leaders: list[Leader] = []

    def take(self, word: Word, leader: Leader | None = None) -> None:
        """Words that stay, with the line to them."""
        self.words.append(word)
        if leader is not None:
            self._leaders.append(leader)

    def drop(self, leader: Leader | None) -> None:
        """Take the last words away again, and the line to them."""
        self.words.pop()
        if leader is not None:
            self._leaders.pop()

    def is_clear(self, word: Word, lines: Sequence[Mm], leader: Leader | None = None) -> bool:
        """Whether words keep off the lines that lead through, off all others and their leaders."""
        if any(word.holds(at) for at in lines) or any(word.hits(other) for other in self.words):
            return False
        if any(other.hits(word) for other in self._leaders):
            return False
        return leader is None or not any(leader.hits(other) for other in self.words)
