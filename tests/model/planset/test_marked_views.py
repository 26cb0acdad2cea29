"""The marks of pieces on elevations and plan."""

from __future__ import annotations

import re

import pytest

from model.drawings.paper import Text
from model.drawings.views.gaze import BACK, FRONT, LEFT, PLAN, RIGHT
from model.drawings.views.view import seen
from model.planset.marked_views import marks_of
from model.planset.outside import outside
from model.planset.page import Page
from tests.checkers.words_on_paper import words_with_lines_through
from tests.model.building.beds import GUEST, QUEEN
from tests.model.planset.sets import bed_of, pages_of

NAMES = (QUEEN, GUEST, "no drawers")
KEYS = ("ends", "head", "sides", "right", "plan")
SECTIONS = ("sections", "sections/2", "sections/3")


def told(page: Page) -> set[str]:
    return {
        item.words
        for item in page.drawing.items
        if isinstance(item, Text) and re.fullmatch(r"[A-Z]\d+", item.words)
    }


@pytest.mark.parametrize("name", NAMES)
def test_posts_and_rails_are_named_where_they_are_seen(name: str) -> None:
    by_name = {(mark.name, mark.assembly): mark.mark for mark in bed_of(name).marks}
    pages = [page for page in pages_of(name) if page.key in KEYS]
    every = set().union(*(told(page) for page in pages))

    for key in (("post", "headboard"), ("post", "footboard"), ("end rail", "headboard"),
                ("end rail", "footboard")):  # fmt: skip
        assert by_name[key] in every, key


@pytest.mark.parametrize("name", NAMES)
def test_no_line_runs_through_a_mark(name: str) -> None:
    for page in pages_of(name):
        if page.key in (*KEYS, *SECTIONS):
            assert not told(page) & set(words_with_lines_through(page.drawing.items)), page.key


@pytest.mark.parametrize("gaze", [FRONT, BACK, LEFT, RIGHT, PLAN])
def test_a_mark_stands_on_a_piece_that_no_other_hides(gaze: object) -> None:
    """Of all boxes over its place, that of its own piece is the nearest to the eye."""
    bed = bed_of(QUEEN)
    scene = outside(bed)
    marks = marks_of(bed, seen(scene, gaze, hidden=False), scene.pieces.tolist())  # type: ignore[arg-type]

    places = [(row, at) for row in range(len(scene)) for at in marks.places(row).tolist()]
    assert places
    for row, (x, y) in places:
        over = [
            float(marks.high[n, 2])
            for n in range(len(scene))
            if marks.low[n, 0] < x < marks.high[n, 0] and marks.low[n, 1] < y < marks.high[n, 1]
        ]
        assert marks.high[row, 2] >= max(over) - 0.01


def test_of_a_bed_cut_open_what_lies_behind_is_named() -> None:
    """The headboard seen from a cut through the drawers, and nothing of the footboard."""
    every = set().union(*(told(page) for page in pages_of(QUEEN) if page.key == "sections"))

    assert {"H1", "H2", "H4"} <= every
    assert not any(mark.startswith("F") for mark in every)
