"""Any part of any bed can be cut from its drawing, as read back from its printed words."""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from model.bed import Bed, solve
from model.drawings.dimensioning.told import Told
from model.drawings.part_sheet.sheet import PartSheet, part_sheet
from model.errors import BadInput, CannotBuild
from model.parts.marks import Mark
from tests.checkers import part_drawings
from tests.checkers.words_on_paper import (
    texts_that_overlap,
    words_out_of_order,
    words_with_lines_through,
)
from tests.properties.designs import random_design

BEDS = 40
PAGE = (180.0, 240.0)


@pytest.fixture(scope="module")
def beds() -> list[Bed]:
    found: list[Bed] = []
    seed = 0
    while len(found) < BEDS:
        seed += 1
        try:
            found.append(solve(random_design(seed)))
        except (BadInput, CannotBuild):
            continue
    return found


@pytest.fixture(scope="module")
def sheets(beds: list[Bed]) -> list[tuple[str, str, Mark, PartSheet]]:
    return list(_drawn(beds))


def _drawn(beds: list[Bed]) -> Iterator[tuple[str, str, Mark, PartSheet]]:
    for bed in beds:
        unit = bed.design.value("shown_unit")
        for mark in bed.marks:
            name = f"{bed.design.name}, {mark.mark} {mark.name}"
            yield name, unit, mark, part_sheet(mark, Told(unit), *PAGE)


Sheets = list[tuple[str, str, Mark, PartSheet]]


def test_every_part_fits_its_page(sheets: Sheets) -> None:
    assert [name for name, _, _, sheet in sheets if not sheet.fits] == []


def test_words_stand_in_the_order_of_their_spans(sheets: Sheets) -> None:
    for name, _, _, sheet in sheets:
        assert list(words_out_of_order(sheet.drawing.items)) == [], name


def test_no_words_lie_on_words_or_lines(sheets: Sheets) -> None:
    for name, _, _, sheet in sheets:
        assert texts_that_overlap(sheet.drawing.items) == [], name
        assert words_with_lines_through(sheet.drawing.items) == [], name


def test_every_cut_and_hole_is_told_with_its_sizes_and_place(sheets: Sheets) -> None:
    for name, unit, mark, sheet in sheets:
        items, scale = sheet.drawing.items, sheet.drawing.scale
        found = [
            *part_drawings.untold_cuts(mark.part, items, unit),
            *part_drawings.untold_holes(mark.part, items, unit),
            *part_drawings.untold_whole_sizes(mark.part, items, unit),
            *part_drawings.untold_places(mark.part, items, scale),
            *part_drawings.untold_heights(mark.part, items),
            *part_drawings.untold_depths(mark.part, items),
        ]
        assert found == [], name


def test_printed_chains_add_up_to_the_printed_whole(sheets: Sheets) -> None:
    for name, unit, _, sheet in sheets:
        assert list(part_drawings.sums_that_fail(sheet.drawing.items, unit)) == [], name
