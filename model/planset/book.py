"""The plan set of a bed: which pages it has, in which order, and each of them when it is asked for.

The list of pages is cheap; a page is drawn when it is looked at, and kept.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterator
from functools import cached_property

from model.bed import Bed
from model.planset import (
    board_pages,
    buying,
    cover,
    elevations,
    label_pages,
    part_pages,
    parts_list,
    sections,
    step_pages,
    work_pages,
)
from model.planset.frame import Around, framed
from model.planset.page import Page
from model.planset.setting import Setting
from model.planset.sheet import Sheet

Chapter = Callable[[Setting], tuple[Sheet, ...]]

CHAPTERS: tuple[Chapter, ...] = (
    cover.sheets,
    buying.sheets,
    parts_list.sheets,
    elevations.sheets,
    sections.sheets,
    part_pages.sheets,
    board_pages.sheets,
    work_pages.sheets,
    step_pages.sheets,
    label_pages.sheets,
)


class PlanSet:
    """All pages of one bed's plan set."""

    def __init__(self, bed: Bed) -> None:
        self.setting = Setting(bed=bed)
        self._drawn: dict[int, Page] = {}

    @property
    def title(self) -> str:
        return f"{self.setting.bed.design.name}: plan set"

    @cached_property
    def sheets(self) -> tuple[Sheet, ...]:
        """The pages by key and title, in their order."""
        return tuple(sheet for chapter in CHAPTERS for sheet in chapter(self.setting))

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

    @cached_property
    def _around(self) -> Around:
        design = self.setting.bed.design
        return Around(
            design.name, design.publisher.name, self.setting.note, self.setting.is_first_angle
        )
