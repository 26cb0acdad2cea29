"""The bed taken apart: every mark is shown on the page of its assembly, and the page is used."""

from __future__ import annotations

import math
from itertools import combinations

import numpy as np
import pytest

from model.drawings.measures import inked
from model.drawings.paper import Ring, Stroke
from model.drawings.views.gaze import FOOT_LEFT
from model.planset.exploded import _are_hidden
from model.planset.page import Page
from tests.model.building.beds import GUEST, QUEEN
from tests.model.planset.sets import bed_of, plan_of

DEMOS = (GUEST, "split_king_foot_drawers")


def exploded(name: str) -> dict[str, Page]:
    plan = plan_of(name)
    return {
        sheet.key: plan.page(at)
        for at, sheet in enumerate(plan.sheets) if sheet.key.startswith("exploded")
    }  # fmt: skip


@pytest.fixture(scope="module", params=DEMOS)
def pages(request: pytest.FixtureRequest) -> tuple[str, dict[str, Page]]:
    return request.param, exploded(request.param)


def dots(page: Page) -> dict[str, tuple[float, float]]:
    """Where the leader of each mark ends."""
    return {
        item.about: item.at for item in page.drawing.items
        if isinstance(item, Ring) and item.radius < 1 and item.about
    }  # fmt: skip


def test_every_mark_has_its_leader_on_a_page_of_its_assembly(
    pages: tuple[str, dict[str, Page]],
) -> None:
    name, drawn = pages
    for mark in bed_of(name).marks:
        own = drawn.get(f"exploded/{mark.assembly.replace(' ', '-')}", drawn["exploded"])
        assert mark.mark in dots(own), f"{mark.mark} {mark.name}"


def test_no_two_leaders_end_in_one_dot(pages: tuple[str, dict[str, Page]]) -> None:
    for key, page in pages[1].items():
        for (one, at), (other, to) in combinations(dots(page).items(), 2):
            assert math.dist(at, to) > 1.0, f"{key}: {one} and {other}"


def test_the_pictures_fill_the_width_or_the_height_of_their_page(
    pages: tuple[str, dict[str, Page]],
) -> None:
    for key, page in pages[1].items():
        points = [
            point for item in inked(page.drawing.items)
            if isinstance(item, Stroke) and item.about.startswith("piece/") for point in item.points
        ]  # fmt: skip
        wide, high = (max(p[k] for p in points) - min(p[k] for p in points) for k in (0, 1))
        # Margins and balloons take 17 + 12 mm at each side, the head and the foot 24 more.
        assert wide >= 0.9 * (page.drawing.width - 58) or high >= 0.9 * (
            page.drawing.height - 82
        ), key


def test_a_side_is_shown_without_the_other(pages: tuple[str, dict[str, Page]]) -> None:
    name, drawn = pages
    rails = [mark for mark in bed_of(name).marks if mark.name == "cleat"]
    shown = {
        item.about for item in drawn["exploded/left-side"].drawing.items
        if isinstance(item, Stroke) and item.about.startswith("piece/")
    }  # fmt: skip
    for mark in rails:
        assert len(mark.pieces) == 2
        assert len([each for each in shown if each.startswith(f"piece/{mark.mark}-")]) == 1


def test_panels_of_which_no_edge_is_seen_are_named_on_the_whole_bed() -> None:
    """Their edges lie in grooves: the leaders end within what is seen of them."""
    bed, whole = bed_of(QUEEN), exploded(QUEEN)["exploded"]
    names = {mark.mark for mark in bed.marks if mark.name in ("panel", "box bottom")}

    assert len(names) == 3
    assert names <= set(dots(whole))


def test_a_place_behind_another_piece_is_hidden() -> None:
    """Looked at from the left and from above, a wall at the left hides what lies behind it."""
    wall = (np.array([[0.0, 0.0, 0.0]]), np.array([[10.0, 1000.0, 1000.0]]))
    spots = np.array([[100.0, 500.0, 200.0], [-100.0, 500.0, 200.0], [100.0, 500.0, 5000.0]])

    assert _are_hidden(spots, FOOT_LEFT, *wall).tolist() == [True, False, False]
