"""One view along a part with what is measured along it and what is cut in it.

Below it: from the near end to each cut and hole, and the whole length. At its left: heights from
the lower edge, where the part is wide enough on paper to show them. Above it: notes.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from model.cutting.record import Box
from model.drawings.dimensioning.notes import Note, notes_above
from model.drawings.dimensioning.rows import Rows, rows
from model.drawings.dimensioning.runs import (
    Run,
    chain,
    equal_steps,
    overall,
    span,
    steps_words,
)
from model.drawings.dimensioning.told import Told
from model.drawings.letters import words_width
from model.drawings.moved import around, together
from model.drawings.paper import Item, Point, Stroke, Text
from model.drawings.part_sheet.block import LABEL, Block, datum
from model.drawings.part_sheet.edges import Edges, Line
from model.drawings.part_sheet.faces import Look
from model.drawings.part_sheet.holes import hole_ink
from model.drawings.part_sheet.work import HAIR, Group, Stub
from model.part import Face, Part
from model.units import Mm, Share

WIDE_ENOUGH: Mm = 14.0  # on paper: heights can be shown beside the view itself
_CUT_MARK: tuple[Mm, Mm] = (0.8, 2.6)  # from the outline, of the sign where a section is cut
_LETTER: Mm = 1.9


@dataclass(frozen=True, kw_only=True)
class LongView:
    """What one view shows: `groups` lie in its face, `ends` are its tenons, `cuts` the letters of
    sections and where they are cut, `detail` that of the section along it. Only the main view
    (`is_main`) has the whole sizes.
    """

    part: Part
    look: Look
    scale: Share
    told: Told
    groups: tuple[Group, ...]
    ends: tuple[Stub, ...] = ()
    cuts: tuple[tuple[str, Mm], ...] = ()
    detail: str = ""
    is_main: bool = False
    title: str = ""

    @property
    def size(self) -> tuple[Mm, Mm]:
        """On paper."""
        size = self.part.size
        return (size[0] * self.scale, self.look.height(size) * self.scale)

    @property
    def is_wide(self) -> bool:
        is_flat = self.look.up == 1 and not self.part.is_round
        return is_flat and self.is_wide_enough(self.size[1])

    @staticmethod
    def is_wide_enough(high: Mm) -> bool:
        """Whether heights can be shown beside a view so high on paper."""
        return high >= WIDE_ENOUGH

    def block(self, found: Edges, room: Mm) -> Block:
        """The view with its lower left corner at (0, 0), no wider than `room` where that can be."""
        view = Box(0.0, 0.0, *self.size)
        below = rows(view, "below", self._below())
        left = right = Rows((), view)
        if self.is_wide:
            left = rows(view, "left", self._upright_runs(), taken=below.words)
        if self.is_wide and self.is_main:
            right = rows(view, "right", self._width(), taken=below.words)
        beside = [box for box in left.words + right.words if box.y1 > view.y1]
        notes = notes_above(list(self._notes()), view, 0.0, room + left.box.x0, beside)
        label = self._label(max(notes.top, view.y1) + 2.4)
        items = (
            *self._ink(found), *self._datums(), *below.items, *left.items, *right.items,
            *notes.items, *label, *self._cut_marks(),
        )  # fmt: skip
        words = around([*label, *notes.items, *self._cut_marks(), *self._datums()]) or view
        box = together([view, below.box, left.box, right.box, words])
        return Block.of(items, box)

    # ------------------------------------------------------------ what is measured

    def _below(self) -> Iterator[Run]:
        length = self.part.size[0]
        if self.is_main:
            ends = self._end_points()
            if len(ends) > 2:
                whole = chain(
                    [self._paper((x, 0.0)) for x in ends],
                    [b - a for a, b in zip(ends, ends[1:], strict=False)], self.told,
                )  # fmt: skip
                yield whole
                yield overall(whole, self.told)
            else:
                yield span(self._paper((0, 0)), self._paper((length, 0)), length, self.told, 1)
            if self.part.taper:
                yield self._from_datum(self.part.taper_length, 0.0, axis=0)
        for group in self.groups:
            yield from self._places(group, axis=0)

    def _end_points(self) -> list[Mm]:
        length = self.part.size[0]
        near = {end.length for end in self.ends if end.face is Face.NEAR}
        far = {length - end.length for end in self.ends if end.face is Face.FAR}
        return [0.0, *sorted(near | far), length]

    def _upright_runs(self) -> Iterator[Run]:
        for group in self.groups:
            yield from self._places(group, axis=1)

    def _width(self) -> Iterator[Run]:
        length, width, _ = self.part.size
        yield span(self._paper((length, 0)), self._paper((length, width)), width, self.told, 1)

    def _places(self, group: Group, axis: int) -> Iterator[Run]:
        """One or two places are told from the datum, more in a chain that starts at it."""
        places = group.places(axis, self.part.size)
        if group.is_through(axis, self.part.size) or group.face.axis == 0:
            return
        if len(places) < 3:
            for at in places:
                yield self._from_datum(at, self._beside(group, at, axis), axis)
            return
        yield self._series(group, places, axis)

    def _from_datum(self, at: Mm, beside: Mm, axis: int) -> Run:
        start = self._paper((0.0, 0.0) if axis == 0 else (0.0, 0.0))
        end = self._paper((at, beside) if axis == 0 else (beside, at))
        return self._rising(Run((start, end), (at,), (self.told.size(at),)), axis)

    def _series(self, group: Group, places: Sequence[Mm], axis: int) -> Run:
        stops = [0.0, *places]
        steps = [(0, 1), *((a + 1, b + 1) for a, b in self._steps(places))]
        points = [self._paper((0.0, 0.0))]
        sizes = [stops[b] - stops[a] for a, b in steps]
        for _, b in steps:
            beside = self._beside(group, stops[b], axis)
            points.append(self._paper((stops[b], beside) if axis == 0 else (beside, stops[b])))
        words = [
            steps_words(b - a, size, plain, self.told)
            for (a, b), size, plain in zip(
                steps, sizes, self.told.row(sizes, is_closed=False), strict=True
            )
        ]
        return self._rising(Run(tuple(points), tuple(sizes), tuple(words)), axis)

    def _steps(self, places: Sequence[Mm]) -> Iterator[tuple[int, int]]:
        """Equal spans as one; two whose size cannot be told truly are as short to tell singly."""
        for first, last in equal_steps(places):
            size = self.told.size(places[first + 1] - places[first])
            if last - first == 2 and "~" in size:
                yield from ((first, first + 1), (first + 1, last))
            else:
                yield first, last

    def _rising(self, run: Run, axis: int) -> Run:
        """In rising order on paper: a view from behind has its lower edge on top."""
        if run.points[0][axis] <= run.points[-1][axis]:
            return run
        return Run(run.points[::-1], run.sizes[::-1], run.words[::-1], run.level)

    def _beside(self, group: Group, at: Mm, axis: int) -> Mm:
        """Where a leading line to a place starts, on the other axis: at its nearest spot."""
        other = self.look.up if axis == 0 else 0
        own = axis if axis == 0 else self.look.up
        near = [
            spot for spot in group.spots
            if spot.low[own] - HAIR <= at <= spot.high[own] + HAIR
        ]  # fmt: skip
        mids = [spot.middle[other] if group.shape == "hole" else spot.low[other] for spot in near]
        if axis == 0 and self.look.up_sign < 0:
            return max(mids)
        return min(mids)

    # ------------------------------------------------------------ words

    def _notes(self) -> Iterator[Note]:
        for group in self.groups:
            spot = group.spots[0]
            x = spot.low[0] + 0.3 * (spot.high[0] - spot.low[0])
            if group.shape == "hole":
                x = spot.middle[0]
            up = self.look.up
            yield Note(self._paper((x, spot.middle[up])), group.words, str(group.face))

    def _label(self, y: Mm) -> tuple[Item, ...]:
        words = f"{self.title}"
        text = Text((0.0, y + LABEL / 2), words, LABEL, "left", bold=True)
        if not self.is_main:
            return (text,)
        return (text, *_grain_arrow(words_width(words, LABEL, True) + 4, y + LABEL / 2, self.part))

    # ------------------------------------------------------------ ink

    def _ink(self, found: Edges) -> Iterator[Item]:
        for line in found.hidden:
            if self._is_worth_it(line):
                yield self._stroke(line, "hidden")
        for line in found.seen:
            yield self._stroke(line, "wide")
        yield from hole_ink(self.part, self.look, self.scale)
        if self.part.is_round:
            wide, high = self.size
            yield Stroke(((-2.0, high / 2), (wide + 2.0, high / 2)), "centre")

    def _is_worth_it(self, line: Line) -> bool:
        """A dash is 3 mm long: a shorter hidden line would be a mere speck."""
        return (abs(line[2] - line[0]) + abs(line[3] - line[1])) * self.scale > 2.0

    def _stroke(self, line: Line, pen: str) -> Stroke:
        points = [(line[0], line[1]), (line[2], line[3])]
        if self.part.taper:
            points = self._tapered(points)
        s = self.scale
        return Stroke(tuple((x * s, y * s) for x, y in points), pen)  # type: ignore[arg-type]

    def _tapered(self, points: list[Point]) -> list[Point]:
        """Lines bend where a taper begins."""
        (x0, y0), (x1, y1) = points
        bend = self.part.taper_length
        if x0 < bend - HAIR and x1 > bend + HAIR:
            points = [(x0, y0), (bend, y0), (x1, y1)]
        return [self._drawn_in(point) for point in points]

    def _drawn_in(self, point: Point) -> Point:
        x, y = point
        high, bend = self.look.height(self.part.size), self.part.taper_length
        share = max(0.0, 1 - x / bend) * self.part.taper / (high / 2)
        return (x, high / 2 + (y - high / 2) * (1 - share))

    def _datums(self) -> Iterator[Item]:
        if not self.part.cuts and not self.part.holes:
            return
        wide, high = self.size
        yield datum((0.0, high / 2), (-1.0, 0.0))
        if self.is_wide:
            y, out = (0.0, -1.0) if self.look.up_sign > 0 else (high, 1.0)
            yield datum((min(5.0, wide / 4), y), (0.0, out))

    def _cut_marks(self) -> Iterator[Item]:
        """Where sections are cut: a stroke below the outline, and its letter at the freer side."""
        if self.detail:
            wide, middle = self.size[0], self.size[1] / 2
            yield Stroke(((wide + _CUT_MARK[0], middle), (wide + _CUT_MARK[1], middle)), "wide")
            yield Text((wide + _CUT_MARK[1] + 1.4, middle), self.detail, _LETTER, bold=True)
        taken = [at for run in self._below() for at in run.along("below")]
        taken += [x * self.scale for _, x in self.cuts]
        for letter, x in self.cuts:
            at = x * self.scale
            yield Stroke(((at, -_CUT_MARK[0]), (at, -_CUT_MARK[1])), "wide")
            half = words_width(letter, _LETTER, True) / 2
            spot = _clear_spot(at, half + 0.4, taken)
            taken += [spot - half, spot, spot + half]
            yield Text((spot, -_CUT_MARK[1]), letter, _LETTER, bold=True)

    def _paper(self, point: Point) -> Point:
        """A point of the part's face: from the near end, and from its lower edge or back."""
        x, up = point
        high = self.look.height(self.part.size)
        y = up if self.look.up_sign > 0 else high - up
        return (x * self.scale, y * self.scale)


def _clear_spot(at: Mm, half: Mm, taken: Sequence[Mm]) -> Mm:
    """The place nearest to `at` that is clear of lines so far on both sides."""
    steps = [way * 0.2 * k for k in range(60) for way in (1, -1)]
    spots = (at + step for step in steps)
    return next((s for s in spots if all(abs(s - line) >= half for line in taken)), at)


def _grain_arrow(x: Mm, y: Mm, part: Part) -> Iterator[Item]:
    """`grain` between two arrows, along the way that it runs."""
    if part.grain not in ("length", "width"):
        return
    wide = 11.0 if part.grain == "length" else 0.0
    half = 1.6
    if wide:
        ends = ((x, y), (x + wide, y))
        heads = [
            ((x + 1.6, y + 0.6), (x, y), (x + 1.6, y - 0.6)),
            ((x + wide - 1.6, y + 0.6), (x + wide, y), (x + wide - 1.6, y - 0.6)),
        ]
    else:
        ends = ((x, y - half), (x, y + half))
        heads = [
            ((x - 0.6, y - half + 1.2), (x, y - half), (x + 0.6, y - half + 1.2)),
            ((x - 0.6, y + half - 1.2), (x, y + half), (x + 0.6, y + half - 1.2)),
        ]
    yield Stroke(ends)
    for head in heads:
        yield Stroke(head)
    yield Text((x + wide + 1.5, y), "grain", 1.75, "left")
