"""Words in a column that run on from page to page: paragraphs, headings, points and gaps."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from typing import NamedTuple

from model.drawings.moved import moved, moved_box
from model.drawings.paper import Item, Point, Text
from model.planset.letters import BODY, HAIR, HEADING, leading, wrapped
from model.planset.page import Link
from model.units import Mm

INDENT: Mm = 4.0
GAP: Mm = 1.6


class Line(NamedTuple):
    """One line of a column: `items` and `links` as from its upper left corner, y upwards.

    `keeps` stays on the page of the next line; `heads` stand above it again where it is the first
    on a page. `drawn` gives what is only worked out when the page is looked at.
    """

    height: Mm
    items: tuple[Item, ...] = ()
    links: tuple[Link, ...] = ()
    keeps: bool = False
    heads: tuple[Line, ...] = ()
    drawn: Callable[[], Iterable[Item]] = tuple

    @property
    def is_blank(self) -> bool:
        """Whether it is a gap and nothing else."""
        return not self.items and not self.links and self.drawn is tuple


class Column(NamedTuple):
    """The lines that stand on one page."""

    lines: tuple[Line, ...]

    @property
    def height(self) -> Mm:
        """Of all its lines."""
        return sum(line.height for line in self.lines)

    def at(self, corner: Point) -> tuple[tuple[Item, ...], tuple[Link, ...]]:
        """All items and links, with the column's upper left corner there."""
        x, y = corner
        items: list[Item] = []
        links: list[Link] = []
        for line in self.lines:
            items += (moved(item, x, y) for item in (*line.items, *line.drawn()))
            links += (Link(moved_box(link.box, x, y), link.to) for link in line.links)
            y -= line.height
        return tuple(items), tuple(links)


# ---------------------------------------------------------------- what a column is made of


def paragraph(
    words: str, width: Mm, height: Mm = BODY, bold: bool = False, keeps: bool = False
) -> Iterator[Line]:
    """A paragraph and a gap below it."""
    for words_of_line in wrapped(words, width, height, bold):
        yield line_of(words_of_line, height, bold=bold, keeps=keeps)
    yield Line(GAP, keeps=keeps)


def heading(words: str, width: Mm, height: Mm = HEADING) -> Iterator[Line]:
    """A heading that stays with what follows it."""
    yield Line(2 * GAP, keeps=True)
    yield from paragraph(words, width, height, bold=True, keeps=True)


def points(
    sentences: Iterable[str], width: Mm, sign: str = "·", height: Mm = BODY
) -> Iterator[Line]:
    """Sentences below each other, a sign before each, none broken between pages; `sign` "1" counts
    them.
    """
    for number, sentence in enumerate(sentences, 1):
        first = Text(
            (0.0, -leading(height) / 2), f"{number}" if sign == "1" else sign, height, "left"
        )
        for at, words in enumerate(wrapped(sentence, width - INDENT, height)):
            made = line_of(words, height, INDENT, keeps=True)
            yield made if at else made._replace(items=(first, *made.items))
        yield Line(GAP / 2)


def labelled(told: Iterable[tuple[str, str]], width: Mm, indent: Mm) -> Iterator[Line]:
    """Words that start at `indent`, the label of each before its first line."""
    for label, words in told:
        for at, line in enumerate(wrapped(words, width - indent, BODY)):
            made = line_of(line, BODY, indent)
            name = line_of(label, BODY, bold=True).items if not at else ()
            yield made._replace(items=(*name, *made.items))


def line_of(
    words: str, height: Mm = BODY, x: Mm = 0.0, bold: bool = False, keeps: bool = False
) -> Line:
    """A line of words."""
    text = Text((x, -leading(height) / 2), words, height, "left", bold=bold)
    return Line(leading(height), (text,), keeps=keeps)


# ---------------------------------------------------------------- onto pages


def columns(lines: Sequence[Line], height: Mm) -> tuple[Column, ...]:
    """The lines shared out to pages of this height.

    Lines that keep together are parted only where they are higher than a page; gaps that have no
    room at the foot of a page are left out, so that none begins or makes a page of its own.
    """
    pages: list[list[Line]] = []
    left = -1.0  # no page is begun
    for block in _blocks(lines, height):
        if _sum(block) > left + HAIR:
            if all(line.is_blank for line in block):
                continue
            pages.append(list(block[0].heads))
            left = height - _sum(pages[-1])
        pages[-1] += block
        left -= _sum(block)
    return tuple(Column(tuple(page)) for page in pages)


def _blocks(lines: Sequence[Line], height: Mm) -> Iterator[list[Line]]:
    """What stands on one page: lines that keep together, or one by one if no page is so high."""
    for group in _kept_together(lines):
        if _sum((*group[0].heads, *group)) > height + HAIR:
            yield from ([line] for line in group)
        else:
            yield group


def _kept_together(lines: Sequence[Line]) -> Iterator[list[Line]]:
    group: list[Line] = []
    for line in lines:
        group.append(line)
        if not line.keeps:
            yield group
            group = []
    if group:
        yield group


def _sum(lines: Iterable[Line]) -> Mm:
    return sum(line.height for line in lines)
