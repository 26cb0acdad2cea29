"""The pages of joints drawn large: two beside each other, in rows as high as they need."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import partial
from typing import NamedTuple

from model.cutting.record import Box
from model.drawings.paper import Item
from model.planset.details.alike import Shot, shots
from model.planset.details.picture import height_of, picture
from model.planset.page import Link
from model.planset.setting import Setting
from model.planset.sheet import Content, Sheet, room_on
from model.units import Mm, Share

KEY = "details"
TITLE = "Details of joints"
ACROSS = 2
BETWEEN: Mm = 8.0
MOST: Share = 0.62  # of a page, for one row


class Row(NamedTuple):
    """Pictures beside each other, and how high they are on paper."""

    shots: Sequence[Shot]
    height: Mm


def sheets(setting: Setting) -> tuple[Sheet, ...]:
    """As many as it takes."""
    room = room_on(setting.paper)
    return tuple(
        Sheet(KEY if not k else f"{KEY}/{k + 1}", TITLE if not k else f"{TITLE}, continued",
              partial(_draw, setting, page), "" if not k else KEY, chapter_title=TITLE)
        for k, page in enumerate(_pages(_rows(setting, room), room.y1 - room.y0))
    )  # fmt: skip


def _rows(setting: Setting, room: Box) -> list[Row]:
    """Rows in the order of the pictures, as high as they need."""
    every = shots(setting)
    pairs = [every[k : k + ACROSS] for k in range(0, len(every), ACROSS)]
    wide, high = _wide(room), room.y1 - room.y0
    half = (high - BETWEEN) / 2
    return [
        Row(pair, max(height_of(setting, shot, wide, half, MOST * high) for shot in pair))
        for pair in pairs
    ]


def _wide(room: Box) -> Mm:
    return (room.x1 - room.x0 - BETWEEN * (ACROSS - 1)) / ACROSS


def _pages(rows: Sequence[Row], high: Mm) -> Iterator[list[Row]]:
    """Each page begins with the first row that is left, and takes those after it that have room."""
    left = list(rows)
    while left:
        page = [left.pop(0)]
        for row in tuple(left):
            if sum(each.height + BETWEEN for each in page) + row.height <= high:
                page.append(row)
                left.remove(row)
        yield page


def _draw(setting: Setting, page: Sequence[Row], room: Box) -> Content:
    items: list[Item] = []
    links: list[Link] = []
    wide = _wide(room)
    spare = room.y1 - room.y0 - sum(row.height for row in page) - BETWEEN * (len(page) - 1)
    y = room.y1
    for row in page:
        high = row.height + spare / len(page)
        for right, shot in enumerate(row.shots):
            x = room.x0 + right * (wide + BETWEEN)
            drawn, linked = picture(setting, shot, Box(x, y - high, x + wide, y))
            items += drawn
            links += linked
        y -= high + BETWEEN
    return Content(tuple(items), tuple(links), "as told")
