"""The pictures of build steps: what is bought for a step is found in its picture."""

from __future__ import annotations

import re

import pytest

from model.drawings.measures import inked
from model.drawings.paper import Text
from model.planset.page import Page
from model.planset.sheet import room_on
from tests.model.building.beds import GUEST, QUEEN
from tests.model.planset.sets import pages_of, plan_of


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


@pytest.mark.parametrize("name", [GUEST, QUEEN, "no drawers"])
def test_no_step_is_torn_over_a_page_turn(name: str) -> None:
    """All that is said of a step stands on the page of its heading, with its picture."""
    plan = plan_of(name)
    at = [k for k, sheet in enumerate(plan.sheets) if sheet.key.partition("/")[0] == "steps"]
    pages = [words(page) for page in plan.pages(at)]

    for number, step in enumerate(plan.setting.steps, 1):
        head = f"{number} {step.title}"[:40]
        (own,) = (told for told in pages if any(each.startswith(head) for each in told))
        for sentence in (*step.sentences, *step.settings, *step.checks, *step.cautions):
            assert " ".join(sentence.split())[:40] in " ".join(own), step.title


@pytest.mark.parametrize("name", [GUEST, QUEEN, "no drawers"])
def test_steps_stay_within_the_frame_of_their_page(name: str) -> None:
    plan = plan_of(name)
    room = room_on(plan.setting.paper)
    at = [k for k, sheet in enumerate(plan.sheets) if sheet.key.partition("/")[0] == "steps"]
    for k in at:
        content = plan.sheets[k].draw(room)
        texts = [item for item in inked(content.items) if isinstance(item, Text)]
        assert min(item.at[1] for item in texts) > room.y0
        assert max(item.at[1] for item in texts) < room.y1
