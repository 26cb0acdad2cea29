"""A page or a share of one for each mark: what it is, and its drawing to cut it by."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from functools import partial

from model.cutting.record import Box
from model.drawings.moved import moved
from model.drawings.paper import Item, Stroke
from model.drawings.part_sheet.facts import facts
from model.drawings.part_sheet.sheet import PartSheets
from model.drawings.scales import scale_words
from model.parts.marks import Mark
from model.planset.elevations import told_by
from model.planset.flow import Column, Line, labelled, line_of
from model.planset.kept import kept
from model.planset.letters import HEADING
from model.planset.page import Link
from model.planset.setting import Setting
from model.planset.sheet import HEAD, Content, Sheet, room_on
from model.units import Mm, Share

CHAPTER = "part"
SHARES: tuple[Share, ...] = (0.5, 0.4, 0.6, 0.34, 0.66)  # of a page, for the upper one of two
LARGE: Share = 0.5  # no part needs a larger scale than this
LABEL: Mm = 26.0
HALVES_APART: Mm = 8.0
BELOW: Mm = 4.0  # from what is told of a part to its drawing


def sheets(setting: Setting) -> tuple[Sheet, ...]:
    """The parts in the order of their marks, two that have room for it on one page."""
    made: list[Sheet] = []
    for at, some in enumerate(_paged(setting)):
        title = " and ".join(f"{mark.mark} {mark.name}" for mark in some)
        key = key_of(setting, some[0].mark)
        draw, chapter = partial(_draw, setting, some), made[0].key if at else ""
        made.append(Sheet(key, title, draw, chapter, chapter_title="Parts, mark by mark"))
    return tuple(made)


def key_of(setting: Setting, mark: str) -> str:
    """The key of the page on which a mark of the bed stands."""
    return _keys(setting)[mark]


@kept
def _keys(setting: Setting) -> Mapping[str, str]:
    """The page of each mark: that of the first one on it."""
    return {mark.mark: f"{CHAPTER}/{some[0].mark}" for some in _paged(setting) for mark in some}


@kept
def _paged(setting: Setting) -> tuple[tuple[Mark, ...], ...]:
    if setting.before is None:
        return tuple(_pages(setting))
    return tuple(_pages_as_before(setting, _paged(setting.before)))


def _pages_as_before(
    setting: Setting, before: Sequence[Sequence[Mark]]
) -> Iterator[tuple[Mark, ...]]:
    """What shared a page does so again; a new mark has one of its own."""
    now = {mark.mark: mark for mark in setting.bed.marks}
    for some in before:
        left = tuple(now.pop(mark.mark) for mark in some if mark.mark in now)
        if left:
            yield left
    yield from ((mark,) for mark in now.values())


def _pages(setting: Setting) -> Iterator[tuple[Mark, ...]]:
    """What shares a page: two that follow each other, where neither is the smaller for it."""
    waiting: Mark | None = None
    for mark in setting.bed.marks:
        if waiting is None:
            waiting = mark
        elif _share(setting, waiting.mark, mark.mark):
            yield (waiting, mark)
            waiting = None
        else:
            yield (waiting,)
            waiting = mark
    if waiting is not None:
        yield (waiting,)


@kept
def _share(setting: Setting, upper: str, lower: str) -> Share:
    """How much of a page the upper one of two takes, so that both are drawn as well as on a page
    of their own; 0 where they have no room.
    """
    room = room_on(setting.paper)
    marks = [_named(setting, name) for name in (upper, lower)]
    for share in SHARES:
        if all(
            _is_enough(setting, *each, room)
            for each in zip(marks, _rooms(room, share), strict=True)
        ):
            return share
    return 0.0


def _is_enough(setting: Setting, mark: Mark, own: Box, whole: Box) -> bool:
    """Whether a drawing in its own part of a page shows as much as on the whole of it."""
    (shared, fits), (alone, _) = (_scale(setting, mark, room) for room in (own, whole))
    return fits and (shared >= min(alone, LARGE) or not mark.features)


def _scale(setting: Setting, mark: Mark, room: Box) -> tuple[Share, bool]:
    below = _below_facts(setting, mark, room, True)
    return part_sheets(setting, mark.mark, _wide(below)).scale(below.y1 - below.y0)


def _rooms(room: Box, share: Share) -> tuple[Box, Box]:
    """A page's room in two, the upper one with so much of it."""
    high = room.y1 - room.y0 - HALVES_APART
    low = room.y1 - share * high
    return room._replace(y0=low), room._replace(y1=low - HALVES_APART)


def _draw(setting: Setting, marks: Sequence[Mark], room: Box) -> Content:
    items: list[Item] = []
    told: list[str] = []
    names = [mark.mark for mark in marks]
    # On an early page two may stand that have no room any more.
    rooms = _rooms(room, _share(setting, *names) or 0.5) if len(marks) > 1 else (room,)
    for at, (mark, own) in enumerate(zip(marks, rooms, strict=True)):
        drawn, scale = _one(setting, mark, own, len(marks) > 1)
        items += drawn
        told.append(scale)
        if at:
            y = own.y1 + HALVES_APART / 2
            items.append(Stroke(((room.x0, y), (room.x1, y)), "fine"))
    back = Link(Box(room.x0, room.y1 + 4.0, room.x1, room.y1 + HEAD), "parts")
    return Content(tuple(items), (back,), ", ".join(dict.fromkeys(told)))


def _one(setting: Setting, mark: Mark, room: Box, is_named: bool) -> tuple[list[Item], str]:
    column = _column(setting, mark, room, is_named)
    below = _below_facts(setting, mark, room, is_named)
    sheet = part_sheets(setting, mark.mark, _wide(below)).of_height(below.y1 - below.y0)
    x = below.x0 + (below.x1 - below.x0 - sheet.drawing.width) / 2
    y = below.y1 - sheet.drawing.height
    items = list(column.at((room.x0, room.y1))[0])
    items += (moved(item, x, y) for item in sheet.drawing.items)
    return items, scale_words(sheet.drawing.scale)


@kept
def part_sheets(setting: Setting, name: str, wide: Mm) -> PartSheets:
    """The drawings of a mark for rooms of one width."""
    mark = _named(setting, name)
    return PartSheets(mark, told_by(setting), wide, not setting.is_first_angle)


def _wide(room: Box) -> Mm:
    """How wide a room is: the same of all that are as wide."""
    return round(room.x1 - room.x0, 3)


def _named(setting: Setting, name: str) -> Mark:
    (mark,) = (each for each in setting.bed.marks if each.mark == name)
    return mark


def _below_facts(setting: Setting, mark: Mark, room: Box, is_named: bool) -> Box:
    column = _column(setting, mark, room, is_named)
    return room._replace(y1=room.y1 - column.height - BELOW)


def _column(setting: Setting, mark: Mark, room: Box, is_named: bool) -> Column:
    return _column_of_width(setting, mark.mark, _wide(room), is_named)


@kept
def _column_of_width(setting: Setting, name: str, wide: Mm, is_named: bool) -> Column:
    return Column(tuple(_facts(setting, _named(setting, name), wide / 2 - 4.0, is_named)))


def _facts(setting: Setting, mark: Mark, width: Mm, is_named: bool) -> Iterator[Line]:
    """Two columns of what is to know; the name above where a page has two parts."""
    if is_named:
        yield line_of(f"{mark.mark}  {mark.name}", HEADING, bold=True)
        yield Line(1.5)
    told = facts(setting.bed, mark)
    half = -(-len(told) // 2)
    left, right = (list(labelled(some, width, LABEL)) for some in (told[:half], told[half:]))
    for at in range(max(len(left), len(right))):
        items: list[Item] = []
        for x, lines in ((0.0, left), (width + 8.0, right)):
            if at < len(lines):
                items += (moved(item, x, 0.0) for item in lines[at].items)
        yield Line(line_of("").height, tuple(items))
