"""How much room words take. A player squeezes words that its own letters would make longer."""

from __future__ import annotations

from model.cutting.record import Box
from model.drawings.paper import Text
from model.units import Mm

# Advance in heights of a capital, on the wide side of common sans-serif letters (measured on an
# open one); what is not listed counts as a figure does.
_FIGURE = 0.88
_WIDTHS = {
    **dict.fromkeys(" .,·:;", 0.44),
    **dict.fromkeys("ijl|'", 0.39),
    **dict.fromkeys("/-()frtI", 0.56),
    **dict.fromkeys('"s', 0.72),
    **dict.fromkeys("MWmw@", 1.36),
    **dict.fromkeys("×~+=", 1.16),
    **dict.fromkeys("–…", 1.38),
    **dict.fromkeys("ABCDGHNOQRUVX", 1.08),
}


def words_width(words: str, height: Mm) -> Mm:
    """How long a line of words is with capitals of this height."""
    return sum(_WIDTHS.get(letter, _FIGURE) for letter in words) * height


def text_box(text: Text) -> Box:
    """The room that a text takes, tails of letters and a little air included."""
    long, high = words_width(text.words, text.height), 1.4 * text.height
    share = {"left": 0.0, "middle": 0.5, "right": 1.0}[text.anchor]
    x, y = text.at
    if text.turned:
        return Box(x - high / 2, y - share * long, x + high / 2, y + (1 - share) * long)
    return Box(x - share * long, y - high / 2, x + (1 - share) * long, y + high / 2)
