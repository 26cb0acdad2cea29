"""A page or half a page for each mark: what it is, and its drawing to cut it by."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import partial

from model.cutting.record import Box
from model.drawings.moved import moved
from model.drawings.paper import Item, Stroke
from model.drawings.part_sheet.facts import facts
from model.drawings.part_sheet.sheet import part_sheet
from model.drawings.scales import scale_words
from model.parts.marks import Mark
from model.planset.elevations import told_by
from model.planset.flow import Column, Line, line_of
from model.planset.letters import BODY, HEADING, wrapped
from model.planset.page import Link
from model.planset.setting import Setting
from model.planset.sheet import Content, Sheet
from model.units import Mm

CHAPTER = "part"
SIMPLE = 6  # cuts and holes of a part that half a page is enough for
LABEL: Mm = 26.0
HALVES_APART: Mm = 8.0


def sheets(setting: Setting) -> tuple[Sheet, ...]:
    """The parts in the order of their marks, two simple ones that follow each other on one page."""
    made: list[Sheet] = []
    for at, some in enumerate(_paged(setting.bed.marks)):
        title = " and ".join(f"{mark.mark} {mark.name}" for mark in some)
        first = f"part/{some[0].mark}"
        draw, chapter = partial(_draw, setting, some), made[0].key if at else ""
        made.append(Sheet(first, title, draw, chapter, chapter_title="Parts, mark by mark"))
    return tuple(made)


def key_of(setting: Setting, mark: str) -> str:
    """The page on which a mark stands."""
    for some in _paged(setting.bed.marks):
        if any(each.mark == mark for each in some):
            return f"part/{some[0].mark}"
    return ""


def _paged(marks: Sequence[Mark]) -> Iterator[tuple[Mark, ...]]:
    waiting: Mark | None = None
    for mark in marks:
        if len(mark.features) > SIMPLE or mark.part.taper:
            if waiting is not None:
                yield (waiting,)
                waiting = None
            yield (mark,)
        elif waiting is not None:
            yield (waiting, mark)
            waiting = None
        else:
            waiting = mark
    if waiting is not None:
        yield (waiting,)


def _draw(setting: Setting, marks: Sequence[Mark], room: Box) -> Content:
    high = (room.y1 - room.y0 - HALVES_APART * (len(marks) - 1)) / len(marks)
    items: list[Item] = []
    scales = []
    for at, mark in enumerate(marks):
        top = room.y1 - at * (high + HALVES_APART)
        drawn, scale = _one(setting, mark, Box(room.x0, top - high, room.x1, top), len(marks) > 1)
        items += drawn
        scales.append(scale)
        if at:
            y = top + HALVES_APART / 2
            items.append(Stroke(((room.x0, y), (room.x1, y)), "fine"))
    told = scales[0] if len(set(scales)) == 1 else ", ".join(scales)
    return Content(
        tuple(items), (Link(Box(room.x1 - 30, room.y1, room.x1, room.y1 + 12), "parts"),), told
    )


def _one(setting: Setting, mark: Mark, room: Box, is_named: bool) -> tuple[list[Item], str]:
    column = Column(tuple(_facts(setting, mark, (room.x1 - room.x0) / 2 - 4.0, is_named)))
    top = room.y1 - column.height - 4.0
    items = list(column.at((room.x0, room.y1))[0])
    wide, high = room.x1 - room.x0, top - room.y0
    sheet = part_sheet(mark, told_by(setting), wide, high, not setting.is_first_angle)
    x = room.x0 + (wide - sheet.drawing.width) / 2
    y = top - sheet.drawing.height
    items += (moved(item, x, y) for item in sheet.drawing.items)
    return items, scale_words(sheet.drawing.scale)


def _facts(setting: Setting, mark: Mark, width: Mm, is_named: bool) -> Iterator[Line]:
    """Two columns of what is to know; the name above where a page has two parts."""
    if is_named:
        yield line_of(f"{mark.mark}  {mark.name}", HEADING, bold=True)
        yield Line(1.5)
    told = facts(setting.bed, mark)
    half = -(-len(told) // 2)
    left, right = (list(_told(some, width)) for some in (told[:half], told[half:]))
    for at in range(max(len(left), len(right))):
        items: list[Item] = []
        for x, lines in ((0.0, left), (width + 8.0, right)):
            if at < len(lines):
                items += (moved(item, x, 0.0) for item in lines[at].items)
        yield Line(line_of("").height, tuple(items))


def _told(told: Sequence[tuple[str, str]], width: Mm) -> Iterator[Line]:
    for label, words in told:
        for at, line in enumerate(wrapped(words, width - LABEL, BODY)):
            made = line_of(line, BODY, LABEL)
            name = line_of(label, BODY, bold=True).items if not at else ()
            yield made._replace(items=(*name, *made.items))
