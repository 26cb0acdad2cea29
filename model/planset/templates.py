"""Full-size templates: places on parts where holes and pockets must sit right, to be stuck on.

Each is drawn 1 : 1 from an end and an edge of its part, on as many sheets as it takes; crosses in
the corners of the sheets lie on each other when they are joined, and a bar of a known length shows
whether the printer kept the scale.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from functools import partial
from typing import NamedTuple

from model.bed import Bed
from model.cutting.record import Box
from model.drawings.clip import clipped
from model.drawings.letters import words_width
from model.drawings.moved import moved
from model.drawings.paper import Item, Stroke, Text
from model.drawings.part_sheet.faces import LOOKS, Look
from model.drawings.views.gaze import Gaze
from model.drawings.views.on_paper import on_paper
from model.drawings.views.scene import part_scene
from model.drawings.views.view import seen
from model.part import Cut, Face, Hole, Point
from model.parts.marks import Mark
from model.planset.letters import SMALL, leading, wrapped
from model.planset.setting import Setting
from model.planset.sheet import Content, Sheet, room_on
from model.units import INCH, Mm

KEY = "templates"
KINDS = ("plate recess", "hook pocket", "bolt hole", "counterbore", "nut hole", "pull hole")
AROUND: Mm = 8.0  # paper around what is marked
EDGE: Mm = 5.0  # for the crosses, around a sheet's part of it
TO_AN_END: Mm = 90.0  # how far from an end a template still begins there
APART: Mm = 140.0  # marks of one template are no farther from each other
HEAD: Mm = 14.0  # for its words, above it
FOOT: Mm = 12.0  # for the bar
BETWEEN: Mm = 6.0  # from one template to the words of the next
NAMED: Mm = 2.2  # from a side to what it is called
ARM: Mm = 6.0  # of a cross on a centre
HAIR = 1e-9


@dataclass(frozen=True, kw_only=True)
class Template:
    """A piece of one face of a mark, in that face's own mm: from `low` to `high` along the part,
    over its whole height. `is_upright`: the near end lies at the foot of the paper.
    """

    mark: Mark
    face: Face
    low: Mm
    high: Mm
    also: str  # the mirror image, for which it is turned over
    is_upright: bool = False

    @property
    def look(self) -> Look:
        return LOOKS[self.face]

    @property
    def height(self) -> Mm:
        return self.look.height(self.mark.part.size)

    @property
    def box(self) -> Box:
        """What it takes of paper, in the mm of its own view."""
        if self.is_upright:
            return Box(0.0, self.low, self.height, self.high)
        return Box(self.low, 0.0, self.high, self.height)

    def flat(self, point: Point) -> tuple[Mm, Mm]:
        """A point of the part in its view."""
        u, v = self.look.flat(point, self.mark.part.size)
        return (self.height - v, u) if self.is_upright else (u, v)

    @property
    def gaze(self) -> Gaze:
        """Length to the right as the part sheets lay it, or turned to stand up."""
        up = [0.0, 0.0, 0.0]
        up[self.look.up] = float(self.look.up_sign)
        if self.is_upright:
            return Gaze(right=(-up[0], -up[1], -up[2]), up=(1.0, 0.0, 0.0))
        return Gaze(right=(1.0, 0.0, 0.0), up=(up[0], up[1], up[2]))


def templates(bed: Bed) -> tuple[Template, ...]:
    """Every template that the bed has; a mirror image is cut from the same one, turned over."""
    made: list[Template] = []
    done: set[str] = set()
    step = INCH / 4 if bed.design.value("shown_unit") == "inch" else 5.0
    for mark in bed.marks:
        other = mark.handed.split()[-1] if mark.handed else ""
        if other in done:
            continue
        done.add(mark.mark)
        for face in LOOKS:
            for low, high in _together(_spans(mark, face), mark.part.size[0], step):
                made.append(Template(mark=mark, face=face, low=low, high=high, also=other))
    return tuple(made)


def _spans(mark: Mark, face: Face) -> list[tuple[Mm, Mm]]:
    """Where along the part something is marked on a face."""
    spans = [_span(cut) for cut in mark.part.cuts if cut.face == face and cut.kind in KINDS]
    spans += [
        _span(hole) for hole in mark.part.holes if hole.face == face and _is_marked(mark, hole)
    ]
    return sorted(spans)


def _is_marked(mark: Mark, hole: Hole) -> bool:
    """Holes for pulls are drilled through front and box at once, from the front."""
    return hole.kind in KINDS and (hole.kind != "pull hole" or mark.assembly == "fronts")


def _span(each: Cut | Hole) -> tuple[Mm, Mm]:
    if isinstance(each, Cut):
        return each.low[0], each.high[0]
    return each.at[0] - each.diameter / 2, each.at[0] + each.diameter / 2


def _together(spans: Sequence[tuple[Mm, Mm]], length: Mm, step: Mm) -> list[tuple[Mm, Mm]]:
    """Spans that lie near each other in one, with paper around them: to an end that is near, else
    from and to a `step` from the near end, which a tape shows.
    """
    found: list[list[Mm]] = []
    for low, high in spans:
        if found and low - found[-1][1] <= APART:
            found[-1][1] = max(found[-1][1], high)
        else:
            found.append([low, high])
    return [
        (
            0.0 if low <= TO_AN_END else math.floor((low - AROUND) / step) * step,
            length if high >= length - TO_AN_END else math.ceil((high + AROUND) / step) * step,
        )
        for low, high in found
    ]


# ---------------------------------------------------------------- on sheets


class Piece(NamedTuple):
    """What is drawn of a template at one place of a page: all of it, or the part of this name."""

    template: Template
    window: Box
    name: str

    @property
    def height(self) -> Mm:
        """On paper, with its words above it."""
        return HEAD + self.window.y1 - self.window.y0 + 2 * EDGE + BETWEEN


def sheets(setting: Setting) -> tuple[Sheet, ...]:
    """As many templates below each other on each page as have room."""
    room = room_on(setting.paper)
    pages = list(_paged(list(_pieces(setting.bed, room)), room))
    return tuple(
        Sheet(
            KEY if not at else f"{KEY}/{at + 1}", _title(some), partial(_draw, setting, some),
            KEY if at else "", chapter_title="Templates, full size",
        )
        for at, some in enumerate(pages)
    )  # fmt: skip


def _title(pieces: Sequence[Piece]) -> str:
    marks = dict.fromkeys(each.template.mark.mark for each in pieces)
    return f"Template{'s' if len(pieces) > 1 else ''}: {', '.join(marks)}"


def _pieces(bed: Bed, room: Box) -> Iterator[Piece]:
    for template in templates(bed):
        turned = _turned_to_fit(template, room)
        yield from (Piece(turned, window, name) for window, name in _windows(turned, room))


def _paged(pieces: Sequence[Piece], room: Box) -> Iterator[tuple[Piece, ...]]:
    taken: list[Piece] = []
    high = room.y1 - room.y0 - FOOT
    for piece in pieces:
        if taken and sum(each.height for each in taken) + piece.height > high + BETWEEN:
            yield tuple(taken)
            taken = []
        taken.append(piece)
    if taken:
        yield tuple(taken)


def _turned_to_fit(template: Template, room: Box) -> Template:
    """Upright where that takes fewer sheets."""
    upright = replace(template, is_upright=True)
    level, standing = (len(list(_windows(each, room))) for each in (template, upright))
    return upright if standing < level else template


def _windows(template: Template, room: Box) -> Iterator[tuple[Box, str]]:
    """The parts of a template that have room on a sheet each, and their names: A1, A2, B1."""
    wide, high = room.x1 - room.x0 - 2 * EDGE, room.y1 - room.y0 - HEAD - FOOT - 2 * EDGE
    box = template.box
    columns = max(1, math.ceil((box.x1 - box.x0) / wide - HAIR))
    rows = max(1, math.ceil((box.y1 - box.y0) / high - HAIR))
    for row in range(rows):
        for column in range(columns):
            x, y = box.x0 + column * wide, box.y0 + row * high
            name = f"{chr(ord('A') + row)}{column + 1}" if columns * rows > 1 else ""
            yield Box(x, y, min(x + wide, box.x1), min(y + high, box.y1)), name


def _draw(setting: Setting, pieces: Sequence[Piece], room: Box) -> Content:
    items: list[Item] = list(_bar(room))
    top = room.y1
    for piece in pieces:
        items += _one(setting, piece, room._replace(y1=top))
        top -= piece.height
    return Content(tuple(items), scale="1 : 1")


def _one(setting: Setting, piece: Piece, room: Box) -> Iterator[Item]:
    template, window = piece.template, piece.window
    x = (room.x0 + room.x1 - window.x1 - window.x0) / 2
    y = room.y1 - HEAD - EDGE - window.y1
    view = seen(part_scene(template.mark.part), template.gaze, hidden=False)
    drawn = on_paper(view, 1.0, (-view.box.x0, -view.box.y0))
    yield from (moved(item, x, y) for item in clipped(drawn, window))
    yield from _register(Box(window.x0 + x, window.y0 + y, window.x1 + x, window.y1 + y))
    yield from (moved(line, x, y) for line in clipped(_crosses(template), window))
    yield from (moved(item, x, y) for item in _sides(template, window))
    yield from _words(setting, template, piece.name, room)


def _sides(template: Template, window: Box) -> Iterator[Text]:
    """What lies at the sides of a template: its near end, and the edge that is measured from."""
    low = "lower edge" if template.look.up == 1 else "back"
    near, beside = (
        ((window.x0 + window.x1) / 2, window.y0 - NAMED),
        (
            window.x0 - NAMED if template.look.up_sign < 0 else window.x1 + NAMED,
            (window.y0 + window.y1) / 2,
        ),
    )
    if template.is_upright:
        if template.low < HAIR and window.y0 < HAIR:
            yield Text(near, "near end", SMALL)
        if window.y1 - window.y0 > words_width(low, SMALL):
            yield Text(beside, low, SMALL, turned=True)
        return
    if template.low < HAIR and window.x0 < HAIR:
        yield Text((window.x0 - NAMED, (window.y0 + window.y1) / 2), "near end", SMALL, turned=True)
    y = window.y0 - NAMED if template.look.up_sign > 0 else window.y1 + NAMED
    yield Text(((window.x0 + window.x1) / 2, y), low, SMALL)


def _register(frame: Box) -> Iterator[Stroke]:
    """Crosses in the corners: those of neighbours lie on each other."""
    for x in (frame.x0, frame.x1):
        for y in (frame.y0, frame.y1):
            yield Stroke(((x - EDGE, y), (x + EDGE, y)), "fine")
            yield Stroke(((x, y - EDGE), (x, y + EDGE)), "fine")


def _crosses(template: Template) -> Iterator[Stroke]:
    """The centre of every hole, to be pricked through."""
    for hole in template.mark.part.holes:
        if hole.face == template.face:
            u, v = template.flat(hole.at)
            yield Stroke(((u - ARM, v), (u + ARM, v)), "fine")
            yield Stroke(((u, v - ARM), (u, v + ARM)), "fine")


def _words(setting: Setting, template: Template, name: str, room: Box) -> Iterator[Item]:
    mark, length = template.mark, template.mark.part.size[0]
    first, last = ("Lower", "Upper") if template.is_upright else ("Left", "Right")
    told = [
        f"{mark.mark} {mark.name}, seen from the {template.face}, full size."
        + (f" Sheet {name}: join the sheets at the crosses." if name else ""),
        f"{first} end of the template: {setting.size(template.low)} from the near end of the part; "
        f"{last.lower()} end: {setting.size(template.high)}"
        + (", its far end." if template.high >= length - HAIR else " from the near end."),
    ]
    if template.also:
        told.append(f"{template.also} is the mirror image: turn the sheet over for it.")
    lines = [line for words in told for line in wrapped(words, room.x1 - room.x0, SMALL)]
    for at, words in enumerate(lines):
        yield Text((room.x0, room.y1 - SMALL - at * leading(SMALL)), words, SMALL, "left")


def _bar(room: Box) -> Iterator[Item]:
    """A bar to measure: 100 mm and 4 in."""
    y = room.y0 + 3.0
    for at, (size, words) in enumerate(((100.0, "100 mm"), (4 * INCH, '4"'))):
        x = room.x0
        level = y + at * 5.0
        yield Stroke(((x, level), (x + size, level)), "narrow")
        for end in (x, x + size):
            yield Stroke(((end, level - 1.5), (end, level + 1.5)), "narrow")
        yield Text((x + size + 2.0, level), words, SMALL, "left")
    for at, words in enumerate(("Measure before use: print at 100 %,", "not fitted to the page.")):
        yield Text((room.x1, y + 4.0 - at * leading(SMALL)), words, SMALL, "right")
