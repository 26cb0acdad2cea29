"""How much room words take, in the letters that every player sets them in."""

from __future__ import annotations

from functools import lru_cache

from model.cutting.record import Box
from model.drawings.fonts import CAPITAL, Run, advances, runs
from model.drawings.paper import Text
from model.units import Mm, Share


def words_width(words: str, height: Mm, bold: bool = False) -> Mm:
    """How long a line of words is with capitals of this height."""
    return _width(words, bold) * height


def text_box(text: Text) -> Box:
    """The room that a text takes, tails of letters and a little air included."""
    long, high = words_width(text.words, text.height, text.bold), 1.4 * text.height
    share = {"left": 0.0, "middle": 0.5, "right": 1.0}[text.anchor]
    x, y = text.at
    if text.turned:
        return Box(x - high / 2, y - share * long, x + high / 2, y + (1 - share) * long)
    return Box(x - share * long, y - high / 2, x + (1 - share) * long, y + high / 2)


@lru_cache(maxsize=65536)
def _width(words: str, bold: bool) -> float:
    """In heights of a capital."""
    return sum(run_width(run) for run in runs(words, bold)) / CAPITAL


def run_width(run: Run) -> Share:
    """How long a run is, in sizes of its letters."""
    known = advances(run.face)
    return sum(known[letter] for letter in run.letters)
