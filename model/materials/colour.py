"""What woods and sheets look like, planed and without finish: for pictures only."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache

from model.materials.table import shipped

_OTHER = "other"  # the row of what no other row is meant for


@dataclass(frozen=True, kw_only=True)
class WoodColour:
    """The colour of all materials whose key begins like this one, as six hexadecimal digits."""

    key: str
    colour: str
    source: str


@lru_cache(maxsize=256)
def wood_colour(material: str) -> str:
    """The planed, unfinished look of a material, six hexadecimal digits; the longest row that
    begins like its key counts.
    """
    rows = _wood_colours()
    fitting = (key for key in rows if material.startswith(key))
    return rows[max(fitting, key=len, default=_OTHER)].colour


@lru_cache
def _wood_colours() -> Mapping[str, WoodColour]:
    return shipped("wood_colours.csv", WoodColour)
