"""How a planned stick or board becomes a tree of cuts: in whole numbers in, in mm out.

A chain is what one fence or stop does: blocks one after the other along x (crosscuts) or y (rips),
each cut off what is left. The blade takes a full kerf but where it runs out over the edge.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from functools import partial
from typing import NamedTuple

from model.cutting.lengths.lots import Named, Strip, at_least, mm
from model.cutting.record import Placed, Region, Use, Way
from model.units import Mm


class Rect(NamedTuple):
    """Lower left and upper right corner, whole numbers."""

    x0: int
    y0: int
    x1: int
    y1: int

    def span(self, way: Way) -> tuple[int, int]:
        """From and to, along the axis that a way of cutting divides."""
        return (self.x0, self.x1) if way == "crosscut" else (self.y0, self.y1)

    def cropped(self, way: Way, low: int, high: int) -> Rect:
        """The part between two lines of a way of cutting."""
        if way == "crosscut":
            return Rect(low, self.y0, high, self.y1)
        return Rect(self.x0, low, self.x1, high)

    def meets(self, other: Rect) -> bool:
        """Whether they share wood, not only an edge."""
        across = self.y0 < other.y1 and other.y0 < self.y1
        return across and self.x0 < other.x1 and other.x0 < self.x1


class Block(NamedTuple):
    """A stretch of a chain, and what becomes of it."""

    low: int
    high: int
    made: Callable[[Rect], Region]


class Line(NamedTuple):
    """A cut: where, how thick, and whether it only takes an edge or a bad span away."""

    way: Way
    at: int
    kerf: int
    is_trim: bool


@dataclass(frozen=True)
class Saw:
    """Kerf, the least offcut worth keeping, and the bad spans of the board in hand.

    Offcuts of sticks are judged by their length alone (`is_stick`).
    """

    kerf: int
    least_offcut: Mm
    bad: tuple[Rect, ...] = ()
    is_stick: bool = False

    def chain(self, rect: Rect, way: Way, blocks: Sequence[Block], is_trim: bool = False) -> Region:
        """The blocks cut off one by one, in order; gaps before them are cut away as trim."""
        low, high = rect.span(way)
        if not blocks:
            return self.rest(rect)
        first = blocks[0]
        if first.low > low:
            at = max(low, first.low - self.kerf)
            before = self.rest(rect.cropped(way, low, at)) if at > low else None
            behind = self.chain(rect.cropped(way, first.low, high), way, blocks, is_trim)
            return _cut(rect, Line(way, at, first.low - at, True), before, behind)
        if first.high == high:
            return first.made(rect)
        end = min(high, first.high + self.kerf)
        made = first.made(rect.cropped(way, low, first.high))
        left = None
        if end < high:
            left = self.chain(rect.cropped(way, end, high), way, blocks[1:], is_trim)
        return _cut(rect, Line(way, first.high, end - first.high, is_trim), made, left)

    def strip(self, rect: Rect, strip: Strip) -> Region:
        """A strip out of a rectangle that holds it: crosscut to length, then ripped to width."""
        kerfs = self.kerf * (len(strip.named) - 1)
        length = sum(each.along for each in strip.named) + kerfs
        width = rect.y1 - rect.y0 if self.is_stick else max(n.across for n in strip.named)
        row = Block(rect.y0, rect.y0 + width, partial(self._row, strip=strip))
        blank = Block(rect.x0, rect.x0 + length, partial(self.chain, way="rip", blocks=[row]))
        return self.chain(rect, "crosscut", [blank])

    def rest(self, rect: Rect) -> Region:
        """What is left: an offcut if it is large enough and sound."""
        shorter = rect.x1 - rect.x0 if self.is_stick else min(rect.x1 - rect.x0, rect.y1 - rect.y0)
        is_sound = not any(rect.meets(each) for each in self.bad)
        keep = is_sound and shorter >= at_least(self.least_offcut)
        return _region(rect, use="offcut" if keep else "waste")

    def _row(self, rect: Rect, strip: Strip) -> Region:
        if not strip.row:
            return _piece(rect, strip.named[0])
        blocks, at = [], rect.x0
        for each in strip.named:
            blocks.append(Block(at, at + each.along, partial(_piece, named=each)))
            at += each.along + self.kerf
        region = self.chain(rect, "crosscut", blocks)
        return replace(region, row=strip.row, stays_whole=strip.stays_whole)


def _region(rect: Rect, use: Use | None = None, placed: Placed | None = None) -> Region:
    x0, y0, x1, y1 = rect
    return Region(x=mm(x0), y=mm(y0), length=mm(x1 - x0), width=mm(y1 - y0), use=use, placed=placed)


def _piece(rect: Rect, named: Named) -> Region:
    piece = named.piece
    placed = Placed(
        mark=piece.mark,
        piece=named.number,
        x=mm(rect.x0),
        y=mm(rect.y0),
        length=piece.length,
        width=piece.width,
        turned=named.turned,
    )
    return _region(rect, use="piece", placed=placed)


def _cut(rect: Rect, line: Line, low: Region | None, high: Region | None) -> Region:
    return replace(
        _region(rect),
        cut=line.way,
        at=mm(line.at),
        kerf=mm(line.kerf),
        is_trim=line.is_trim,
        low=low,
        high=high,
    )
