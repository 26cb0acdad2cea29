"""What a player draws one after another: lines that one pen draws in a row are one step."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from itertools import groupby
from typing import NamedTuple

from model.drawings.hatching import hatch_strokes
from model.drawings.measures import inked
from model.drawings.paper import Fill, Hatch, Item, Pen, Picture, Point, Ring, Stroke, Text


class Lines(NamedTuple):
    """Strokes of one pen that follow each other, hatches among them, each through its points."""

    pen: Pen
    lines: tuple[Sequence[Point], ...]


Step = Lines | Ring | Fill | Picture | Text


def by_pen(items: Iterable[Item]) -> Iterator[Step]:
    """All that leaves ink, in its order; dimensions as their strokes and words."""
    for pen, some in groupby(inked(items), key=_pen_of):
        if pen is not None:
            yield Lines(pen, tuple(line for item in some for line in _lines(item)))
        else:
            yield from (item for item in some if isinstance(item, Ring | Fill | Picture | Text))


def _pen_of(item: Item) -> Pen | None:
    if isinstance(item, Stroke):
        return item.pen
    return "fine" if isinstance(item, Hatch) else None


def _lines(item: Item) -> Iterator[Sequence[Point]]:
    if isinstance(item, Hatch):
        yield from hatch_strokes(item)
    elif isinstance(item, Stroke):
        yield item.points
