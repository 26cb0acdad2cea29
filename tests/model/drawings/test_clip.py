"""Drawings cut off at a box, against points taken along what is drawn."""

from __future__ import annotations

import math
from itertools import pairwise

from hypothesis import example, given
from hypothesis import strategies as st

from model.cutting.record import Box
from model.drawings.clip import SIDES, clipped, holds
from model.drawings.paper import Point, Ring, Stroke, Text

BOX = Box(10.0, 20.0, 70.0, 50.0)
PLACE = st.tuples(st.floats(-20, 100), st.floats(-20, 100))
SAMPLES = 50
NEAR = 1e-6


@given(st.lists(PLACE, min_size=2, max_size=6))
@example([(0.0, 0.0), (0.0, 1.3e-287), (11.0, 21.0)])
def test_points_in_the_box_stay_and_others_go(points: list[Point]) -> None:
    kept = [each for each in clipped([Stroke(tuple(points))], BOX) if isinstance(each, Stroke)]
    pieces = [pair for each in kept for pair in pairwise(each.points)]

    for start, end in pairwise(points):
        for n in range(SAMPLES + 1):
            at = between(start, end, n / SAMPLES)
            if depth(at) > NEAR:
                assert any(distance(at, *piece) < NEAR for piece in pieces), at
    for piece in pieces:
        assert all(depth(at) > -NEAR for at in piece)
        assert any(all(distance(at, *line) < NEAR for at in piece) for line in pairwise(points))


@given(PLACE, st.floats(0.5, 40))
def test_a_ring_is_cut_off_where_it_leaves_the_box(at: Point, radius: float) -> None:
    slack = radius * (1 - math.cos(math.pi / SIDES)) + NEAR  # chords of a circle of flats
    kept = list(clipped([Ring(at, radius)], BOX))
    pieces = [pair for each in kept if isinstance(each, Stroke) for pair in pairwise(each.points)]
    whole = [each for each in kept if isinstance(each, Ring)]

    assert whole in ([], [Ring(at, radius)])
    assert bool(whole) == all(depth(on(at, radius, n / 4)) >= 0 for n in range(4))
    for n in range(SAMPLES):
        place = on(at, radius, n / SAMPLES)
        if not whole and depth(place) > slack:
            assert any(distance(place, *piece) <= slack for piece in pieces)
    assert all(depth(end) > -NEAR for piece in pieces for end in piece)


def test_words_stay_where_their_anchor_does() -> None:
    inside, outside = (Text((x, 30.0), "B1", 2.0) for x in (20.0, 80.0))

    assert list(clipped([inside, outside], BOX)) == [inside]
    assert holds(BOX, (10.0, 50.0)) and not holds(BOX, (9.999, 50.0))


def between(start: Point, end: Point, share: float) -> Point:
    return (start[0] + share * (end[0] - start[0]), start[1] + share * (end[1] - start[1]))


def on(at: Point, radius: float, turn: float) -> Point:
    angle = 2 * math.pi * turn
    return (at[0] + radius * math.cos(angle), at[1] + radius * math.sin(angle))


def depth(at: Point) -> float:
    """How far inside the box a point lies; less than nothing outside."""
    return min(at[0] - BOX.x0, BOX.x1 - at[0], at[1] - BOX.y0, BOX.y1 - at[1])


def distance(at: Point, start: Point, end: Point) -> float:
    """From a line between two points."""
    squared = math.dist(start, end) ** 2
    if squared == 0.0:  # also of a length of 1e-200, whose square is less than any float
        return math.dist(at, start)
    along = (at[0] - start[0]) * (end[0] - start[0]) + (at[1] - start[1]) * (end[1] - start[1])
    return math.dist(at, between(start, end, min(max(along / squared, 0.0), 1.0)))
