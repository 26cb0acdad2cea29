"""Notes with leaders, and marks in balloons: none over another, no leader through words."""

from __future__ import annotations

import random
from itertools import combinations

import pytest

from model.cutting.record import Box
from model.drawings.dimensioning.balloons import Marked, balloons, radius_of
from model.drawings.dimensioning.notes import Note, notes_above
from model.drawings.paper import Item, Point, Ring, Stroke
from tests.checkers.words_on_paper import texts_that_overlap, words_with_lines_through

VIEW = Box(0, 0, 160, 20)


def test_notes_and_leaders_keep_clear_of_each_other() -> None:
    draw = random.Random(3)
    for _ in range(80):
        count = draw.randint(1, 6)
        notes = [
            Note((round(draw.uniform(0, 160), 1), 10.0), "2 × bolt hole ⌀ 7, 52 deep")
            for _ in range(count)
        ]

        items = notes_above(notes, VIEW, 0, 180).items

        assert texts_that_overlap(items) == []
        assert words_with_lines_through(items) == []


def test_a_note_keeps_within_the_room() -> None:
    found = notes_above([Note((158, 10), "groove 10 wide, 12 deep, full length")], VIEW, 0, 170)

    assert texts_that_overlap(found.items) == []
    strokes = [item for item in found.items if isinstance(item, Stroke)]
    assert strokes[0].points[0] == (158, 10)


def test_a_note_stands_above_what_is_taken() -> None:
    tall = Box(150, 0, 156, 40)

    found = notes_above([Note((140, 10), "groove 10 wide, 12 deep")], VIEW, 0, 180, [tall])

    assert found.top > 40


def _leaders(items: tuple[Item, ...]) -> list[tuple[Point, Point]]:
    return [(i.points[0], i.points[-1]) for i in items if isinstance(i, Stroke)]


def _side(a: Point, b: Point, c: Point) -> float:
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])


def _cross(one: tuple[Point, Point], other: tuple[Point, Point]) -> bool:
    (a, b), (c, d) = one, other
    apart = 1e-9
    return _side(a, b, c) * _side(a, b, d) < -apart and _side(c, d, a) * _side(c, d, b) < -apart


@pytest.mark.parametrize("count", [1, 7, 24, 40])
def test_balloons_do_not_touch_and_their_leaders_do_not_cross(count: int) -> None:
    draw = random.Random(count)
    view = Box(0, 0, 150, 90)
    marked = [Marked((draw.uniform(2, 148), draw.uniform(2, 88)), f"B{k}") for k in range(count)]

    items = balloons(marked, view)

    radius = radius_of(marked)
    rings = [item for item in items if isinstance(item, Ring) and item.radius == radius]
    assert len(rings) == count
    for one, other in combinations(rings, 2):
        apart = ((one.at[0] - other.at[0]) ** 2 + (one.at[1] - other.at[1]) ** 2) ** 0.5
        assert apart > 2 * radius
    assert not any(_cross(a, b) for a, b in combinations(_leaders(items), 2))
    assert all(
        not (view.x0 - radius < r.at[0] < view.x1 + radius)
        or not (view.y0 - radius < r.at[1] < view.y1 + radius)
        for r in rings
    )


def test_balloons_keep_off_what_is_taken() -> None:
    taken = Box(-40, -40, 190, -0.5)

    items = balloons([Marked((75, 5), "B1")], Box(0, 0, 150, 90), [taken])

    ring = next(i for i in items if isinstance(i, Ring) and i.blank)
    assert ring.at[1] - ring.radius > -0.5
