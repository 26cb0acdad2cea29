"""The cover: it tells what the bed is, and warns of one that does not hold."""

from __future__ import annotations

import io
from dataclasses import replace

import pytest
from PIL import Image, ImageDraw

from model.bed import Bed
from model.checks.record import Finding, Verdict
from model.drawings.letters import text_box
from model.drawings.paper import Picture, Stroke, Text, touches
from model.planset.cover import LOGO_HIGH, LOGO_WIDE, MOST_FINDINGS, sheets
from model.planset.page import LETTER
from model.planset.setting import Setting
from model.planset.sheet import Content, room_on
from model.publisher import Publisher
from tests.model.planset.sets import bed_of

BED = "loft_single"
SHOP = Publisher(name="W" * 120, line="Lumber Lane " * 10)


def cover(bed: Bed) -> Content:
    (sheet,) = sheets(Setting(bed=bed))
    return sheet.draw(room_on(LETTER, sheet.is_bare))


def named(name: str, publisher: Publisher) -> Bed:
    bed = bed_of(BED)
    return replace(bed, design=replace(bed.design, name=name, publisher=publisher))


def failing(count: int) -> Bed:
    """Findings are worked out once for a bed: these take their place."""
    bed = replace(bed_of(BED))
    found = tuple(
        Finding(title=f"Check {n}", reason=f"It is {n} short.", value=0.0, limit=1.0, margin=-1.0,
                verdict=Verdict.FAILS)
        for n in range(count)
    )  # fmt: skip
    bed.__dict__["findings"] = found
    return bed


def texts(content: Content) -> list[Text]:
    return [item for item in content.items if isinstance(item, Text)]


def told(content: Content) -> str:
    return " ".join(text.words for text in texts(content))


@pytest.mark.parametrize("count", [1, 3, MOST_FINDINGS, MOST_FINDINGS + 5])
def test_failing_checks_are_told(count: int) -> None:
    words = told(cover(failing(count)))

    assert "Do not build it before" in words
    for n in range(min(count, MOST_FINDINGS)):
        assert f"Check {n}: It is {n} short." in words
    more = count - MOST_FINDINGS
    assert (f"and {more} more: see Checks." in words) == (more > 0)


def test_a_bed_that_holds_is_not_warned_of() -> None:
    assert "Do not build" not in told(cover(failing(0)))


@pytest.mark.parametrize(
    "name",
    ["Guest bed", "W" * 120, "Very wide bed " * 8, "Žofie’s ﬁrst bed, Łódź", "מיטת אורחים",
     "سرير الأطفال", "Wunder-Wohn-Wald-Werk-Bett" * 4, "a\u00a0b" * 40, "床" * 120],
)  # fmt: skip
def test_any_name_has_room_and_lies_on_nothing(name: str) -> None:
    content = cover(named(name, replace(SHOP, logo=logo(4000, 20))))
    room = room_on(LETTER, is_bare=True)
    boxes = [text_box(text) for text in texts(content)]
    boxes += [item.box for item in content.items if isinstance(item, Picture)]

    for at, box in enumerate(boxes):
        assert box.x0 >= room.x0 - 1e-6 and box.x1 <= room.x1 + 1e-6, texts(content)[at].words
        assert box.y0 >= room.y0 - 1.0 and box.y1 <= room.y1 + 1.0
        assert not any(touches(box, other) for other in boxes[at + 1 :]), texts(content)[at].words


def test_the_picture_lies_on_no_words() -> None:
    content = cover(named("Very wide bed " * 8, SHOP))
    ink = [item for item in content.items if isinstance(item, Stroke) and item.about]
    assert ink
    high = max(y for stroke in ink for _, y in stroke.points)
    low = min(y for stroke in ink for _, y in stroke.points)
    for text in texts(content):
        box = text_box(text)
        assert box.y0 > high or box.y1 < low, text.words


@pytest.mark.parametrize(
    ("wide", "high"), [(1, 1), (4000, 20), (20, 4000), (300, 100), (1200, 1199)]
)
def test_a_logo_of_any_size_keeps_its_proportions_in_its_room(wide: int, high: int) -> None:
    (picture,) = (
        item for item in cover(named("Bed", Publisher(logo=logo(wide, high)))).items
        if isinstance(item, Picture)
    )  # fmt: skip
    across, up = picture.box.x1 - picture.box.x0, picture.box.y1 - picture.box.y0
    with Image.open(io.BytesIO(picture.file)) as made:
        assert across / up == pytest.approx(made.width / made.height)

    assert across == pytest.approx(LOGO_WIDE) or up == pytest.approx(LOGO_HIGH)
    assert across <= LOGO_WIDE + 1e-9 and up <= LOGO_HIGH + 1e-9
    assert picture.box.x1 == LETTER.width - 17.0


def logo(wide: int, high: int) -> bytes:
    """A picture with a clear ground, fit for a page as a design takes it in."""
    image = Image.new("RGBA", (wide, high), (0, 0, 0, 0))
    ImageDraw.Draw(image).rectangle((0, 0, wide // 2, high // 2), fill=(0, 0, 0, 255))
    file = io.BytesIO()
    image.save(file, "PNG")
    return Publisher().with_logo(file.getvalue()).logo
