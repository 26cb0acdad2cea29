"""A table in a column: cells that wrap, a head on every page, and rows that lead to a page."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import NamedTuple

from model.cutting.record import Box
from model.drawings.letters import words_width
from model.drawings.paper import Anchor, Fill, Item, Stroke, Text
from model.planset.flow import Line
from model.planset.letters import SMALL, leading, wrapped
from model.planset.page import Link
from model.units import Mm

PAD: Mm = 1.0  # beside the words of a cell
AIR: Mm = 0.8  # above and below them
HEAD_TONE = 0.1
NARROWEST: Mm = 9.0


class Row(NamedTuple):
    """The words of a row; `to` is the page that it leads to, `bold` a row that sums up others."""

    cells: tuple[str, ...]
    to: str = ""
    bold: bool = False


class Head(NamedTuple):
    """A column of the table: what stands above it, and on which side its words stand."""

    words: str
    anchor: Anchor = "left"


def table(
    heads: Sequence[Head],
    rows: Sequence[Row],
    width: Mm,
    height: Mm = SMALL,
    alike: Sequence[Row] = (),
) -> Iterator[Line]:
    """Its lines, one for each row. Columns are as wide as all rows that are `alike` need, so that
    several tables below each other line up.
    """
    widths = _widths(heads, alike or rows, width, height)
    top = _line(Row(tuple(each.words for each in heads), bold=True), heads, widths, height)
    top = top._replace(items=(_ground(width, top.height), *top.items), keeps=True)
    yield top
    for row in rows:
        yield _line(row, heads, widths, height)._replace(heads=(top,))
    yield Line(2 * AIR)


def _widths(heads: Sequence[Head], rows: Sequence[Row], width: Mm, height: Mm) -> list[Mm]:
    """As wide as its longest words where all have room; else the widest columns share what is
    left, and wrap.
    """
    wanted = [
        max(
            words_width(head.words, height, bold=True),
            *(words_width(row.cells[at], height, row.bold) for row in rows),
            0.0,
        ) + 2 * PAD
        for at, head in enumerate(heads)
    ]  # fmt: skip
    spare = width - sum(wanted)
    if spare >= 0:
        return [each + spare * each / sum(wanted) for each in wanted]
    return _shared(wanted, width)


def _shared(wanted: list[Mm], width: Mm) -> list[Mm]:
    """The widest are cut to one width that makes all fit."""
    kept = sorted(wanted)
    room = width
    for at, each in enumerate(kept):
        share = room / (len(kept) - at)
        if each > share:
            most = max(share, NARROWEST)
            return [min(one, most) for one in wanted]
        room -= each
    return wanted


def _line(row: Row, heads: Sequence[Head], widths: Sequence[Mm], height: Mm) -> Line:
    cells = [
        wrapped(words, wide - 2 * PAD, height, row.bold)
        for words, wide in zip(row.cells, widths, strict=True)
    ]
    step = leading(height)
    high = max(map(len, cells)) * step + 2 * AIR
    items: list[Item] = []
    x = 0.0
    for lines, head, wide in zip(cells, heads, widths, strict=True):
        at = {"left": x + PAD, "middle": x + wide / 2, "right": x + wide - PAD}[head.anchor]
        for number, words in enumerate(lines):
            y = -AIR - (number + 0.5) * step
            items.append(Text((at, y), words, height, head.anchor, bold=row.bold))
        x += wide
    items.append(Stroke(((0.0, -high), (x, -high)), "fine"))
    links = (Link(Box(0.0, -high, x, 0.0), row.to),) if row.to else ()
    return Line(high, tuple(items), links)


def _ground(width: Mm, high: Mm) -> Fill:
    return Fill(((0.0, 0.0), (width, 0.0), (width, -high), (0.0, -high)), HEAD_TONE)
