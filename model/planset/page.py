"""A page of the plan set: a drawing of the size of the paper, and what its places lead to."""

from __future__ import annotations

from dataclasses import dataclass
from typing import NamedTuple

from model.cutting.record import Box
from model.drawings.paper import Drawing
from model.units import Mm


class Paper(NamedTuple):
    """A size of paper, upright, mm."""

    name: str
    width: Mm
    height: Mm


# Sources: ISO 216 for A4; Letter is 8 1/2 by 11 in (ANSI/ASME Y14.1, from memory).
A4 = Paper("A4", 210.0, 297.0)
LETTER = Paper("Letter", 215.9, 279.4)
PAPERS = {paper.name: paper for paper in (A4, LETTER)}


class Link(NamedTuple):
    """A place on a page that leads to the page of this key."""

    box: Box
    to: str


@dataclass(frozen=True, kw_only=True)
class Page:
    """`key` is what links lead to, as `part/B1`; `title` what the list of pages says. A page of a
    `chapter` stands below the page of that key in the bookmarks; "" is a chapter of its own.
    """

    key: str
    title: str
    drawing: Drawing
    chapter: str = ""
    links: tuple[Link, ...] = ()
    chapter_title: str = ""

    @property
    def listed_as(self) -> str:
        """What it is called among the chapters, if it is the first page of one."""
        return self.title if self.chapter else self.chapter_title or self.title
