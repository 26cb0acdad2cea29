"""The pictures of build steps: what is bought for a step is found in its picture."""

from __future__ import annotations

import re

import pytest

from model.drawings.measures import inked
from model.drawings.paper import Text
from model.planset.page import Page
from tests.model.building.beds import GUEST
from tests.model.planset.sets import pages_of


def words(page: Page) -> list[str]:
    return [item.words for item in inked(page.drawing.items) if isinstance(item, Text)]


@pytest.mark.parametrize("name", [GUEST, "no drawers"])
def test_bought_things_have_a_letter_in_list_and_picture(name: str) -> None:
    listed: list[str] = []
    for page in pages_of(name):
        if page.key.partition("/")[0] == "steps":
            told = words(page)
            own = [found[1] for each in told if (found := re.match(r"([a-z]): \d+ ×", each))]
            assert all(told.count(letter) >= own.count(letter) for letter in own), page.key
            listed += own
    assert len(listed) >= 4 and "b" in listed
