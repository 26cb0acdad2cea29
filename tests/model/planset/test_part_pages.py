"""The pages of parts: what shares one is drawn no smaller for it."""

from __future__ import annotations

import re

import pytest

from model.drawings.measures import inked
from model.drawings.paper import Text
from tests.model.building.beds import GUEST
from tests.model.planset.sets import bed_of, pages_of

# Source: ISO 5455, from memory; 1:2 is large enough for any part.
STEPS = (1, 2, 5, 10, 20, 50)
DIMENSIONS = 40.0  # mm on paper that rows of sizes may take on both sides of a view
VIEW = re.compile(r"(?:Face|Back|Upper edge|Lower edge)  1 : (\d+)")


@pytest.mark.parametrize("name", [GUEST, "no drawers"])
def test_parts_on_shared_pages_are_drawn_as_large_as_the_page_is_wide(name: str) -> None:
    marks = {f"{mark.mark} {mark.name}": mark for mark in bed_of(name).marks}
    for page in pages_of(name):
        if not page.key.startswith("part/"):
            continue
        on_page = [marks[each] for each in page.title.split(" and ")]
        if len(on_page) < 2:  # that one may need the height of its page for its views
            continue
        words = [item.words for item in inked(page.drawing.items) if isinstance(item, Text)]
        scales = {int(found[1]) for each in words if (found := VIEW.fullmatch(each))}
        assert len(scales) <= 2
        for mark in on_page:
            if not mark.features or mark.width > mark.length:
                continue
            room = page.drawing.width - 34 - DIMENSIONS
            fitting = next(n for n in STEPS if n >= 2 and mark.length / n <= room)
            assert any(n <= fitting for n in scales), page.key
