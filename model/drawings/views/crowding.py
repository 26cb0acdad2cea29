"""Lines so close on paper that no white is left between them: the lesser one is left out.

Two such lines print as one thick one. Source: ISO 128-2 asks for room between parallel lines, from
memory; how much is left to each drawing, and here it is the least that shows.
"""

from __future__ import annotations

import bisect
import math
from collections import defaultdict
from collections.abc import Iterator, Sequence
from typing import NamedTuple

from model.drawings.paper import Point
from model.units import Mm

_SHORT: Mm = 2.0  # on paper: shorter lines are left as they are, or rounds would lose a side
_PARALLEL = 1e-3  # radians
Span = tuple[Mm, Mm]


class Inked(NamedTuple):
    """A straight line on paper with the width of its pen; the `rank` of the more important one is
    lower.
    """

    begin: Point
    end: Point
    width: Mm
    rank: int


class _Kept(NamedTuple):
    """A line that is drawn, turned level: how far aside it lies, and between which places."""

    off: Mm
    low: Mm
    high: Mm
    width: Mm


def uncrowded(lines: Sequence[Inked]) -> list[list[tuple[Point, Point]]]:
    """What is left to draw of each line: the important and the long ones are drawn first."""
    widest = max((line.width for line in lines), default=0.0)
    ways: dict[int, Point] = {}
    kept: dict[int, list[_Kept]] = defaultdict(list)
    left = [[(line.begin, line.end)] for line in lines]
    for k in sorted(range(len(lines)), key=lambda k: (lines[k].rank, -_long(lines[k]), k)):
        line = lines[k]
        if _long(line) < _SHORT:
            continue
        step = _step(line)
        way = ways.setdefault(step, _way(line))
        line = _along(line, way)
        own = _level(line, way)
        near = _within(kept[step], own.off, widest)
        hidden = [
            (each.low, each.high) for each in near
            if abs(each.off - own.off) < (each.width + own.width) / 2
            and each.low < own.high and own.low < each.high
        ]  # fmt: skip
        spans = list(_left(own.low, own.high, hidden))
        left[k] = [_part(line, own, span) for span in spans]
        for low, high in spans:
            bisect.insort(kept[step], own._replace(low=low, high=high))
    return left


def _long(line: Inked) -> Mm:
    return math.dist(line.begin, line.end)


def _way(line: Inked) -> Point:
    """Its direction, to the right or straight up."""
    (x0, y0), (x1, y1) = line.begin, line.end
    way = ((x1 - x0) / _long(line), (y1 - y0) / _long(line))
    return way if way > (-_PARALLEL, 0.0) else (-way[0], -way[1])


def _step(line: Inked) -> int:
    """Its direction in small steps, alike whichever end it begins at."""
    x, y = _way(line)
    return round(math.atan2(y, x) / _PARALLEL) % round(math.pi / _PARALLEL)


def _level(line: Inked, way: Point) -> _Kept:
    x, y = way
    off = sum(x * point[1] - y * point[0] for point in (line.begin, line.end)) / 2
    return _Kept(off, _dot(way, line.begin), _dot(way, line.end), line.width)


def _along(line: Inked, way: Point) -> Inked:
    """The same line, begun at the end from which it runs that way."""
    if _dot(way, line.begin) <= _dot(way, line.end):
        return line
    return line._replace(begin=line.end, end=line.begin)


def _dot(one: Point, other: Point) -> float:
    return one[0] * other[0] + one[1] * other[1]


def _within(lines: list[_Kept], off: Mm, by: Mm) -> list[_Kept]:
    """Those that lie no farther aside; they are in order."""
    first = bisect.bisect_left(lines, off - by, key=lambda each: each.off)
    last = bisect.bisect_right(lines, off + by, key=lambda each: each.off)
    return lines[first:last]


def _left(low: Mm, high: Mm, hidden: list[Span]) -> Iterator[Span]:
    """What spans leave of another; mere ends of it are no line."""
    if not hidden:
        yield low, high
        return
    for begin, end in (*sorted(hidden), (high, high)):
        if begin - low > _SHORT / 4:
            yield low, min(begin, high)
        low = max(low, end)


def _part(line: Inked, own: _Kept, span: Span) -> tuple[Point, Point]:
    (x0, y0), (x1, y1) = line.begin, line.end
    one, other = ((at - own.low) / (own.high - own.low) for at in span)
    return (
        (x0 + (x1 - x0) * one, y0 + (y1 - y0) * one),
        (x0 + (x1 - x0) * other, y0 + (y1 - y0) * other),
    )
