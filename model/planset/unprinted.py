"""Letters that the maker's own names have and the set's fonts have not, told in a sentence."""

from __future__ import annotations

from model.bed import Design
from model.drawings.fonts import MISSING, unprintable

MOST_NAMED = 12


def unprinted_letters(words: str) -> str:
    """Which letters of these words no page can show, as a sentence; empty where there is none."""
    missing = unprintable(words)
    if not missing:
        return ""
    named = ", ".join(missing[:MOST_NAMED])
    if len(missing) > MOST_NAMED:
        named += f" and {len(missing) - MOST_NAMED} more"
    place = "in its place" if len(missing) == 1 else "in the place of each"
    return f"The set's letters have no {named}: an empty box {MISSING} is printed {place}."


def unprinted_names(design: Design) -> str:
    """The same of all that a maker names: the bed, the shop, own materials, boards of the rack."""
    publisher, own = design.publisher, design.own
    names = [design.name, publisher.name, publisher.line]
    for rows in (own.species, own.sheets, design.stock.boards):
        names += (row.name for row in rows)
    return unprinted_letters(" ".join(names))
