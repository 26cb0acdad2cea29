"""The plan set of a bed: which pages it has, in which order, and each of them when it is asked for.

The list of pages is cheap; a page is drawn when it is looked at, and kept.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterator
from dataclasses import replace
from functools import cached_property

from model.bed import Bed
from model.planset import (
    board_pages,
    buying,
    cover,
    elevations,
    exploded_pages,
    label_pages,
    part_pages,
    parts_list,
    sections,
    step_pages,
    templates,
    word_pages,
    work_pages,
)
from model.planset.details import drawers
from model.planset.details import pages as details
from model.planset.frame import Around, framed
from model.planset.page import Page
from model.planset.setting import Setting
from model.planset.sheet import Sheet

Chapter = Callable[[Setting], tuple[Sheet, ...]]

CHAPTERS: tuple[Chapter, ...] = (
    cover.sheets,
    word_pages.contents,
    word_pages.use,
    buying.sheets,
    word_pages.tools,
    parts_list.sheets,
    elevations.sheets,
    sections.sheets,
    details.sheets,
    drawers.sheets,
    part_pages.sheets,
    board_pages.sheets,
    work_pages.sheets,
    exploded_pages.sheets,
    step_pages.sheets,
    word_pages.finishing,
    word_pages.checks,
    word_pages.care,
    templates.sheets,
    label_pages.sheets,
)

PLANNED = (buying.sheets, board_pages.sheets, work_pages.sheets)  # these wait for cutting plans


class PlanSet:
    """All pages of one bed's plan set."""

    def __init__(self, bed: Bed) -> None:
        self.setting = Setting(bed=bed, listed=lambda: self.sheets)
        self._drawn: dict[int, Page] = {}

    @property
    def title(self) -> str:
        """What the whole is called, as the file's title says."""
        return f"{self.setting.bed.design.name}: plan set"

    @property
    def author(self) -> str:
        """Who publishes it: the shop's name, or nobody's."""
        return self.setting.bed.design.publisher.name

    @cached_property
    def chapters(self) -> tuple[tuple[Sheet, ...], ...]:
        """The pages of each chapter, in the order of `CHAPTERS`."""
        return tuple(chapter(self.setting) for chapter in CHAPTERS)

    @cached_property
    def sheets(self) -> tuple[Sheet, ...]:
        """The pages by key and title, in their order."""
        return tuple(sheet for chapter in self.chapters for sheet in chapter)

    def chapter(self, made: Chapter) -> tuple[Sheet, ...]:
        """The pages of one chapter of `CHAPTERS`."""
        return self.chapters[CHAPTERS.index(made)]

    def page(self, at: int) -> Page:
        """The page at a place of the list, drawn."""
        if at not in self._drawn:
            self._drawn[at] = framed(self.sheets, at, self.setting.paper, self._around)
        return self._drawn[at]

    def pages(self, chosen: Collection[int] | None = None) -> Iterator[Page]:
        """These pages, or all of them, in their order."""
        for at in range(len(self.sheets)):
            if chosen is None or at in chosen:
                yield self.page(at)

    def early_cover(self) -> Page:
        """The cover, which needs no list: it has no number at its foot."""
        return framed(cover.sheets(self.setting), 0, self.setting.paper, self._around)

    def early(self, key: str, last: PlanSet) -> Page | None:
        """The page of a key before this set's list is known: the number at its foot is that in the
        `last` one. None where its chapter waits for cutting plans, or has no such page any more.
        """
        place = next((k for k, some in enumerate(last.chapters) if _holds(some, key)), None)
        if place is None or CHAPTERS[place] in PLANNED:
            return None
        setting = replace(self.setting, before=last.setting)
        sheet = next((each for each in CHAPTERS[place](setting) if each.key == key), None)
        if sheet is None:
            return None
        at = next(k for k, each in enumerate(last.sheets) if each.key == key)
        sheets = (*last.sheets[:at], sheet, *last.sheets[at + 1 :])
        return framed(sheets, at, self.setting.paper, self._around)

    @cached_property
    def _around(self) -> Around:
        design = self.setting.bed.design
        return Around(
            design.name, design.publisher.name, self.setting.note, self.setting.is_first_angle
        )


def _holds(sheets: tuple[Sheet, ...], key: str) -> bool:
    return any(sheet.key == key for sheet in sheets)
