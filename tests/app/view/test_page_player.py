"""A page on the screen and on paper is the page that its PDF file shows.

The file is painted by another program (pypdfium2); both pictures are compared in squares of 1 mm,
in which the edge of a letter or line may fall a little otherwise but none may be missing or stand
elsewhere.
"""

from __future__ import annotations

import io
import math
from collections.abc import Iterator
from dataclasses import replace

import numpy as np
import numpy.typing as npt
import pypdfium2
import pytest
from PIL import Image
from PySide6.QtGui import QImage, QPainter
from pytestqt.qtbot import QtBot

from app.view.page_player import play_page, prepared_page
from model.bed import Design, solve
from model.cutting.record import Box
from model.drawings.paper import Drawing, Fill, Hatch, Item, Measure, Picture, Ring, Stroke, Text
from model.exports.pdf import pdf_file
from model.planset import elevations, label_pages, part_pages, parts_list
from model.planset.book import PlanSet
from model.planset.frame import framed
from model.planset.page import LETTER, Page
from model.publisher import Publisher, logo_of

Grey = npt.NDArray[np.float64]
SCALE = 6.0  # px to a mm
SQUARE = 6  # px
# Between the two painters' smoothing of one stroke; a missing line of 0.25 mm alone is 64 in the
# squares that it crosses, a missing or shifted word more.
GIVE = 60


def squares(picture: Grey) -> Grey:
    """Mean grey of each square."""
    high, wide = (side // SQUARE * SQUARE for side in picture.shape)
    cut = picture[:high, :wide].reshape(high // SQUARE, SQUARE, wide // SQUARE, SQUARE)
    return cut.mean(axis=(1, 3))


def painted(page: Page, **how: bool) -> Grey:
    drawing = page.drawing
    # The other painter makes a page a whole number of px by stretching it a little.
    size = (math.ceil(drawing.width * SCALE), math.ceil(drawing.height * SCALE))
    picture = QImage(*size, QImage.Format.Format_Grayscale8)
    picture.fill("white")
    painter = QPainter(picture)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.scale(size[0] / drawing.width, size[1] / drawing.height)
    play_page(painter, prepared_page(drawing), **how)
    painter.end()
    lines = np.frombuffer(picture.constBits(), np.uint8).reshape(size[1], picture.bytesPerLine())
    return lines[:, : size[0]].astype(float)


def filed(page: Page) -> Grey:
    file = pypdfium2.PdfDocument(pdf_file([page], "page"))
    try:
        picture = file[0].render(scale=SCALE * 25.4 / 72).to_pil().convert("L")
        return np.asarray(picture, float)
    finally:
        file.close()


def differ(one: Grey, other: Grey) -> float:
    """The most by which two squares of the same place differ."""
    a, b = squares(one), squares(other)
    high, wide = min(a.shape[0], b.shape[0]), min(a.shape[1], b.shape[1])
    return float(abs(a[:high, :wide] - b[:high, :wide]).max())


def page_of(*items: Item) -> Page:
    drawing = Drawing(width=LETTER.width, height=LETTER.height, scale=1.0, items=items)
    return Page(key="page", title="Page", drawing=drawing)


@pytest.fixture(scope="module")
def planset() -> PlanSet:
    file = io.BytesIO()
    Image.new("RGB", (300, 120), (40, 90, 60)).save(file, "PNG")
    shop = Publisher(
        name="נגריית אלון · نجارة الحي", line="Ålesund ½ × 3", logo=logo_of(file.getvalue())
    )
    plain = Design(choices={"left.drawers": 0, "right.drawers": 0})
    return PlanSet(solve(replace(plain, name="Žofie's bed", publisher=shop)))


def chapters(planset: PlanSet) -> Iterator[Page]:
    yield planset.early_cover()
    for chapter in (elevations, parts_list, part_pages, label_pages):
        sheets = chapter.sheets(planset.setting)
        for at in range(min(len(sheets), 3)):
            yield framed(sheets, at, planset.setting.paper, planset._around)


def test_every_kind_of_page_is_the_one_that_its_file_shows(qtbot: QtBot, planset: PlanSet) -> None:
    for page in chapters(planset):
        shown = painted(page)

        assert shown.mean() < 254  # there is something on it
        assert differ(shown, filed(page)) < GIVE, page.key


def test_letters_as_outlines_are_those_that_are_set(qtbot: QtBot, planset: PlanSet) -> None:
    page = planset.early_cover()

    assert differ(painted(page, as_outlines=True), filed(page)) < GIVE


def test_a_page_with_one_word_more_differs_by_more(qtbot: QtBot) -> None:
    words = Text((60.0, 60.0), "27 3/8", 2.0)
    with_words, without = page_of(words, Text((60.0, 80.0), "x", 2.0)), page_of(words)

    assert differ(painted(without), filed(with_words)) > GIVE


TURNED = Text((60.0, 60.0), 'up 12"', 2.0, turned=True)


@pytest.mark.parametrize(
    "item",
    [
        Stroke(((20.0, 20.0), (120.0, 60.0), (120.0, 20.0)), "wide"),
        Stroke(((20.0, 20.0), (120.0, 60.0)), "hidden"),
        Stroke(((20.0, 20.0), (120.0, 60.0)), "centre"),
        Ring((60.0, 60.0), 20.0, "narrow"),
        Hatch(((20.0, 20.0), (80.0, 20.0), (80.0, 60.0)), 2.0),
        Fill(((20.0, 20.0), (80.0, 20.0), (80.0, 60.0)), 0.3),
        Text((60.0, 60.0), "H1 ⌀ 5/16\" ☐", 2.0),
        Text((60.0, 60.0), "Left", 9.0, "left", bold=True),  # large: set as outlines
        TURNED,
        Measure((20.0, 20.0), (120.0, 20.0), 40.0, False, "27 3/8\"", 695.3),
    ],
)  # fmt: skip
def test_every_kind_of_item_is_painted_as_in_its_file(qtbot: QtBot, item: Item) -> None:
    page = page_of(item)

    shown = painted(page)

    assert (shown < 128).any() or isinstance(item, Fill)
    assert differ(shown, filed(page)) < GIVE


def test_what_comes_later_lies_above(qtbot: QtBot) -> None:
    line = Stroke(((20.0, 60.0), (120.0, 60.0)), "wide")
    blank = Ring((60.0, 60.0), 20.0, "narrow", blank=True)
    over, under = page_of(line, blank), page_of(blank, line)

    at = (round((LETTER.height - 60.0) * SCALE), round(60.0 * SCALE))
    assert painted(over)[at] > 250
    assert painted(under)[at] < 10
    assert differ(painted(over), filed(over)) < GIVE


def test_a_line_is_never_thinner_on_the_screen_than_it_can_be_seen(qtbot: QtBot) -> None:
    page = page_of(Stroke(((20.0, 60.0), (120.0, 60.0)), "fine"))
    size = (round(LETTER.width), round(LETTER.height))  # 1 px to a mm

    def darkest(thinnest: float) -> int:
        picture = QImage(*size, QImage.Format.Format_Grayscale8)
        picture.fill("white")
        painter = QPainter(picture)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        play_page(painter, prepared_page(page.drawing), thinnest)
        painter.end()
        return min(picture.pixelColor(70, y).value() for y in range(size[1]))

    assert darkest(0.75) < darkest(0.0) - 60


def test_a_picture_fills_its_box(qtbot: QtBot, planset: PlanSet) -> None:
    logo = planset.setting.bed.design.publisher.logo
    page = page_of(Picture(Box(50.0, 50.0, 100.0, 70.0), logo))

    assert differ(painted(page), filed(page)) < GIVE
