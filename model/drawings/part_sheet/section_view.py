"""One section of a part: cut wood hatched, what is told across it, and the names of what it meets.

A wide part is broken off where nothing is cut, so that a groove of 6 mm is seen at a large scale.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from functools import cached_property
from itertools import pairwise

from model.cutting.record import Box
from model.drawings.dimensioning.rows import rows
from model.drawings.dimensioning.runs import Run, chain, span
from model.drawings.dimensioning.told import Told
from model.drawings.moved import around, together
from model.drawings.paper import Hatch, Item, Ring, Stroke, Text, corners
from model.drawings.part_sheet.block import LABEL, Block, datum
from model.drawings.part_sheet.edges import Cells, Line, section
from model.drawings.part_sheet.sections import Cut
from model.drawings.part_sheet.work import HAIR
from model.part import Part
from model.units import Mm, Share

HATCHED: Mm = 2.2  # from line to line
FIRST: Mm = 7.0  # from the outline to the first row of dimensions
KEPT: Mm = 9.0  # on paper, beside what is cut, where a section is broken off
WHOLE: Mm = 55.0  # on paper: a section no higher than this is drawn whole
GAP: Mm = 2.0  # on paper, between the two sides of a break


@dataclass(frozen=True, kw_only=True)
class Broken:
    """Heights of a part on paper, with plain stretches left out. `kept`: (low, high), rising."""

    kept: tuple[tuple[Mm, Mm], ...]
    scale: Share

    def at(self, y: Mm) -> Mm:
        """Where a height lies on paper; one that is left out lies in the gap."""
        paper = 0.0
        for k, (low, high) in enumerate(self.kept):
            if y <= high or k == len(self.kept) - 1:
                return paper + max(y - low, -GAP / self.scale / 2) * self.scale
            paper += (high - low) * self.scale + GAP
        return paper

    @property
    def height(self) -> Mm:
        return self.at(self.kept[-1][1])

    def pieces(self, low: Mm, high: Mm) -> Iterator[tuple[Mm, Mm]]:
        """What is kept of a stretch, on paper."""
        for a, b in self.kept:
            if min(b, high) - max(a, low) > HAIR:
                yield self.at(max(a, low)), self._top(min(b, high), (a, b))

    def _top(self, y: Mm, kept: tuple[Mm, Mm]) -> Mm:
        return self.at(kept[0]) + (y - kept[0]) * self.scale

    def holds(self, y: Mm) -> bool:
        return any(low - HAIR <= y <= high + HAIR for low, high in self.kept)


def broken(width: Mm, places: Iterable[Mm], scale: Share) -> Broken:
    """Keep both edges and what lies within KEPT of the places on paper."""
    if width * scale <= WHOLE:
        return Broken(kept=((0.0, width),), scale=scale)
    beside = KEPT / scale
    kept: list[tuple[Mm, Mm]] = []
    for place in sorted({0.0, width, *places}):
        low, high = max(place - beside, 0.0), min(place + beside, width)
        if kept and low <= kept[-1][1] + 2 * beside:
            kept[-1] = (kept[-1][0], max(high, kept[-1][1]))
        else:
            kept.append((low, high))
    return Broken(kept=tuple(kept), scale=scale)


@dataclass(frozen=True, kw_only=True)
class SectionView:
    """What one section shows; `has_thickness` and `has_width` are whole sizes told here."""

    part: Part
    cut: Cut
    letter: str
    scale: Share
    scale_words: str
    told: Told
    has_thickness: bool
    has_width: bool
    noted: frozenset[str]  # words that are told in a long view already

    @cached_property
    def heights(self) -> Broken:
        return broken(self.part.size[1], self._places(), self.scale)

    def _places(self) -> Iterator[Mm]:
        for need in self.cut.needs:
            yield from (y for row in need.up for y in row)
            for group in need.groups:
                for spot in group.spots:
                    yield from (spot.low[1], spot.high[1])

    def block(self, cells: Cells, plain: Cells) -> Block:
        """The section with its lower left corner at (0, 0). `cells` have the holes cut out."""
        view = Box(0.0, 0.0, self.part.size[2] * self.scale, self.heights.height)
        below = rows(view, "below", self._level(), FIRST)
        left = rows(view, "left", self._upright(), FIRST, below.words)
        notes = self._notes(view, max(view.x1, below.box.x1) + 6.0)
        title = Text((left.box.x0, view.y1 + 4.5), self._title(), LABEL, "left", bold=True)
        items = (
            *self._ink(cells, plain), *self._datums(view), *below.items, *left.items, *notes, title
        )  # fmt: skip
        around_words = around([*notes, title]) or view
        return Block(items=items, box=together([view, below.box, left.box, around_words]))

    def _title(self) -> str:
        return f"{self.letter}  {self.scale_words}  {self.cut.title}"

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

    # ------------------------------------------------------------ words

    def _notes(self, view: Box, x: Mm) -> tuple[Item, ...]:
        """What no long view tells, at the right of the section, from the top down."""
        groups = [g for need in self.cut.needs for g in need.groups if g.words not in self.noted]
        targets = []
        for group in groups:
            here = (s for s in group.spots if s.low[0] <= self.cut.at <= s.high[0])
            spot = next(here, group.spots[0])
            targets.append((self.heights.at(spot.middle[1]), spot.middle[2] * self.scale, group))
        items: list[Item] = []
        y = view.y1 + 3.8
        for up, across, group in sorted(targets, key=lambda each: (-each[0], each[1])):
            y = min(y - 3.8, up)
            items.append(Stroke(((across, up), (x - 0.8, y)), "fine"))
            items.append(Ring((across, up), 0.35))
            items.append(Text((x, y), group.words, 1.9, "left"))
        return tuple(items)

    # ------------------------------------------------------------ ink

    def _ink(self, cells: Cells, plain: Cells) -> Iterator[Item]:
        cut, behind = section(cells, self.cut.at), section(plain, self.cut.at)
        s = self.scale
        for box in cut.wood:
            for low, high in self.heights.pieces(box.y0, box.y1):
                yield Hatch(corners(Box(box.x0 * s, low, box.x1 * s, high)), HATCHED)
        for line in behind.beyond:
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
        for low, _ in self.heights.kept[1:]:
            top = self.heights.at(low)
            for y in (top - GAP, top):
                yield Stroke(_kinked(thick, y), "narrow")

    def _datums(self, view: Box) -> Iterator[Item]:
        yield datum((view.x1 / 2, 0.0), (0.0, -1.0))
        yield datum((view.x1, view.y1 / 2), (1.0, 0.0))


def _kinked(wide: Mm, y: Mm) -> tuple[tuple[Mm, Mm], ...]:
    m, k = wide / 2, min(0.9, wide / 6)
    return ((-1.5, y), (m - k, y), (m - k / 3, y + 0.9), (m + k / 3, y - 0.9), (m + k, y),
            (wide + 1.5, y))  # fmt: skip


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
