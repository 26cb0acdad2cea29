"""The build steps: a picture of what comes together, what it takes, and what is done."""

from __future__ import annotations

from collections.abc import Iterator
from functools import partial
from string import ascii_lowercase

from model.building.joined import Joined
from model.building.record import Step
from model.building.words import Words
from model.cutting.record import Box
from model.drawings.paper import Item
from model.parts.pieces import Floats
from model.planset.exploded import box_of, gaze_for, offsets, picture, scale_in
from model.planset.flow import GAP, Column, Line, heading, paragraph, points
from model.planset.letters import SMALL, TITLE
from model.planset.setting import Setting
from model.planset.sheet import Sheet, text_sheets
from model.units import Mm

KEY = "steps"
PICTURE: Mm = 82.0  # its height at most
LEAST: Mm = 45.0  # its height at least
BALLOONS: Mm = 12.0  # on each side of it
BESIDE: Mm = 58.0  # width of what stands beside it
AIR: Mm = 5.0


def sheets(setting: Setting) -> tuple[Sheet, ...]:
    """As many steps on each page as have room."""
    return text_sheets(KEY, "Build steps", lambda wide: tuple(_lines(setting, wide)), setting.paper)


def _lines(setting: Setting, width: Mm) -> Iterator[Line]:
    words = Words(Joined(setting.bed))
    chapter = ""
    for number, step in enumerate(setting.steps, 1):
        if step.chapter != chapter:
            chapter = step.chapter
            yield from heading(chapter, width, TITLE * 0.8)
        yield from _step(setting, number, step, words, width)


def _step(setting: Setting, number: int, step: Step, words: Words, width: Mm) -> Iterator[Line]:
    yield from heading(f"{number}  {step.title}", width)
    if step.shown:
        yield _shown(setting, step, words, width)
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


def _shown(setting: Setting, step: Step, words: Words, width: Mm) -> Line:
    """The picture, and beside it what the step takes."""
    beside = Column(tuple(_takes(step, words, BESIDE)))
    shift = _shift(setting, step)
    wide = width - BESIDE - AIR
    picture_high = _high(setting, step, wide, shift)
    high = max(picture_high, beside.height) + GAP
    room = Box(0.0, -picture_high, wide, 0.0)
    items, _ = beside.at((width - BESIDE, 0.0))
    return Line(high, items, keeps=True, drawn=partial(_picture, setting, step, room, shift))


def _shift(setting: Setting, step: Step) -> Floats:
    ways = {come.piece: (come.along, come.turn) for come in step.comes}
    return offsets(setting.bed, (*step.shown, *step.there), ways)


def _high(setting: Setting, step: Step, wide: Mm, shift: Floats) -> Mm:
    """How high the picture is at the scale at which it is as wide as it may be."""
    bed, pieces = setting.bed, (*step.shown, *step.there)
    gaze = gaze_for(bed, sorted(step.shown))
    room = Box(0.0, 0.0, wide - 2 * BALLOONS, PICTURE - 2 * BALLOONS)
    box = box_of(bed, pieces, gaze, shift)
    scale = scale_in(room, bed, pieces, gaze, shift)
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
