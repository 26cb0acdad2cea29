"""The one rule book of the bed family: which chapters it has, and for which sides and ends each is read."""

from __future__ import annotations

from functools import cache

from model.brief import all_choices
from model.dimensions import (
    beam, connectors, deck, ends, foot_end, head_end, heights, layout, left_side, long_sides,
    posts, right_side, stock, well,
)  # fmt: skip
from model.parts import beam as beam_parts
from model.parts import beam_block, cleats
from model.parts import deck as deck_parts
from model.rules import Chapter, RuleBook

SIDES = ("left", "right")
ENDS = ("head", "foot")
ROWS = ("left", "right", "foot")

CHAPTERS: tuple[Chapter, ...] = (
    Chapter(stock), Chapter(heights), Chapter(well), Chapter(deck), Chapter(beam),
    Chapter(left_side, ("left",)), Chapter(right_side, ("right",)), Chapter(long_sides, SIDES),
    Chapter(foot_end, ("foot",)), Chapter(head_end, ("head",)), Chapter(layout, ROWS),
    Chapter(cleats, SIDES), Chapter(deck_parts), Chapter(beam_parts), Chapter(beam_block, ENDS),
)  # fmt: skip


@cache
def open_book() -> RuleBook:
    """The rule book, opened and checked once."""
    return RuleBook({name: choice.kind for name, choice in all_choices().items()}, CHAPTERS)
