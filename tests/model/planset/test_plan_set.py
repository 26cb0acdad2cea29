"""The plan set: what stands on its pages, for every kind of bed."""

from __future__ import annotations

import io
from collections.abc import Iterator
from itertools import combinations, pairwise

import pypdf
import pytest

from model.cutting.record import Box
from model.drawings.fonts import CAPITAL, unprintable
from model.drawings.letters import text_box
from model.drawings.measures import inked
from model.drawings.paper import Hatch, Ring, Stroke, Text, touches
from model.exports.pdf import pdf_file
from model.parts.marks import Mark
from model.planset.page import A4, LETTER, Page
from model.planset.setting import Setting
from model.shop.part_sizes import shown_sizes
from tests.model.building.beds import GUEST
from tests.model.planset.sets import BEDS, bed_of, pages_of, plan_of

SEVEN_POINTS = 7 * 25.4 / 72  # mm
EDGE = 10.0  # mm of paper that common printers leave bare (common practice, no source)
every_bed = pytest.mark.parametrize("name", BEDS)


def texts(page: Page) -> list[Text]:
    return [item for item in inked(page.drawing.items) if isinstance(item, Text)]


def words(page: Page) -> str:
    return "\n".join(text.words for text in texts(page))


@every_bed
def test_every_chapter_is_there(name: str) -> None:
    keys = {page.key for page in pages_of(name)}
    wanted = {
        *("cover", "contents", "use", "buying", "tools", "parts", "ends", "sides", "plan"),
        *("sections", "boards", "work", "exploded", "steps", "finish", "checks", "care", "labels"),
    }
    assert wanted <= keys
    assert len(keys) == len(pages_of(name)), "two pages have one key"


@every_bed
def test_each_mark_has_its_page_with_its_sizes_and_quantity(name: str) -> None:
    bed = bed_of(name)
    unit = bed.design.value("shown_unit")
    leads = {
        link.to for page in pages_of(name) if page.key.startswith("parts") for link in page.links
    }
    for mark in bed.marks:
        (own,) = (
            page for page in pages_of(name)
            if page.key.startswith("part/") and f"{mark.mark} {mark.name}" in page.title
        )  # fmt: skip
        told = words(own)
        assert " × ".join(shown_sizes(bed, mark, unit)[:3]) in told, mark.mark
        assert str(mark.quantity) in told.split()
        assert own.key in leads, f"no row of the parts list leads to {mark.mark}"


@every_bed
def test_links_lead_to_pages_of_the_set(name: str) -> None:
    keys = {page.key for page in pages_of(name)}
    for page in pages_of(name):
        assert {link.to for link in page.links} <= keys
        assert not page.chapter or page.chapter in keys


@every_bed
def test_no_words_are_smaller_than_seven_points(name: str) -> None:
    for page in pages_of(name):
        for text in texts(page):
            assert text.height / CAPITAL >= SEVEN_POINTS - 1e-6, (page.key, text.words)


@every_bed
def test_words_stay_on_the_paper(name: str) -> None:
    for page in pages_of(name):
        for text in texts(page):
            box = text_box(text)
            assert box.x0 > EDGE and box.x1 < page.drawing.width - EDGE, (page.key, text.words)
            assert box.y0 > EDGE and box.y1 < page.drawing.height - EDGE, (page.key, text.words)


@every_bed
def test_no_words_lie_on_others(name: str) -> None:
    assert list(overlaps(name)) == []


def overlaps(name: str) -> Iterator[tuple[str, str, str]]:
    for page in pages_of(name):
        boxes = [(inner(text), text.words) for text in texts(page)]
        for (one, said), (other, says) in combinations(sorted(boxes), 2):
            if one.x1 > other.x0 and touches(one, other):
                yield page.key, said, says


def inner(text: Text) -> Box:
    """The letters themselves: the box without its air."""
    box = text_box(text)
    air = 0.17 * 1.4 * text.height
    if text.turned:
        return Box(box.x0 + air, box.y0 + 0.15, box.x1 - air, box.y1 - 0.15)
    return Box(box.x0 + 0.15, box.y0 + air, box.x1 - 0.15, box.y1 - air)


@every_bed
def test_a_page_has_at_most_three_widths_of_line(name: str) -> None:
    alike = {"hidden": "narrow", "centre": "narrow"}
    for page in pages_of(name):
        pens = {item.pen for item in page.drawing.items if isinstance(item, Stroke | Ring)}
        fine = {"fine"} if any(isinstance(item, Hatch) for item in page.drawing.items) else set()
        assert len({alike.get(pen, pen) for pen in pens} | fine) <= 3


@every_bed
def test_every_letter_can_be_printed(name: str) -> None:
    for page in pages_of(name):
        assert not unprintable(words(page).replace("\n", " ")), page.key


def test_the_paper_is_what_was_chosen() -> None:
    sizes = {(page.drawing.width, page.drawing.height) for page in pages_of("no drawers")}
    assert sizes == {(A4.width, A4.height)}
    sizes = {(page.drawing.width, page.drawing.height) for page in pages_of("twelve drawers")}
    assert sizes == {(LETTER.width, LETTER.height)}


def test_the_contents_name_the_first_page_of_each_chapter() -> None:
    pages = pages_of(GUEST)
    (contents,) = (page for page in pages if page.key == "contents")
    told = [text.words for text in texts(contents)]
    pairs = set(pairwise(told))
    for number, page in enumerate(pages, 1):
        assert ((page.listed_as, str(number)) in pairs) == (not page.chapter)


def test_a_sheet_is_told_its_thickness_once() -> None:
    """The name of sheets ends in their thickness already."""
    boards = [page for page in pages_of(GUEST) if page.key.startswith("boards")]
    told = [text.words for page in boards for text in texts(page) if text.bold]
    assert any(words.endswith(" 12 mm") for words in told)
    assert not [words for words in told if words.endswith(" 12 mm, 12 mm")]


# ---------------------------------------------------------------- as it is written


def test_every_mark_is_found_in_the_file_with_its_sizes_in_both_units() -> None:
    bed = bed_of("no drawers")
    file = pdf_file(pages_of("no drawers"), plan_of("no drawers").title)
    told = "\n".join(page.extract_text() for page in pypdf.PdfReader(io.BytesIO(file)).pages)
    for mark in bed.marks:
        assert mark.mark in told
        assert " × ".join(shown_sizes(bed, mark, bed.design.value("shown_unit"))[:3]) in told
        assert all(Setting(bed=bed).size(float(side)) in told for side in sides(mark))


def sides(mark: Mark) -> tuple[float, float, float]:
    return float(mark.length), float(mark.width), float(mark.thickness)
