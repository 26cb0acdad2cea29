"""What stands around every page: its title above, the bed, the shop and the page's number below."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import NamedTuple

from model.drawings.letters import words_width
from model.drawings.paper import Drawing, Item, Point, Ring, Stroke, Text
from model.planset.letters import SMALL, TITLE
from model.planset.page import Page, Paper
from model.planset.sheet import FOOT, HEAD, MARGIN, Sheet, room_on
from model.units import Mm

SIGN: Mm = 10.8  # width of the sign of projection
WIDEST = "888 / 888"  # room for any page's number: what stands beside it keeps its place


class Around(NamedTuple):
    """What is the same around all pages: the bed's name, who publishes the set, and how views are
    laid out.
    """

    bed: str
    shop: str
    note: str  # units: `sizes in inches`
    is_first_angle: bool = False


def framed(sheets: Sequence[Sheet], at: int, paper: Paper, around: Around) -> Page:
    """The page of one sheet, drawn."""
    sheet = sheets[at]
    content = sheet.draw(room_on(paper, sheet.is_bare))
    frame = (
        () if sheet.is_bare else tuple(_frame(sheet, at, len(sheets), paper, around, content.scale))
    )
    drawing = Drawing(
        width=paper.width, height=paper.height, scale=1.0,
        items=(*frame, *content.items), title=sheet.title,
    )  # fmt: skip
    return Page(
        key=sheet.key, title=sheet.title, drawing=drawing, chapter=sheet.chapter,
        links=content.links, chapter_title=sheet.chapter_title,
    )  # fmt: skip


def _frame(
    sheet: Sheet, at: int, many: int, paper: Paper, around: Around, scale: str
) -> Iterator[Item]:
    left, right = MARGIN, paper.width - MARGIN
    top, bottom = paper.height - MARGIN, MARGIN
    yield _title(sheet.title, (left, top - TITLE / 2), right - left)
    yield Stroke(((left, top - HEAD + 6.0), (right, top - HEAD + 6.0)), "narrow")
    yield Stroke(((left, bottom + FOOT - 4.0), (right, bottom + FOOT - 4.0)), "fine")
    y = bottom + SMALL / 2
    number = f"{at + 1} / {many}"
    yield Text((right, y), number, SMALL, "right", bold=True)
    beside = right - max(words_width(each, SMALL, bold=True) for each in (number, WIDEST)) - 3.0
    if scale:
        yield from projection_sign((beside - SIGN / 2, y), around.is_first_angle)
        beside -= SIGN + 3.0
    middle = " · ".join(each for each in (f"scale {scale}" if scale else "", around.note) if each)
    yield Text((beside, y), middle, SMALL, "right")
    told = " · ".join(each for each in (around.shop, around.bed) if each)
    room = beside - left - 4.0 - words_width(middle, SMALL)
    yield Text((left, y), shortened(told, room, SMALL), SMALL, "left")


def projection_sign(at: Point, is_first_angle: bool) -> Iterator[Item]:
    """A cut-off cone from its side and from its small end, as they stand to each other: in first
    angle the view from the left stands at the right (ISO 5456-2, from memory).
    """
    x, y = at
    half = SIGN / 2
    way = 1.0 if is_first_angle else -1.0
    rings, cone = x + way * 2.8, x - way * 2.8
    for radius in (0.75, 1.5):
        yield Ring((rings, y), radius, "fine")
    corners = ((cone - 1.6, y - 0.75), (cone + 1.6, y - 1.5), (cone + 1.6, y + 1.5),
               (cone - 1.6, y + 0.75), (cone - 1.6, y - 0.75))  # fmt: skip
    yield Stroke(corners, "fine")
    yield Stroke(((x - half, y), (x + half, y)), "fine")


def _title(words: str, at: Point, room: Mm) -> Text:
    """Smaller where it is long, and shortened where even that does not help."""
    long = max(words_width(words, TITLE, bold=True), room)
    height = max(TITLE * room / long, SMALL)
    told = shortened(words, room, height, bold=True) if height == SMALL else words
    return Text(at, told, height, "left", bold=True)


def shortened(words: str, room: Mm, height: Mm, bold: bool = False) -> str:
    """As much of it as there is room for, with a sign that there is more."""
    if words_width(words, height, bold) <= room:
        return words
    kept = words
    while kept and words_width(f"{kept.rstrip()}…", height, bold) > room:
        kept = kept[:-1]
    return f"{kept.rstrip()}…"
