"""The cover: the bed as it stands, its name, its sizes, and who publishes the set."""

from __future__ import annotations

from collections.abc import Iterator

from model.checks.record import Finding, Verdict
from model.cutting.record import Box
from model.drawings.paper import Item, Picture, Stroke, Text
from model.drawings.views.gaze import FOOT_LEFT
from model.drawings.views.on_paper import on_paper
from model.drawings.views.view import seen
from model.parts.overall import overall
from model.planset.exploded import fitted
from model.planset.flow import Column, Line, labelled, paragraph
from model.planset.letters import BODY, HEADING, wrapped
from model.planset.outside import outside
from model.planset.setting import Setting
from model.planset.sheet import Content, Sheet
from model.units import Mm

KEY = "cover"
NAME: Mm = 9.0
NAME_LINES = 2
LOGO_WIDE, LOGO_HIGH = 46.0, 18.0
LABEL: Mm = 42.0  # from the left edge to what a label tells
MOST_FINDINGS = 4


def sheets(setting: Setting) -> tuple[Sheet, ...]:
    """The cover."""
    return (Sheet(KEY, "Cover", lambda room: _cover(setting, room), is_bare=True),)


def _cover(setting: Setting, room: Box) -> Content:
    items = [*_publisher(setting, room), *_name(setting, room)]
    told = Column(tuple(_facts(setting, room.x1 - room.x0)))
    items += told.at((room.x0, room.y0 + told.height))[0]
    low = room.y0 + told.height + 8.0
    high = room.y1 - LOGO_HIGH - 8.0 - NAME_LINES * 1.5 * NAME
    items += _picture(setting, Box(room.x0, low, room.x1, high))
    return Content(tuple(items))


def _publisher(setting: Setting, room: Box) -> Iterator[Item]:
    publisher = setting.bed.design.publisher
    y = room.y1 - HEADING / 2
    if publisher.name:
        yield Text((room.x0, y), publisher.name, HEADING, "left", bold=True)
    if publisher.line:
        yield Text((room.x0, y - 2.2 * HEADING), publisher.line, BODY, "left")
    if publisher.logo:
        yield _logo(publisher.logo, room)


def _logo(file: bytes, room: Box) -> Picture:
    """In the upper right corner, as large as its room lets it be. A PNG tells its width and height
    in its bytes 16 to 24 (ISO/IEC 15948).
    """
    wide, high = int.from_bytes(file[16:20], "big"), int.from_bytes(file[20:24], "big")
    scale = min(LOGO_WIDE / wide, LOGO_HIGH / high)
    return Picture(Box(room.x1 - wide * scale, room.y1 - high * scale, room.x1, room.y1), file)


def _name(setting: Setting, room: Box) -> Iterator[Item]:
    """The bed's name on two lines at most: smaller where it is long."""
    name, width = setting.bed.design.name, room.x1 - room.x0
    height = NAME
    while len(wrapped(name, width, height, bold=True)) > NAME_LINES and height > BODY:
        height *= 0.9
    top = room.y1 - LOGO_HIGH - 6.0
    for number, words in enumerate(wrapped(name, width, height, bold=True)):
        y = top - (number + 0.5) * 1.5 * height
        yield Text((room.x0, y), words, height, "left", bold=True)


def _picture(setting: Setting, room: Box) -> Iterator[Item]:
    view = seen(outside(setting.bed), FOOT_LEFT, hidden=False)
    yield from on_paper(view, *fitted(view, room))


def _facts(setting: Setting, width: Mm) -> Iterator[Line]:
    rule = Stroke(((0.0, 0.0), (width, 0.0)), "narrow")
    yield Line(3.0, (rule,))
    yield from labelled(_told(setting), width, LABEL)
    yield from _failing(setting, width)


def _told(setting: Setting) -> Iterator[tuple[str, str]]:
    bed, size = setting.bed, setting.size
    sizes = overall(bed.marks, bed.pieces)
    yield (
        "Overall",
        (f"{size(sizes.length)} long, {size(sizes.width)} wide, {size(sizes.height)} high"),
    )
    yield "Mattress", f"{size(bed['mattress_across'])} × {size(bed['mattress_along'])}"
    yield "Sleeping height", size(bed["deck_top"] + bed["mattress_high"])
    drawers = len(bed.pieces.groups) - 1
    yield "Drawers", str(drawers) if drawers else "none"
    pieces = sum(mark.quantity for mark in bed.marks)
    yield "Parts", f"{pieces} pieces of {len(bed.marks)} marks"


def _failing(setting: Setting, width: Mm) -> Iterator[Line]:
    """What does not hold: nobody should build it unawares."""
    failed = [each for each in setting.bed.findings if each.verdict == Verdict.FAILS]
    if not failed:
        return
    yield Line(2.0)
    yield from paragraph(
        f"{_many(failed)} Do not build it before they are looked into:", width, bold=True
    )
    for each in failed[:MOST_FINDINGS]:
        yield from paragraph(f"{each.title}: {each.reason}", width)
    if len(failed) > MOST_FINDINGS:
        yield from paragraph(f"and {len(failed) - MOST_FINDINGS} more: see Checks.", width)


def _many(failed: list[Finding]) -> str:
    return (
        "This bed fails a check." if len(failed) == 1 else f"This bed fails {len(failed)} checks."
    )
