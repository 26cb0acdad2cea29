"""A page is there before the list of all pages is: what it shows is what the set has in the end."""

from __future__ import annotations

import re
from dataclasses import replace

import pytest

from model.bed import Design, solve
from model.drawings.paper import Item, Text
from model.planset import part_pages
from model.planset.book import PlanSet
from model.planset.page import Page

# Four legs and a deck: little to plan, so that the test is quick.
PLAIN = Design(choices={"left.drawers": 0, "right.drawers": 0})


@pytest.fixture(scope="module")
def last() -> PlanSet:
    return PlanSet(solve(PLAIN))


@pytest.fixture(scope="module")
def whole() -> PlanSet:
    """The same bed made wider."""
    return PlanSet(solve(PLAIN.with_choices({"mattress_width": 1400.0})))


def unnumbered(page: Page) -> list[Item]:
    """All but the number at its foot, which is that of the list before."""
    return [
        item
        for item in page.drawing.items
        if not (isinstance(item, Text) and re.fullmatch(r"\d+ / \d+", item.words))
    ]


@pytest.mark.parametrize("key", ["ends", "part/H1", "parts", "steps/3"])
def test_an_early_page_is_the_one_of_the_whole_set(last: PlanSet, whole: PlanSet, key: str) -> None:
    at = next(k for k, sheet in enumerate(whole.sheets) if sheet.key == key)

    early = PlanSet(whole.setting.bed).early(key, last)

    assert early is not None
    assert unnumbered(early) == unnumbered(whole.page(at))
    was = next(k for k, sheet in enumerate(last.sheets) if sheet.key == key)
    if key in ("ends", "parts"):  # the others tell of no size that has moved
        assert unnumbered(early) != unnumbered(last.page(was))


def test_marks_that_share_a_page_do_so_early_even_where_they_no_longer_have_room() -> None:
    """Taller posts, and marks that the set before did not have."""
    low = PlanSet(solve(PLAIN))
    tall = solve(PLAIN.with_choices({"head.height": 1500.0, "left.drawers": 2}))

    for sheet in low.chapter(part_pages.sheets):
        early = PlanSet(tall).early(sheet.key, low)
        assert early is None or early.drawing.items
    marks = {mark.mark for mark in tall.marks}
    told = replace(PlanSet(tall).setting, before=low.setting)
    assert {part_pages.key_of(told, mark) for mark in marks} <= {f"part/{mark}" for mark in marks}


def test_what_waits_for_cutting_plans_has_no_early_page(last: PlanSet) -> None:
    fresh = PlanSet(last.setting.bed)

    assert all(fresh.early(key, last) is None for key in ("buying", "boards", "work/2"))
    assert fresh.early("part/Z9", last) is None


def test_the_cover_needs_no_list(last: PlanSet) -> None:
    assert PlanSet(last.setting.bed).early_cover() == last.page(0)
