"""One section of a part: cut wood hatched, what is told across it, and the names of what it meets.

A wide part is broken off where nothing is cut, so that a groove of 6 mm is seen at a large scale.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from functools import cached_property
from itertools import pairwise

from model.cutting.record import Box
from model.drawings.dimensioning.rows import rows
from model.drawings.dimensioning.runs import Run, chain, span
from model.drawings.dimensioning.told import Told
from model.drawings.moved import around, together
from model.drawings.paper import Hatch, Item, Ring, Stroke, Text, corners
from model.drawings.part_sheet.block import LABEL, Block, datum
from model.drawings.part_sheet.broken import GAP, Broken, broken, kinked
from model.drawings.part_sheet.edges import Line, Section
from model.drawings.part_sheet.sections import Cut
from model.drawings.scales import scale_words
from model.part import Part
from model.units import Mm, Share

HATCHED: Mm = 2.2  # from line to line
THICK: Mm = 6.0  # on paper, of a section that is drawn whole rather than larger and broken
FINEST: Mm = 2.5  # on paper, of what is measured in it
FIRST: Mm = 7.0  # from the outline to the first row of dimensions


@dataclass(frozen=True, kw_only=True)
class SectionView:
    """What one section shows; `has_thickness` and `has_width` are whole sizes told here."""

    part: Part
    cut: Cut
    letter: str
    scale: Share
    told: Told
    has_thickness: bool
    has_width: bool

    def at_scale(self, scale: Share) -> SectionView:
        """The same at another scale."""
        return replace(self, scale=scale)

    @property
    def size(self) -> tuple[Mm, Mm]:
        """On paper."""
        return (self.part.size[2] * self.scale, self.heights.whole)

    @cached_property
    def heights(self) -> Broken:
        return broken(self.part.size[1], self._places(), self.scale)

    @property
    def is_readable(self) -> bool:
        """Whether it is whole, and thick enough for its hatching and its dimensions."""
        rows = (row for need in self.cut.needs for row in (*need.up, *need.deep))
        spans = [b - a for row in rows for a, b in pairwise(row)]
        finest = min(spans, default=self.part.size[2]) * self.scale
        is_thick = self.part.size[2] * self.scale >= THICK
        return not self.heights.breaks and is_thick and finest >= FINEST

    def _places(self) -> Iterator[Mm]:
        for need in self.cut.needs:
            yield from (y for row in need.up for y in row)
            for group in need.groups:
                for spot in group.spots:
                    yield from (spot.low[1], spot.high[1])

    def block(self, cut: Section, plain: Section) -> Block:
        """The section with its lower left corner at (0, 0); `plain` is the same without holes."""
        view = Box(0.0, 0.0, *self.size)
        below = rows(view, "below", self._level(), FIRST)
        left = rows(view, "left", self._upright(), FIRST, below.words)
        title = Text(
            (left.box.x0, max(view.y1, left.box.y1) + 4.5), self._title(), LABEL, "left", bold=True
        )
        items = (
            *self._ink(cut, plain), *self._datums(view), *below.items, *left.items, title
        )  # fmt: skip
        beside = (title, *self._datums(view), *self._breaks(view.x1))
        around_words = around(beside) or view
        return Block.of(items, together([view, below.box, left.box, around_words]))

    def _title(self) -> str:
        at = scale_words(self.scale)
        return f"{self.letter}  {at}  {self.cut.title}" if self.letter else f"Across  {at}"

    # ------------------------------------------------------------ what is measured

    def _level(self) -> Iterator[Run]:
        s, thick = self.scale, self.part.size[2]
        for row in _not_in_chains(row for need in self.cut.needs for row in need.deep):
            yield _chained([(x * s, 0.0) for x in row], row, self.told)
        if self.has_thickness:
            yield span((0.0, 0.0), (thick * s, 0.0), thick, self.told, 1)

    def _upright(self) -> Iterator[Run]:
        at, width = self.heights.at, self.part.size[1]
        for row in _not_in_chains(row for need in self.cut.needs for row in need.up):
            yield _chained([(0.0, at(y)) for y in row], row, self.told)
        if self.has_width:
            yield span((0.0, 0.0), (0.0, at(width)), width, self.told, 1)

    # ------------------------------------------------------------ ink

    def _ink(self, cut: Section, plain: Section) -> Iterator[Item]:
        s = self.scale
        for box in cut.wood:
            for low, high in self.heights.pieces(box.y0, box.y1):
                yield Hatch(corners(Box(box.x0 * s, low, box.x1 * s, high)), HATCHED)
        for line in plain.beyond:
            yield from self._line(line, "narrow")
        for line in cut.outline:
            yield from self._line(line, "wide")
        yield from self._glue_lines()
        yield from self._end_holes()
        yield from self._breaks(self.part.size[2] * s)

    def _line(self, line: Line, pen: str) -> Iterator[Stroke]:
        x0, y0, x1, y1 = line
        s = self.scale
        if y0 == y1:
            if self.heights.holds(y0):
                at = self.heights.at(y0)
                yield Stroke(((x0 * s, at), (x1 * s, at)), pen)  # type: ignore[arg-type]
            return
        for low, high in self.heights.pieces(y0, y1):
            yield Stroke(((x0 * s, low), (x0 * s, high)), pen)  # type: ignore[arg-type]

    def _glue_lines(self) -> Iterator[Stroke]:
        """Between the layers of a laminated part."""
        part = self.part
        if part.layers < 2 or not part.layer_thickness:
            return
        for k in range(1, part.layers):
            at = k * part.layer_thickness
            if abs(part.layers * part.layer_thickness - part.size[2]) < 0.1:
                yield from self._line((at, 0.0, at, part.size[1]), "narrow")
            else:
                yield from self._line((0.0, at, part.size[2], at), "narrow")

    def _end_holes(self) -> Iterator[Item]:
        for hole in self.part.holes:
            if abs(hole.toward[0]) < 1 - 1e-9:
                continue
            ends = sorted((hole.at[0], hole.at[0] + hole.depth * hole.toward[0]))
            if not ends[0] <= self.cut.at <= ends[1] or not self.heights.holds(hole.at[1]):
                continue
            at = (hole.at[2] * self.scale, self.heights.at(hole.at[1]))
            radius = max(hole.diameter / 2 * self.scale, 0.5)
            yield Ring(at, radius, "wide", blank=True)
            for dx, dy in ((radius + 1, 0.0), (0.0, radius + 1)):
                yield Stroke(((at[0] - dx, at[1] - dy), (at[0] + dx, at[1] + dy)), "fine")

    def _breaks(self, thick: Mm) -> Iterator[Item]:
        """Two thin lines with a kink across the part, where a stretch is left out."""
        for top in self.heights.breaks:
            for y in (top - GAP, top):
                yield Stroke(tuple((x, y + aside) for x, aside in kinked(thick)))

    def _datums(self, view: Box) -> Iterator[Item]:
        if not self.cut.needs:
            return
        yield datum((view.x1 / 2, 0.0), (0.0, -1.0))
        yield datum((view.x1, view.y1 / 2), (1.0, 0.0))


def _chained(points: list[tuple[Mm, Mm]], row: tuple[Mm, ...], told: Told) -> Run:
    sizes = [b - a for a, b in zip(row, row[1:], strict=False)]
    return chain(points, sizes, told)


def _not_in_chains(marks: Iterable[tuple[Mm, ...]]) -> Iterator[tuple[Mm, ...]]:
    """The rows without single spans that are a link of another row's chain."""
    rows_of_marks = list(marks)
    links = {
        (round(a, 3), round(b, 3))
        for row in rows_of_marks if len(row) > 2 for a, b in pairwise(row)
    }  # fmt: skip
    for row in rows_of_marks:
        if len(row) > 2 or (round(row[0], 3), round(row[1], 3)) not in links:
            yield row
