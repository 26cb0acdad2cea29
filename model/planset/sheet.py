"""A sheet of the set before it is drawn: its name in the list, and how it is drawn into a frame."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from functools import partial
from typing import NamedTuple

from model.cutting.record import Box
from model.drawings.paper import Item
from model.planset.flow import Column, Line, columns
from model.planset.page import Link, Paper
from model.units import Mm

MARGIN: Mm = 17.0
HEAD: Mm = 15.0  # below the upper margin: chapter, title and a rule
GUTTER: Mm = 8.0  # between columns of words
FOOT: Mm = 9.0  # above the lower margin


class Content(NamedTuple):
    """What is drawn on a page within its frame. `scale` is told at the foot: `1 : 10`."""

    items: tuple[Item, ...]
    links: tuple[Link, ...] = ()
    scale: str = ""


class Sheet(NamedTuple):
    """One page to be drawn. `draw` gets the room within the frame, mm on paper.

    Pages of one chapter name the key of its first page as their `chapter`; that one may have a
    `chapter_title` for lists of chapters.
    """

    key: str
    title: str
    draw: Callable[[Box], Content]
    chapter: str = ""
    is_bare: bool = False  # no frame: the cover, labels, templates
    chapter_title: str = ""


def room_on(paper: Paper, is_bare: bool = False) -> Box:
    """What a sheet may draw in."""
    if is_bare:
        return Box(MARGIN, MARGIN, paper.width - MARGIN, paper.height - MARGIN)
    return Box(MARGIN, MARGIN + FOOT, paper.width - MARGIN, paper.height - MARGIN - HEAD)


def text_sheets(
    key: str,
    title: str,
    lines: Callable[[Mm], tuple[Line, ...]],
    paper: Paper,
    chapter: str = "",
    across: int = 1,
) -> tuple[Sheet, ...]:
    """As many sheets as a running text takes: `key`, `key/2`, `key/3`. `across` columns stand
    beside each other on a page.
    """
    room = room_on(paper)
    wide = (room.x1 - room.x0 - GUTTER * (across - 1)) / across
    laid = columns(lines(wide), room.y1 - room.y0)
    return column_sheets(key, title, laid, chapter, across, wide)


def column_sheets(
    key: str,
    title: str,
    laid: Sequence[Column],
    chapter: str = "",
    across: int = 1,
    wide: Mm = 0.0,
) -> tuple[Sheet, ...]:
    """A page for every `across` of these columns, each `wide`."""
    pages = [laid[at : at + across] for at in range(0, len(laid), across)]
    return tuple(
        Sheet(
            key if number == 1 else f"{key}/{number}",
            title if number == 1 else f"{title}, continued",
            partial(_beside, some, wide),
            chapter or ("" if number == 1 else key),
        )
        for number, some in enumerate(pages, 1)
    )


def _beside(some: Sequence[Column], wide: Mm, room: Box) -> Content:
    items: list[Item] = []
    links: list[Link] = []
    for at, column in enumerate(some):
        own, lead = column.at((room.x0 + at * (wide + GUTTER), room.y1))
        items += own
        links += lead
    return Content(tuple(items), tuple(links))
