"""Drawers and their fronts: one of each kind from the front, from its side, and cut across."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import partial

import numpy as np

from model.bed import Bed
from model.building.joined import Joined
from model.cutting.record import Box
from model.drawings.letters import text_box, words_width
from model.drawings.paper import Item, Text
from model.drawings.views.scene import bed_scene
from model.drawings.views.section import plane_across
from model.drawings.views.view import seen
from model.part import Point
from model.planset.details.drawer_kinds import Drawer, drawers
from model.planset.details.drawer_sizes import across, front, side
from model.planset.details.kinds import joined
from model.planset.elevations import told_by
from model.planset.letters import BODY, leading, wrapped
from model.planset.page import Link
from model.planset.part_pages import key_of
from model.planset.plate import Figure, figures_on
from model.planset.setting import Setting
from model.planset.sheet import Content, Sheet
from model.units import Mm, Share

KEY = "drawers"
TITLE = "Drawers and fronts"
VIEWS = FRONT_VIEW, SIDE_VIEW, CUT_VIEW = "Front", "Side", "Cut across"
CUT_AT: Share = 0.45  # of a box from its front: no slide's screw and no muntin stands there
BELOW: Mm = 4.0


def sheets(setting: Setting) -> tuple[Sheet, ...]:
    """One for each kind of drawer, two where sizes are told twice; none for a bed without any."""
    shown = ((FRONT_VIEW, SIDE_VIEW), (CUT_VIEW,)) if setting.tells_both else (VIEWS,)
    every = [
        (each, views) for each in drawers(joined(setting))
        for views in (shown if each.box else ((FRONT_VIEW,),))
    ]  # fmt: skip
    return tuple(
        Sheet(KEY if not k else f"{KEY}/{k + 1}", TITLE if not k else f"{TITLE}, continued",
              partial(_draw, setting, *each), "" if not k else KEY, chapter_title=TITLE)
        for k, each in enumerate(every)
    )  # fmt: skip


def _draw(setting: Setting, drawer: Drawer, views: Sequence[str], room: Box) -> Content:
    items, links, y = _words(setting, drawer, room)
    figures = [_figure(setting, drawer, name) for name in views]
    drawn = figures_on(Box(room.x0, room.y0, room.x1, y - BELOW), figures, told_by(setting))
    return drawn._replace(items=(*items, *drawn.items), links=tuple(links))


def _words(
    setting: Setting, drawer: Drawer, room: Box
) -> tuple[list[Item], list[Link], Mm]:  # fmt: skip
    """Which drawers these are and of which marks, each with a link; and how far down that goes."""
    names = ", ".join(name.replace("-", " ") for name in drawer.names)
    count = f"{len(drawer.names)} alike" if len(drawer.names) > 1 else "One"
    y = room.y1
    items: list[Item] = []
    links: list[Link] = []
    for line in wrapped(f"{count}: {names}.", room.x1 - room.x0, BODY):
        y -= leading(BODY)
        items.append(Text((room.x0, y + leading(BODY) / 2), line, BODY, "left"))
    x = room.x0
    y -= leading(BODY)
    for words, mark in _marks(setting, drawer):
        wide = words_width(words, BODY)
        if x + wide > room.x1:
            x, y = room.x0, y - leading(BODY)
        text = Text((x, y + leading(BODY) / 2), words, BODY, "left")
        items.append(text)
        links.append(Link(text_box(text), key_of(setting, mark)))
        x += wide + 2 * BODY
    return items, links, y


def _marks(setting: Setting, drawer: Drawer) -> Iterator[tuple[str, str]]:
    all_of = joined(setting)
    marks = {all_of.mark_of[each]: each for each in (*drawer.box, *drawer.front)}
    for mark, piece in sorted(marks.items(), key=lambda each: (each[0][0], len(each[0]), each[0])):
        yield f"{mark} {all_of.part(piece).name}", mark


def _figure(setting: Setting, drawer: Drawer, name: str) -> Figure:
    all_of = joined(setting)
    bed, gaze = setting.bed, drawer.gaze
    scene = bed_scene(bed, drawer.pieces)
    if name == FRONT_VIEW:
        of_box = [row for row, piece in enumerate(scene.pieces.tolist()) if _shows(all_of, piece)]
        view = seen(scene, gaze, hidden=of_box)
        return Figure(name, view, tuple(front(all_of, drawer, view)))
    if name == SIDE_VIEW:
        view = seen(scene, drawer.side_gaze, hidden=False)
        return Figure(name, view, tuple(side(bed, drawer, view)))
    view = seen(scene, gaze, cut=plane_across(gaze, _middle(bed, drawer)), hidden=False)
    return Figure(name, view, tuple(across(all_of, drawer, view)))


def _shows(all_of: Joined, piece: int) -> bool:
    """Whether a piece is told behind the front: the front of its box."""
    return all_of.part(piece).name == "box front"


def _middle(bed: Bed, drawer: Drawer) -> Point:
    """A place on the plane that cuts a box across."""
    low, high = (bound[list(drawer.box)] for bound in bed.pieces.bounds)
    start, end = low.min(axis=0), high.max(axis=0)
    out = np.array(drawer.out)
    middle = (start + end) / 2 + out * (0.5 - CUT_AT) * (end - start)
    x, y, z = middle.tolist()
    return (x, y, z)
