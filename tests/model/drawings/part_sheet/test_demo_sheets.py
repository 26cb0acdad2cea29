"""The drawing of every mark of the demos, read back from its printed words."""

from __future__ import annotations

from pathlib import Path

import pytest

from model.bed import Bed, solve
from model.designs import read
from model.drawings.dimensioning.told import Told
from model.drawings.measures import inked
from model.drawings.paper import Hatch, Ring, Stroke, Text
from model.drawings.part_sheet.sheet import PartSheet, part_sheet
from model.parts.marks import Mark
from tests.checkers import part_drawings
from tests.checkers.words_on_paper import texts_that_overlap, words_with_lines_through

DEMOS = sorted((Path(__file__).resolve().parents[4] / "resources" / "demos").glob("*.bedwright"))
PAGE = (180.0, 240.0)  # room on a page, mm
SMALLEST = 7 * 25.4 / 72 * 0.689  # capitals of letters of 7 pt: 0.689 is the font's own


@pytest.fixture(scope="module", params=DEMOS, ids=lambda path: path.stem)
def bed(request: pytest.FixtureRequest) -> Bed:
    return solve(read(request.param))


def drawn(bed: Bed, has_both: bool = False) -> list[tuple[Mark, PartSheet]]:
    told = Told(bed.design.value("shown_unit"), has_both)
    return [(mark, part_sheet(mark, told, *PAGE)) for mark in bed.marks]


def test_every_drawing_fits_its_page(bed: Bed) -> None:
    assert [mark.mark for mark, sheet in drawn(bed) if not sheet.fits] == []


@pytest.mark.parametrize("has_both", [False, True])
def test_no_words_lie_on_words_or_lines(bed: Bed, has_both: bool) -> None:
    for mark, sheet in drawn(bed, has_both):
        assert texts_that_overlap(sheet.drawing.items) == [], mark.mark
        assert words_with_lines_through(sheet.drawing.items) == [], mark.mark


def test_every_cut_and_hole_is_told_with_its_sizes_and_place(bed: Bed) -> None:
    unit = bed.design.value("shown_unit")
    for mark, sheet in drawn(bed):
        items, scale = sheet.drawing.items, sheet.drawing.scale
        found = [
            *part_drawings.untold_cuts(mark.part, items, unit),
            *part_drawings.untold_holes(mark.part, items, unit),
            *part_drawings.untold_whole_sizes(mark.part, items, unit),
            *part_drawings.untold_places(mark.part, items, scale),
            *part_drawings.untold_heights(mark.part, items),
            *part_drawings.untold_depths(mark.part, items),
        ]
        assert found == [], mark.mark


def test_printed_chains_add_up_to_the_printed_whole(bed: Bed) -> None:
    unit = bed.design.value("shown_unit")
    for mark, sheet in drawn(bed):
        assert list(part_drawings.sums_that_fail(sheet.drawing.items, unit)) == [], mark.mark


def test_letters_are_no_smaller_than_seven_points(bed: Bed) -> None:
    for _, sheet in drawn(bed):
        texts = (item for item in inked(sheet.drawing.items) if isinstance(item, Text))
        assert min(text.height for text in texts) >= SMALLEST


def test_three_widths_of_line_are_enough(bed: Bed) -> None:
    from model.drawings.paper import PEN_WIDTHS

    for _, sheet in drawn(bed):
        inks = list(inked(sheet.drawing.items))
        pens = {item.pen for item in inks if isinstance(item, (Stroke, Ring))}
        pens |= {"fine" for item in inks if isinstance(item, Hatch)}
        assert len({PEN_WIDTHS[pen] for pen in pens}) <= 3


def test_all_ink_lies_on_the_drawing(bed: Bed) -> None:
    for mark, sheet in drawn(bed):
        for item in inked(sheet.drawing.items):
            points = item.points if isinstance(item, Stroke) else ()
            for x, y in points:
                assert -0.6 <= x <= sheet.drawing.width + 0.6, mark.mark
                assert -0.6 <= y <= sheet.drawing.height + 0.6, mark.mark


def test_the_same_mark_gives_the_same_drawing(bed: Bed) -> None:
    again = solve(bed.design)

    assert [sheet for _, sheet in drawn(bed)] == [sheet for _, sheet in drawn(again)]
