"""The cover: the bed as it stands, its name, its sizes, and who publishes the set."""

from __future__ import annotations

from collections.abc import Iterator

from model.checks.record import Finding, Verdict
from model.cutting.record import Box
from model.drawings.paper import Item, Picture, Stroke
from model.drawings.views.gaze import FOOT_LEFT
from model.drawings.views.on_paper import on_paper
from model.drawings.views.view import seen
from model.parts.overall import overall, with_pulls
from model.planset.exploded import fitted
from model.planset.flow import Column, Line, labelled, line_of, paragraph
from model.planset.letters import BODY, HEADING, wrapped
from model.planset.outside import outside
from model.planset.setting import Setting
from model.planset.sheet import Content, Sheet
from model.publisher import Publisher
from model.units import Mm

KEY = "cover"
NAME: Mm = 9.0
NAME_LINES = 2
LOGO_WIDE, LOGO_HIGH = 46.0, 18.0
AIR: Mm = 7.0  # between what stands below each other
LOWEST: Mm = 30.0  # a picture that is lower tells nothing
LABEL: Mm = 42.0  # from the left edge to what a label tells
MOST_FINDINGS = 4


def sheets(setting: Setting) -> tuple[Sheet, ...]:
    """The cover."""
    return (Sheet(KEY, "Cover", lambda room: _cover(setting, room), is_bare=True),)


def _cover(setting: Setting, room: Box) -> Content:
    """From above: the shop, the bed's name, its picture, and what is to know of it."""
    publisher, width = setting.bed.design.publisher, room.x1 - room.x0
    shop, name, told = (
        Column(tuple(lines)) for lines in (
            _shop(publisher, width), _name(setting.bed.design.name, width), _facts(setting, width),
        )
    )  # fmt: skip
    top = room.y1 - max(shop.height, LOGO_HIGH) - AIR
    low, high = room.y0 + told.height + AIR, top - name.height - AIR
    items = [
        *_logo(publisher.logo, room),
        *shop.at((room.x0, room.y1))[0],
        *name.at((room.x0, top))[0],
        *told.at((room.x0, room.y0 + told.height))[0],
    ]
    if high - low > LOWEST:
        items += _picture(setting, Box(room.x0, low, room.x1, high))
    return Content(tuple(items))


def _shop(publisher: Publisher, width: Mm) -> Iterator[Line]:
    """Who publishes it, beside the logo if there is one."""
    beside = width - (LOGO_WIDE + AIR if publisher.logo else 0.0)
    if publisher.name:
        yield from paragraph(publisher.name, beside, HEADING, bold=True)
    if publisher.line:
        yield from paragraph(publisher.line, beside)


def _logo(file: bytes, room: Box) -> Iterator[Picture]:
    """In the upper right corner, as large as its room lets it be. A PNG tells its width and height
    in its bytes 16 to 24 (ISO/IEC 15948).
    """
    if file:
        wide, high = int.from_bytes(file[16:20], "big"), int.from_bytes(file[20:24], "big")
        scale = min(LOGO_WIDE / wide, LOGO_HIGH / high)
        corner = (room.x1 - wide * scale, room.y1 - high * scale)
        yield Picture(Box(*corner, room.x1, room.y1), file)


def _name(name: str, width: Mm) -> Iterator[Line]:
    """The bed's name on two lines if that can be: smaller where it is long."""
    height = NAME
    while len(wrapped(name, width, height, bold=True)) > NAME_LINES and height > BODY:
        height = max(0.9 * height, BODY)
    for words in wrapped(name, width, height, bold=True):
        yield line_of(words, height, bold=True)


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
        f"{size(sizes.length)} long, {size(sizes.width)} wide, {size(sizes.height)} high",
    )
    whole = with_pulls(bed.marks, bed.pieces)
    if whole != sizes:
        yield "With its pulls", f"{size(whole.length)} long, {size(whole.width)} wide"
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
