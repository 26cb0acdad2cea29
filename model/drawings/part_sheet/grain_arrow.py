"""The sign of the grain: a double arrow along the way that it runs."""

from __future__ import annotations

from collections.abc import Iterator

from model.drawings.paper import Item, Point, Stroke, Text
from model.part import Part
from model.parts.marks import Mark
from model.units import Mm

LONG: Mm = 11.0  # of a level arrow; an upright one is as high as a line of words
HIGH: Mm = 3.2
NONE = "none"  # of a board of fibres: it may be cut either way
_BARB = (1.6, 0.6)  # back along the arrow, and aside
_WORD: Mm = 1.75  # height of capitals


def grain_of(mark: Mark) -> str:
    """Which way the grain of a mark runs; a board of fibres has none."""
    flat = mark.made_of.flat if mark.made_of is not None else None
    return NONE if flat is not None and not flat.has_grain else mark.part.grain


def grain_arrow(x: Mm, y: Mm, part: Part) -> Iterator[Item]:
    """The sign and its word from x on, half-way up at y; nothing where grain may run any way."""
    if part.grain not in ("length", "width"):
        return
    is_level = part.grain == "length"
    reach = (LONG, 0.0) if is_level else (0.0, HIGH)
    start = (x, y - reach[1] / 2)
    end = (x + reach[0], y + reach[1] / 2)
    yield Stroke((start, end))
    yield Stroke(_head(start, 1.0, is_level))
    yield Stroke(_head(end, -1.0, is_level))
    yield Text((end[0] + 1.5, y), "grain", _WORD, "left")


def _head(tip: Point, way: float, is_level: bool) -> tuple[Point, Point, Point]:
    back, aside = way * _BARB[0], _BARB[1]
    if not is_level:
        back *= 0.75
        return ((tip[0] - aside, tip[1] + back), tip, (tip[0] + aside, tip[1] + back))
    return ((tip[0] + back, tip[1] + aside), tip, (tip[0] + back, tip[1] - aside))
