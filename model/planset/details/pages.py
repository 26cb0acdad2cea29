"""The pages of joints drawn large: six to a page."""

from __future__ import annotations

from collections.abc import Sequence
from functools import partial

from model.cutting.record import Box
from model.drawings.paper import Item
from model.planset.details.kinds import kinds
from model.planset.details.picture import picture
from model.planset.details.shots import Shot, shots
from model.planset.page import Link
from model.planset.setting import Setting
from model.planset.sheet import Content, Sheet
from model.units import Mm

KEY = "details"
TITLE = "Details of joints"
ACROSS, DOWN = 2, 3
BETWEEN: Mm = 8.0


def sheets(setting: Setting) -> tuple[Sheet, ...]:
    """As many as it takes; a joint that is shown twice stands side by side."""
    rows = _rows([list(shots(kind)) for kind in kinds(setting)])
    pages = [rows[k : k + DOWN] for k in range(0, len(rows), DOWN)]
    return tuple(
        Sheet(KEY if not k else f"{KEY}/{k + 1}", TITLE if not k else f"{TITLE}, continued",
              partial(_draw, setting, page), "" if not k else KEY, chapter_title=TITLE)
        for k, page in enumerate(pages)
    )  # fmt: skip


def _rows(wanted: Sequence[list[Shot]]) -> list[list[Shot]]:
    """Rows of two, in their order: one alone waits for the next that is alone."""
    rows: list[list[Shot]] = []
    waiting: list[Shot] | None = None
    for each in wanted:
        if len(each) == ACROSS:
            rows.append(each)
        elif waiting is None:
            waiting = list(each)
            rows.append(waiting)
        else:
            waiting += each
            waiting = None
    return rows


def _draw(setting: Setting, page: Sequence[Sequence[Shot]], room: Box) -> Content:
    items: list[Item] = []
    links: list[Link] = []
    wide = (room.x1 - room.x0 - BETWEEN * (ACROSS - 1)) / ACROSS
    high = (room.y1 - room.y0 - BETWEEN * (DOWN - 1)) / DOWN
    for down, row in enumerate(page):
        for right, shot in enumerate(row):
            x, y = room.x0 + right * (wide + BETWEEN), room.y1 - down * (high + BETWEEN)
            drawn, linked = picture(setting, shot, Box(x, y - high, x + wide, y))
            items += drawn
            links += linked
    return Content(tuple(items), tuple(links), "as told")
