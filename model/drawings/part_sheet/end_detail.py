"""A piece of a part cut along its middle: tongues, rabbets and dadoes that run across it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property
from itertools import pairwise

from model.cutting.record import Box
from model.drawings.dimensioning.rows import rows
from model.drawings.dimensioning.runs import Run, chain, span
from model.drawings.dimensioning.told import Told
from model.drawings.moved import around, together
from model.drawings.paper import Hatch, Item, Pen, Stroke, Text, corners
from model.drawings.part_sheet.block import LABEL, Block
from model.drawings.part_sheet.broken import GAP, Broken, kinked, near
from model.drawings.part_sheet.edges import Cells, Line, lengthwise
from model.drawings.part_sheet.record import HAIR, PartWork
from model.drawings.scales import scale_words
from model.part import Part, Point
from model.units import Mm, Share

HATCHED: Mm = 2.2
FIRST: Mm = 7.0  # from the outline to the first row of dimensions


def walls_across(work: PartWork, size: Point) -> tuple[tuple[Mm, Mm], ...]:
    """The stretches of the length on which something runs from edge to edge; alike ones once."""
    found = [
        (group.spots[0].low[0], group.spots[0].high[0])
        for group in work.groups
        if group.face.axis == 2 and group.shape != "hole"
        and group.is_through(1, size) and not group.is_through(0, size)
    ]  # fmt: skip
    tongues = [stub for stub in work.stubs if stub.kind == "tongue" and stub.face.axis == 0]
    longs = {round(stub.length, 3): stub for stub in reversed(tongues)}
    for stub in longs.values():
        start = size[0] - stub.length if stub.face.is_high else 0.0
        found.append((start, start + stub.length))
    return tuple(sorted(found))


def depths_across(work: PartWork, size: Point) -> tuple[Mm, ...]:
    """How far from the back lie the bottoms of what runs across, and the sides of tongues."""
    depths = [
        side
        for group in work.groups
        if group.face.axis == 2 and group.shape != "hole"
        and group.is_through(1, size) and not group.is_through(0, size)
        for side in (group.spots[0].low[2], group.spots[0].high[2])
    ]  # fmt: skip
    for stub in work.stubs:
        if stub.kind == "tongue" and stub.face.axis == 0:
            depths += stub.thickness
    inside = {round(z, 6) for z in depths if HAIR < z < size[2] - HAIR}
    return tuple(sorted(inside))


@dataclass(frozen=True, kw_only=True)
class EndDetail:
    """What is kept of the length is what lies near the walls; the face is up. Walls are measured
    along the part, `depths` from the back.
    """

    part: Part
    told: Told
    depths: tuple[Mm, ...]
    letter: str
    scale: Share
    walls: tuple[tuple[Mm, Mm], ...]

    @cached_property
    def lengths(self) -> Broken:
        return near(self.part.size[0], self.walls, self.scale)

    @property
    def size(self) -> tuple[Mm, Mm]:
        """On paper."""
        return (self.lengths.whole, self.part.size[2] * self.scale)

    def block(self, cells: Cells) -> Block:
        """The detail with its lower left corner at (0, 0)."""
        view = Box(0.0, 0.0, *self.size)
        below = rows(view, "below", self._level(), FIRST)
        left = rows(view, "left", self._upright(), FIRST, below.words)
        words = f"{self.letter}  {scale_words(self.scale)}  along the middle, the face above"
        top = max(view.y1, left.box.y1) + 4.5
        title = Text((left.box.x0, top), words, LABEL, "left", bold=True)
        beside: tuple[Item, ...] = (*self._breaks(), title)
        items = (*self._ink(cells), *below.items, *left.items, *beside)
        return Block.of(items, together([view, below.box, left.box, around(beside) or view]))

    def _level(self) -> Iterator[Run]:
        at = self.lengths.at
        for low, high in self.walls:
            yield span((at(low), 0.0), (at(high), 0.0), high - low, self.told)

    def _upright(self) -> Iterator[Run]:
        if self.depths:
            row = (0.0, *self.depths, self.part.size[2])
            points = [(0.0, z * self.scale) for z in row]
            yield chain(points, [b - a for a, b in pairwise(row)], self.told)

    def _ink(self, cells: Cells) -> Iterator[Item]:
        found = lengthwise(cells, self.part.size[1] / 2)
        s = self.scale
        for box in found.wood:
            for low, high in self.lengths.pieces(box.x0, box.x1):
                yield Hatch(corners(Box(low, box.y0 * s, high, box.y1 * s)), HATCHED)
        for line in found.beyond:
            yield from self._line(line, "narrow")
        for line in found.outline:
            yield from self._line(line, "wide")

    def _line(self, line: Line, pen: Pen) -> Iterator[Stroke]:
        x0, y0, x1, y1 = line
        s = self.scale
        if x0 == x1:
            if self.lengths.holds(x0):
                at = self.lengths.at(x0)
                yield Stroke(((at, y0 * s), (at, y1 * s)), pen)
            return
        for low, high in self.lengths.pieces(x0, x1):
            yield Stroke(((low, y0 * s), (high, y0 * s)), pen)

    def _breaks(self) -> Iterator[Stroke]:
        high = self.size[1]
        ends = [each for top in self.lengths.breaks for each in (top - GAP, top)]
        if self.lengths.kept[0][0] > HAIR:
            ends.append(0.0)
        if self.lengths.kept[-1][1] < self.part.size[0] - HAIR:
            ends.append(self.lengths.whole)
        for x in ends:
            yield Stroke(tuple((x + aside, y) for y, aside in kinked(high)))
