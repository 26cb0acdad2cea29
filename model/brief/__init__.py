"""What the maker can decide: every choice with default, range, reasons and help, one file per
topic.
"""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache, lru_cache
from types import MappingProxyType
from typing import Any

from model.brief import (
    climate,
    cutting,
    deck,
    drawers,
    ends,
    finish,
    heights,
    loads,
    mattress,
    posts,
    publishing,
    route,
    shop,
    sides,
)
from model.brief.declare import Choice, choices_of
from model.materials.own import NONE, OwnRows
from model.units import GRIDS

# What is decided when the bed stands: no rule and no check reads it.
AFTER: tuple[type, ...] = (
    finish.Finishing, finish.Spares, cutting.Milling, cutting.Sawing, cutting.Buying,
    publishing.Publishing,
)  # fmt: skip
TOPICS: tuple[type, ...] = (
    mattress.Mattress, heights.Heights, sides.Row, drawers.Slides, drawers.Boxes, drawers.Fronts,
    sides.Side, sides.SideFrames, deck.Deck, deck.CleatScrews, deck.Beam, posts.Posts,
    ends.End, ends.Ends,
    shop.Shop, sides.Nightstand, loads.Sleepers, climate.House, route.WayIn,
    *AFTER,
)  # fmt: skip


@lru_cache(maxsize=32)
def all_choices(own: OwnRows = NONE) -> Mapping[str, Choice]:
    """Every choice of the bed family by its full name, in the order that panes show them.

    `own`: the maker's own materials, which the choices of a material then offer too.
    """
    listed = (c.with_own(own) for topic in TOPICS for c in choices_of(topic))
    return MappingProxyType({c.name: c for c in listed})


@cache
def after_the_bed() -> frozenset[str]:
    """The choices that leave the bed as it is: how it is milled, sawn, bought and finished."""
    return frozenset(choice.name for topic in AFTER for choice in choices_of(topic))


@cache
def defaults() -> Mapping[str, Any]:
    """The design that a new bed starts from."""
    return MappingProxyType({name: c.default for name, c in all_choices().items()})


def given(choices: Mapping[str, Any], own: OwnRows = NONE) -> dict[str, Any]:
    """What the rules receive: table rows for keys, cut sizes on the shop grid, defaults for what
    was not chosen.
    """
    known = all_choices(own)
    grid = GRIDS[choices.get("grid", known["grid"].default)]
    return {n: c.given(choices.get(n, c.default), grid) for n, c in known.items()}
