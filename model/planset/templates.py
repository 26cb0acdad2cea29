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
from itertools import count, pairwise, product
from string import ascii_uppercase
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
from model.shop.order.say import listed
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
BESIDE: Mm = 2.0  # from a hole to where two sheets meet
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
    tight: tuple[Mm, Mm]  # as little of the part as shows what is marked
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
            for (low, high), tight in _together(_spans(mark, face), mark.part.size[0], step):
                made.append(
                    Template(mark=mark, face=face, low=low, high=high, also=other, tight=tight)
                )
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


def _together(
    spans: Sequence[tuple[Mm, Mm]], length: Mm, step: Mm
) -> Iterator[tuple[tuple[Mm, Mm], tuple[Mm, Mm]]]:
    """Spans that lie near each other in one, with paper around them: to an end that is near, else
    from and to a `step` from the near end, which a tape shows. The second of each goes to an end
    only where no step lies before it.
    """
    found: list[list[Mm]] = []
    for low, high in spans:
        if found and low - found[-1][1] <= APART:
            found[-1][1] = max(found[-1][1], high)
        else:
            found.append([low, high])
    for low, high in found:
        tight = (
            max(0.0, math.floor((low - AROUND) / step) * step),
            min(length, math.ceil((high + AROUND) / step) * step),
        )
        is_near, is_far = low <= TO_AN_END, high >= length - TO_AN_END
        yield (0.0 if is_near else tight[0], length if is_far else tight[1]), tight


# ---------------------------------------------------------------- on sheets


class Piece(NamedTuple):
    """What is drawn of a template at one place of a page. Its code stands on no other sheet of the
    set: a letter for the template, and a number where it takes several; `beside` names those that
    it is joined to.
    """

    template: Template
    window: Box
    code: str
    beside: str = ""

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
    named = [f"{each.code} for {each.template.mark.mark}" for each in pieces]
    return f"Template{'s' if len(pieces) > 1 else ''} {listed(named)}"


def _pieces(bed: Bed, room: Box) -> Iterator[Piece]:
    for letter, template in zip(_letters(), templates(bed), strict=False):
        laid = laid_out(template, room)
        yield from coded(letter, laid, windows(laid, room))


def _letters() -> Iterator[str]:
    """A to Z, then AA, AB."""
    for many in count(1):
        yield from ("".join(each) for each in product(ascii_uppercase, repeat=many))


def coded(letter: str, template: Template, grid: Sequence[Sequence[Box]]) -> Iterator[Piece]:
    """The sheets of a template, counted from the lower left."""
    if len(grid) == len(grid[0]) == 1:
        yield Piece(template, grid[0][0], letter)
        return
    wide = len(grid[0])
    codes = [[f"{letter}{k * wide + n + 1}" for n in range(wide)] for k in range(len(grid))]
    for k, row in enumerate(grid):
        for n, window in enumerate(row):
            joined = [
                f"{codes[at][to]} {where}"
                for at, to, where in (
                    (k, n - 1, "at its left"), (k, n + 1, "at its right"),
                    (k - 1, n, "below"), (k + 1, n, "above"),
                )
                if 0 <= at < len(grid) and 0 <= to < wide
            ]  # fmt: skip
            yield Piece(template, window, codes[k][n], listed(joined))


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


def laid_out(template: Template, room: Box) -> Template:
    """As it takes the fewest sheets: level or upright, from end to end or only what is marked. An
    end is the best place to lay a template against, so it is left out last.
    """
    low, high = template.low, template.high
    ways = [
        replace(template, low=start, high=end, is_upright=is_upright)
        for start, end in ((low, high), (low, template.tight[1]), (template.tight[0], high),
                           template.tight)
        for is_upright in (False, True)
    ]  # fmt: skip
    return min(ways, key=lambda way: sum(map(len, windows(way, room))))


def windows(template: Template, room: Box) -> list[list[Box]]:
    """The parts of a template that have room on a sheet each, in rows from the lower left. A seam
    runs through no hole: what is marked across two sheets is only as true as they are joined.
    """
    wide, high = room.x1 - room.x0 - 2 * EDGE, room.y1 - room.y0 - HEAD - FOOT - 2 * EDGE
    box = template.box
    holes = [
        (*template.flat(hole.at), hole.diameter / 2 + BESIDE)
        for hole in template.mark.part.holes
        if hole.face == template.face
    ]
    across = _seams(box.x0, box.x1, wide, [(x - half, x + half) for x, _, half in holes])
    up = _seams(box.y0, box.y1, high, [(y - half, y + half) for _, y, half in holes])
    return [[Box(x0, y0, x1, y1) for x0, x1 in pairwise(across)] for y0, y1 in pairwise(up)]


def _seams(low: Mm, high: Mm, most: Mm, holes: Sequence[tuple[Mm, Mm]]) -> list[Mm]:
    """Where sheets of at most this size end; a full sheet where holes leave no other place."""
    found = [low]
    while high - found[-1] > most + HAIR:
        seam = found[-1] + most
        for start, end in sorted(holes, reverse=True):
            if start < seam < end:
                seam = start
        found.append(seam if seam > found[-1] + most / 2 else found[-1] + most)
    return [*found, high]


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
    yield from _words(setting, piece, room)


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


def _words(setting: Setting, piece: Piece, room: Box) -> Iterator[Item]:
    template, code = piece.template, piece.code
    mark = template.mark
    told = [
        f"{code}: {mark.mark} {mark.name}, seen from the {template.face}, full size."
        + (f" Join it at the crosses to {piece.beside}." if piece.beside else ""),
        _range(setting, piece),
    ]
    if template.also:
        told.append(f"{template.also} is the mirror image: turn the sheet over for it.")
    lines = [line for words in told for line in wrapped(words, room.x1 - room.x0, SMALL)]
    for at, words in enumerate(lines):
        yield Text((room.x0, room.y1 - SMALL - at * leading(SMALL)), words, SMALL, "left")


def _range(setting: Setting, piece: Piece) -> str:
    """Which length of the part this sheet shows, from cross to cross."""
    template, window = piece.template, piece.window
    is_upright, length = template.is_upright, template.mark.part.size[0]
    low, high = (window.y0, window.y1) if is_upright else (window.x0, window.x1)
    first, last = ("Lower", "upper") if is_upright else ("Left", "right")
    end = ", its far end." if high >= length - HAIR else " from the near end."
    return (
        f"{first} crosses: {setting.size(low)} from the near end of the part; "
        f"{last} crosses: {setting.size(high)}{end}"
    )


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
