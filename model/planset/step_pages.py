"""The build steps: a picture of what comes together, what it takes, and what is done."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from functools import partial
from string import ascii_lowercase
from typing import NamedTuple

from model.building.joined import Joined
from model.building.record import Step
from model.building.words import Words
from model.cutting.record import Box
from model.drawings.paper import Item
from model.parts.pieces import Floats
from model.planset.exploded import box_of, gaze_for, offsets, picture, scale_of
from model.planset.flow import GAP, Column, Line, columns, heading, paragraph, points
from model.planset.letters import SMALL, TITLE
from model.planset.setting import Setting
from model.planset.sheet import Sheet, column_sheets, room_on
from model.units import Mm, Share

KEY = "steps"
LEAST: Mm = 45.0  # height of a picture at least
SMALL_PICTURE: Mm = 60.0  # at most, where more steps have room on a page for it
LARGE_PICTURE: Mm = 130.0  # at most, where the page has room
BALLOONS: Mm = 12.0  # on each side of it
BESIDE: Mm = 58.0  # width of what stands beside it
AIR: Mm = 5.0


class _Picture(NamedTuple):
    """What is drawn of a step, between a least and a most height; `beside` stands at its right."""

    step: Step
    shift: Floats
    beside: Column
    least: Mm
    most: Mm

    def of_height(self, setting: Setting, width: Mm, share: Share) -> Line:
        """The line of picture and list, so far from the least to the most height."""
        high = self.least + share * (self.most - self.least)
        items, _ = self.beside.at((width - BESIDE, 0.0))
        room = Box(0.0, GAP - high, width - BESIDE - AIR, 0.0)
        drawn = partial(_picture, setting, self.step, room, self.shift)
        return Line(high, items, keeps=True, drawn=drawn)


class _Told(NamedTuple):
    """One step: its lines above and below its picture."""

    before: tuple[Line, ...]
    picture: _Picture | None
    after: tuple[Line, ...]

    @property
    def least(self) -> Mm:
        """How high it is with its picture as small as may be, without the gap at its end."""
        lines = (*self.before, *self.after[:-1])
        return sum(line.height for line in lines) + (self.picture.least if self.picture else 0.0)


def sheets(setting: Setting) -> tuple[Sheet, ...]:
    """As many whole steps on each page as have room, their pictures as large as that leaves them:
    a step is parted only where it is higher than a page.
    """
    room = room_on(setting.paper)
    width, high = room.x1 - room.x0, room.y1 - room.y0
    laid = [
        column
        for some in _paged(_steps(setting, width), high)
        for column in columns(_with_pictures(setting, some, width, high), high)
    ]
    return column_sheets(KEY, "Build steps", laid)


def _paged(steps: Iterable[_Told], high: Mm) -> Iterator[list[_Told]]:
    """The steps of each page."""
    page: list[_Told] = []
    taken = 0.0
    for step in steps:
        if page and taken + step.least > high:
            yield page
            page, taken = [], 0.0
        page.append(step)
        taken += step.least + step.after[-1].height
    if page:
        yield page


def _with_pictures(
    setting: Setting, steps: Sequence[_Told], width: Mm, high: Mm
) -> tuple[Line, ...]:
    """Their lines, the pictures sharing what is left of the page."""
    spare = high - sum(step.least + step.after[-1].height for step in steps)
    wanted = sum(step.picture.most - step.picture.least for step in steps if step.picture)
    share = min(max(spare / wanted, 0.0), 1.0) if wanted else 0.0
    lines: list[Line] = []
    for step in steps:
        lines += step.before
        if step.picture:
            lines.append(step.picture.of_height(setting, width, share))
        lines += step.after
    return tuple(lines)


def _steps(setting: Setting, width: Mm) -> Iterator[_Told]:
    words = Words(Joined(setting.bed))
    chapter = ""
    for number, step in enumerate(setting.steps, 1):
        above: list[Line] = []
        if step.chapter != chapter:
            chapter = step.chapter
            above += heading(chapter, width, TITLE * 0.8)
        above += heading(f"{number}  {step.title}", width)
        drawn = _shown(setting, step, words, width) if step.shown else None
        yield _Told(tuple(above), drawn, tuple(_step(step, width)))


def _step(step: Step, width: Mm) -> Iterator[Line]:
    yield from points(step.sentences, width, sign="1")
    for title, sentences in (
        ("Settings", step.settings), ("Check", step.checks), ("Keep dry", step.keep_dry),
        ("Take care", step.cautions),
    ):  # fmt: skip
        if sentences:
            yield from paragraph(title, width, SMALL, bold=True, keeps=True)
            yield from points(sentences, width)
    if not step.shown:
        yield from _list("Tools", step.tools, width)
    yield Line(2 * GAP)


def _shown(setting: Setting, step: Step, words: Words, width: Mm) -> _Picture:
    """The picture, and beside it what the step takes."""
    beside = Column(tuple(_takes(step, words, BESIDE)))
    shift = _shift(setting, step)
    pieces = (*step.shown, *step.there)
    box = box_of(setting.bed, pieces, gaze_for(setting.bed, sorted(step.shown)), shift)
    least, most = (
        max(_high(box, width - BESIDE - AIR, at_most), beside.height) + GAP
        for at_most in (SMALL_PICTURE, LARGE_PICTURE)
    )
    return _Picture(step, shift, beside, least, most)


def _shift(setting: Setting, step: Step) -> Floats:
    ways = {come.piece: (come.along, come.turn) for come in step.comes}
    return offsets(setting.bed, (*step.shown, *step.there), ways)


def _high(box: Box, wide: Mm, at_most: Mm) -> Mm:
    """How high a picture of that box is at the scale at which it is as wide as it may be."""
    scale = scale_of(box, Box(0.0, 0.0, wide - 2 * BALLOONS, at_most - 2 * BALLOONS))
    return max(LEAST, (box.y1 - box.y0) * scale + 2 * BALLOONS)


def _picture(setting: Setting, step: Step, room: Box, shift: Floats) -> Iterator[Item]:
    pieces = (*step.shown, *step.there)
    return picture(setting.bed, pieces, step.shown, room, shift, letters=_letters(step))


def _letters(step: Step) -> dict[str, str]:
    """What stands in the balloons of bought things, by their codes: a, b, c, unlike any mark."""
    return {each.code: letter for each, letter in zip(step.hardware, ascii_lowercase, strict=False)}


def _takes(step: Step, words: Words, width: Mm) -> Iterator[Line]:
    if step.times > 1:
        yield from paragraph(f"Make {step.times}", width, bold=True)
    marks = [f"{each.quantity} × {each.mark} {each.name}" for each in step.marks]
    letters = _letters(step)
    bought = [
        (f"{letters[each.code]}: " if each.code in letters else "")
        + f"{each.quantity} × {each.name}"
        for each in step.hardware
    ]
    screws = []
    for each in step.screws:
        pilot = words.pilot(each)
        screws.append(
            f"{each.number} × {words.screw(each)}" + (f", pilot {pilot}" if pilot else "")
        )
    yield from _list("Parts", [*step.assemblies, *marks], width)
    yield from _list("Bought", bought, width)
    yield from _list("Screws", screws, width)
    yield from _list(
        "Glue and clamps", ["wood glue"] * step.glue + list(words.clamps(step.clamps)), width
    )
    yield from _list("Tools", step.tools, width)


def _list(title: str, words: list[str] | tuple[str, ...], width: Mm) -> Iterator[Line]:
    if words:
        yield from paragraph(title, width, SMALL, bold=True, keeps=True)
        yield from points(words, width, height=SMALL)
