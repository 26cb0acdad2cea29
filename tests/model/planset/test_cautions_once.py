"""A caution is told in full once, where it is read first: told on every page it is read on none."""

from __future__ import annotations

import pytest

from model.building.cautions import caution_sheet
from model.drawings.paper import Text
from model.planset import word_pages, work_pages
from model.planset.book import PlanSet
from tests.model.building.beds import GUEST, QUEEN, demo


def words(made: PlanSet, chapter: object) -> str:
    sheets = made.chapter(chapter)  # type: ignore[arg-type]
    pages = (made.page(made.sheets.index(each)) for each in sheets)
    return " ".join(i.words for page in pages for i in page.drawing.items if isinstance(i, Text))


@pytest.mark.parametrize("name", [QUEEN, GUEST])
def test_cautions_stand_in_full_at_the_front_and_not_again_at_the_machines(name: str) -> None:
    made = PlanSet(demo(name))
    told = [each.text for group in caution_sheet(demo(name)) for each in group.cautions]

    front, machines = words(made, word_pages.use), words(made, work_pages.sheets)

    assert len(told) > 6
    assert all(text in front for text in told)
    assert not any(text in machines for text in told)
    assert "How to use this set" in machines
