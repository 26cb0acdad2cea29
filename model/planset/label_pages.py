"""Labels: one for every piece, and for every layer and strip that one is glued up from, to be cut
apart and stuck on when it is cut.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import partial
from typing import NamedTuple

from model.cutting.record import Box
from model.drawings.letters import words_width
from model.drawings.paper import Item, Stroke, Text
from model.parts.marks import Mark
from model.planset.frame import shortened
from model.planset.letters import SMALL
from model.planset.setting import Setting
from model.planset.sheet import Content, Sheet, room_on
from model.shop.cut_list import cut_piece
from model.shop.order import say
from model.units import Mm

KEY = "labels"
ACROSS, HIGH = 3, 27.0
EDGE: Mm = 2.5
BIG: Mm = 6.0
TICK: Mm = 3.0


class Label(NamedTuple):
    """What stands on one label."""

    name: str
    part: str
    size: str
    where: str


def sheets(setting: Setting) -> tuple[Sheet, ...]:
    """Pages of labels, in the order of marks."""
    room = room_on(setting.paper)
    labels = [label for mark in setting.bed.marks for label in _of(setting, mark)]
    each = ACROSS * int((room.y1 - room.y0) // HIGH)
    pages = [labels[at : at + each] for at in range(0, len(labels), each)]
    return tuple(
        Sheet(KEY if not at else f"{KEY}/{at + 1}", "Labels" if not at else "Labels, continued",
              partial(_draw, some), "" if not at else KEY)
        for at, some in enumerate(pages)
    )  # fmt: skip


def _of(setting: Setting, mark: Mark) -> Iterator[Label]:
    """Its layers or strips, which are sawn first, then its pieces."""
    sides = (mark.length, mark.width, mark.thickness)
    size = " × ".join(setting.size(float(side)) for side in sides)
    yield from _layers(setting, mark)
    for number in range(1, mark.quantity + 1):
        yield Label(
            f"{mark.mark}-{number}",
            mark.name,
            size,
            f"{setting.assembly(mark)} · {mark.material_name}",
        )


def _layers(setting: Setting, mark: Mark) -> Iterator[Label]:
    """One for each board that a piece is glued up from, as the plans name it."""
    sawn = cut_piece(setting.bed, mark)
    if not sawn.is_glued:
        return
    rough = " × ".join(
        say.rough(side, setting.unit)
        for side in (sawn.rough.length, sawn.rough.width, sawn.thickness)
    )
    word = "layer" if sawn.strips == 1 else "strip"
    for number in range(sawn.quantity):
        yield Label(
            f"{sawn.name}-{number + 1}",
            f"{mark.name}, {word}",
            f"{rough}, rough",
            f"for {mark.mark}-{number // sawn.for_each + 1} · {mark.material_name}",
        )


def _draw(labels: Sequence[Label], room: Box) -> Content:
    wide = (room.x1 - room.x0) / ACROSS
    items: list[Item] = []
    for at, label in enumerate(labels):
        row, column = divmod(at, ACROSS)
        x, y = room.x0 + column * wide, room.y1 - row * HIGH
        items += _one(label, Box(x, y - HIGH, x + wide, y))
    return Content(tuple(items))


def _one(label: Label, box: Box) -> Iterator[Item]:
    """Corner ticks to cut by, the piece's name large, what it is and its size below."""
    for x, way in ((box.x0, 1), (box.x1, -1)):
        for y, up in ((box.y0, 1), (box.y1, -1)):
            yield Stroke(((x + way * TICK, y), (x, y), (x, y + up * TICK)), "fine")
    left, room = box.x0 + EDGE, box.x1 - box.x0 - 2 * EDGE
    high = min(BIG, BIG * room / words_width(label.name, BIG, bold=True))
    yield Text((left, box.y1 - EDGE - BIG / 2), label.name, high, "left", bold=True)
    for row, words in enumerate((label.part, label.size, label.where)):
        y = box.y1 - EDGE - BIG - 3.0 - row * 2.2 * SMALL
        yield Text((left, y), shortened(words, room, SMALL), SMALL, "left", bold=not row)
