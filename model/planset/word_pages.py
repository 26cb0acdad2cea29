"""The pages of words: contents, how to use the set, cautions, tools, finish, checks and care."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence

from model.building.care import care_sheet
from model.building.cautions import caution_sheet
from model.building.check_words import rests_on, said
from model.building.finishing import finishing_schedule
from model.building.how_to_use import how_to_use
from model.building.tools import tool_list
from model.checks.record import Verdict
from model.cutting.record import Box
from model.drawings.paper import Item, Stroke, Text
from model.planset.flow import Line, heading, paragraph, points
from model.planset.letters import BODY
from model.planset.page import Link
from model.planset.setting import Setting
from model.planset.sheet import Content, Sheet, text_sheets
from model.planset.table import Head, Row, table
from model.planset.unprinted import unprinted_names
from model.units import Mm

Lines = Callable[[Setting, Mm], Iterator[Line]]
ROW: Mm = 7.0


# ---------------------------------------------------------------- what is in the set


def contents(setting: Setting) -> tuple[Sheet, ...]:
    """The chapters with their pages; each leads to its first."""
    return (
        Sheet("contents", "What is in this set", lambda room: _contents(setting.listed(), room)),
    )


def _contents(sheets: Sequence[Sheet], room: Box) -> Content:
    items: list[Item] = []
    links: list[Link] = []
    y = room.y1
    for number, sheet in enumerate(sheets, 1):
        if sheet.chapter:
            continue
        title = sheet.chapter_title or sheet.title
        items.append(Text((room.x0, y - ROW / 2), title, BODY, "left", bold=True))
        items.append(Text((room.x1, y - ROW / 2), str(number), BODY, "right"))
        items.append(Stroke(((room.x0, y - ROW), (room.x1, y - ROW)), "fine"))
        links.append(Link(Box(room.x0, y - ROW, room.x1, y), sheet.key))
        y -= ROW
    return Content(tuple(items), tuple(links))


# ---------------------------------------------------------------- words


def use(setting: Setting) -> tuple[Sheet, ...]:
    """How to use the set, and the cautions that hold for all of it."""
    return _text("use", "How to use this set", setting, _use)


def tools(setting: Setting) -> tuple[Sheet, ...]:
    """What is needed beside wood and hardware."""
    return _text("tools", "Tools", setting, _tools)


def finishing(setting: Setting) -> tuple[Sheet, ...]:
    """The finishing schedule."""
    return _text("finish", "Finishing schedule", setting, _finishing)


def checks(setting: Setting) -> tuple[Sheet, ...]:
    """What was checked, and what did not hold or only just."""
    return _text("checks", "Checks", setting, _checks)


def care(setting: Setting) -> tuple[Sheet, ...]:
    """The sheet that goes with the bed."""
    return _text("care", "Care of the bed", setting, _care)


def _text(key: str, title: str, setting: Setting, lines: Lines) -> tuple[Sheet, ...]:
    return text_sheets(key, title, lambda wide: tuple(lines(setting, wide)), setting.paper)


def _use(setting: Setting, width: Mm) -> Iterator[Line]:
    for group in caution_sheet(setting.bed):
        yield from heading(f"Cautions: {group.title[:1].lower()}{group.title[1:]}", width)
        for each in group.cautions:
            yield from paragraph(f"{each.title}. {each.text}", width)
    for note in how_to_use(setting.bed):
        yield from heading(note.title, width)
        yield from paragraph(note.text, width)
    missing = unprinted_names(setting.bed.design)
    if missing:
        yield from heading("Letters", width)
        yield from paragraph(missing, width)


def _tools(setting: Setting, width: Mm) -> Iterator[Line]:
    for group in tool_list(setting.bed, setting.steps):
        yield from heading(group.title, width)
        yield from points(group.items, width, sign="☐")


def _finishing(setting: Setting, width: Mm) -> Iterator[Line]:
    schedule = finishing_schedule(setting.bed)
    yield from paragraph(schedule.what, width)
    rows = [
        Row((str(n), each.title, each.text, each.amount))
        for n, each in enumerate(schedule.passes, 1)
    ]
    yield from table((Head(""), Head("Pass"), Head("What is done"), Head("Takes")), rows, width)
    for title, texts in (
        ("These get the finish", _one_line(schedule.marks)),
        ("These stay as they are sanded or sawn", _one_line(schedule.plain)),
        ("Keep bare", schedule.bare),
        ("Cautions", schedule.cautions),
    ):
        if texts:
            yield from heading(title, width)
            yield from points(texts, width)


def _one_line(words: Sequence[str]) -> tuple[str, ...]:
    return (", ".join(words),) if words else ()


def _checks(setting: Setting, width: Mm) -> Iterator[Line]:
    findings = setting.bed.findings
    holds = sum(each.verdict == Verdict.HOLDS for each in findings)
    yield from paragraph(
        f"{len(findings)} checks of fit, strength, movement and safety were made; {holds} hold. "
        "They do not take the place of local codes or of licensed practice. What does not hold, "
        "holds only just, or is to be known:",
        width,
    )
    told = said((each for each in findings if each.verdict != Verdict.HOLDS), setting.unit)
    rows = [Row((str(each.verdict), each.title, each.reason)) for each in told]
    if rows:
        yield from table((Head("Verdict"), Head("Check"), Head("Why")), rows, width)
    yield from heading("What the figures rest on", width)
    yield from paragraph(" ".join(rests_on(findings)), width)


def _care(setting: Setting, width: Mm) -> Iterator[Line]:
    yield from paragraph("Give this sheet to whoever sleeps in the bed.", width)
    for each in care_sheet(setting.bed, setting.steps):
        yield from heading(each.title, width, BODY * 1.1)
        yield from paragraph(each.text, width)
