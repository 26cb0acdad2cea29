"""Strokes of a hatch, against lengths reckoned by hand."""

import math

import pytest

from model.cutting.record import Box
from model.drawings.hatching import hatch_strokes
from model.drawings.paper import Hatch, corners

SQUARE = corners(Box(0.5, 0.5, 10.5, 10.5))


def long(stroke: tuple[tuple[float, float], tuple[float, float]]) -> float:
    return math.dist(*stroke)


def test_level_strokes_run_from_edge_to_edge() -> None:
    strokes = hatch_strokes(Hatch(SQUARE, 2.0, angle=0.0))

    assert [round(start[1], 9) for start, _ in strokes] == [2.0, 4.0, 6.0, 8.0, 10.0]
    assert all(long(stroke) == pytest.approx(10.0) for stroke in strokes)


def test_slanting_strokes_cover_the_area_evenly() -> None:
    """Length of all strokes times their spacing is the area, but for the ends of the row."""
    strokes = hatch_strokes(Hatch(SQUARE, 0.05, angle=45.0))

    assert sum(long(stroke) for stroke in strokes) * 0.05 == pytest.approx(100.0, rel=0.01)


def test_a_hole_stays_free() -> None:
    hole = Box(3.0, 3.0, 6.0, 7.0)

    strokes = hatch_strokes(Hatch(SQUARE, 0.05, angle=45.0, holes=(corners(hole),)))

    assert sum(long(stroke) for stroke in strokes) * 0.05 == pytest.approx(88.0, rel=0.01)
    for (x0, y0), (x1, y1) in strokes:
        x, y = (x0 + x1) / 2, (y0 + y1) / 2
        assert not (hole.x0 < x < hole.x1 and hole.y0 < y < hole.y1)


def test_neighbours_run_on_in_each_other() -> None:
    one = hatch_strokes(Hatch(corners(Box(0, 0, 5, 10)), 2.0, angle=0.0))
    other = hatch_strokes(Hatch(corners(Box(5, 0, 9, 10)), 2.0, angle=0.0))

    assert [start[1] for start, _ in one] == [start[1] for start, _ in other]


def test_a_hole_may_have_any_corners() -> None:
    """A triangle of half the square leaves the other half, whatever way round it is given."""
    for hole in (SQUARE[:3], SQUARE[2::-1]):
        strokes = hatch_strokes(Hatch(SQUARE, 0.05, angle=30.0, holes=(hole,)))

        assert sum(long(stroke) for stroke in strokes) * 0.05 == pytest.approx(50.0, rel=0.01)
