"""Labels: one for every piece, layer and strip, each in a place of its own."""

from __future__ import annotations

import pytest

from model.drawings.letters import text_box
from model.drawings.paper import Text
from model.planset.label_pages import HIGH, KEY, sheets
from model.planset.setting import Setting
from model.planset.sheet import room_on
from model.shop.plans import plans
from tests.model.planset.sets import BEDS, bed_of


@pytest.mark.parametrize("name", BEDS)
def test_there_is_one_label_for_every_piece_of_wood(name: str) -> None:
    bed = bed_of(name)
    told = [text.words for page in pages(name) for text in page if text.bold and "-" in text.words]

    assert [name for name in told if "/" not in name] == [
        f"{mark.mark}-{n}" for mark in bed.marks for n in range(1, mark.quantity + 1)
    ]


@pytest.mark.parametrize("name", BEDS)
def test_there_is_one_label_for_every_layer_and_strip_as_the_plans_name_it(name: str) -> None:
    """Layers of posts are sawn, milled and glued before there is a post to stick a label on."""
    bed = bed_of(name)
    told = [text.words for page in pages(name) for text in page if text.bold and "-" in text.words]
    planned = {
        placed.name
        for plan in plans(bed)
        for layout in plan.plan.layouts
        for placed in layout.placed
        if "/" in placed.name
    }

    assert {name for name in told if "/" in name} == planned


@pytest.mark.parametrize("name", ["no drawers", "twelve drawers"])
def test_each_stays_in_its_own_place(name: str) -> None:
    room = room_on(Setting(bed=bed_of(name)).paper)
    for page in pages(name):
        for text in page:
            box = text_box(text)
            wide = (room.x1 - room.x0) / 3
            left = room.x0 + (text.at[0] - room.x0) // wide * wide
            top = room.y1 - (room.y1 - text.at[1]) // HIGH * HIGH
            assert left < box.x0 and box.x1 < left + wide, text.words
            assert top - HIGH < box.y0 and box.y1 < top, text.words
        places = [text.at for text in page]
        assert len(set(places)) == len(places)


def test_pages_after_the_first_belong_to_it() -> None:
    first, *others = sheets(Setting(bed=bed_of("twelve drawers")))

    assert (first.key, first.chapter) == (KEY, "")
    assert others and {each.chapter for each in others} == {KEY}


def pages(name: str) -> list[list[Text]]:
    setting = Setting(bed=bed_of(name))
    room = room_on(setting.paper)
    return [
        [item for item in sheet.draw(room).items if isinstance(item, Text)]
        for sheet in sheets(setting)
    ]
