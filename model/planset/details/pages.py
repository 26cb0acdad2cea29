"""The pages of joints drawn large: two beside each other, in rows as high as they need."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import partial
from typing import NamedTuple

from model.cutting.record import Box
from model.drawings.paper import Item
from model.drawings.scales import scales
from model.planset.details.alike import Shot, shots
from model.planset.details.kinds import joined
from model.planset.details.picture import picture
from model.planset.details.shots import size_of
from model.planset.elevations import told_by
from model.planset.page import Link
from model.planset.setting import Setting
from model.planset.sheet import Content, Sheet, room_on
from model.units import Mm

KEY = "details"
TITLE = "Details of joints"
ACROSS = 2
BETWEEN: Mm = 8.0
# What a picture is taken to need until it is drawn: at most so much for the view, and so much for
# caption, names and dimensions around it.
VIEW_WIDE: Mm = 50.0
VIEW_HIGH: Mm = 72.0
AROUND: Mm = 56.0


class Row(NamedTuple):
    """Pictures beside each other, and how high they are on paper."""

    shots: Sequence[Shot]
    height: Mm


def sheets(setting: Setting) -> tuple[Sheet, ...]:
    """As many as it takes."""
    room = room_on(setting.paper)
    rows = _rows(setting, (room.y1 - room.y0 - BETWEEN) / 2)
    return tuple(
        Sheet(KEY if not k else f"{KEY}/{k + 1}", TITLE if not k else f"{TITLE}, continued",
              partial(_draw, setting, page), "" if not k else KEY, chapter_title=TITLE)
        for k, page in enumerate(_pages(rows, room.y1 - room.y0))
    )  # fmt: skip


def _rows(setting: Setting, most: Mm) -> list[Row]:
    """Rows in the order of the pictures, none higher than half a page."""
    every = shots(setting)
    pairs = [every[k : k + ACROSS] for k in range(0, len(every), ACROSS)]
    return [Row(pair, min(max(_height(setting, shot) for shot in pair), most)) for pair in pairs]


def _height(setting: Setting, shot: Shot) -> Mm:
    """About how high a picture becomes."""
    wide, high = size_of(joined(setting), shot)
    fits = (
        s for s in scales(told_by(setting).unit) if wide * s <= VIEW_WIDE and high * s <= VIEW_HIGH
    )
    return AROUND + high * next(fits, VIEW_HIGH / high)


def _pages(rows: Sequence[Row], high: Mm) -> Iterator[list[Row]]:
    page: list[Row] = []
    for row in rows:
        if page and sum(each.height + BETWEEN for each in page) + row.height > high:
            yield page
            page = []
        page.append(row)
    if page:
        yield page


def _draw(setting: Setting, page: Sequence[Row], room: Box) -> Content:
    items: list[Item] = []
    links: list[Link] = []
    wide = (room.x1 - room.x0 - BETWEEN * (ACROSS - 1)) / ACROSS
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
