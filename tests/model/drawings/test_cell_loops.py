"""Loops around cells, checked by areas: shoelace against a count of cells."""

from __future__ import annotations

import random

import numpy as np
import pytest

from model.drawings.cell_loops import loops
from tests.model.exports.dxf_reader import area


@pytest.mark.parametrize("seed", range(40))
def test_loops_hold_as_much_ground_as_their_cells(seed: int) -> None:
    rng = random.Random(seed)
    inside = np.array([[rng.random() < 0.6 for _ in range(7)] for _ in range(9)])
    x = np.cumsum([0.0, *(rng.uniform(0.5, 9) for _ in range(9))])
    y = np.cumsum([0.0, *(rng.uniform(0.5, 9) for _ in range(7))])

    ground = (np.outer(np.diff(x), np.diff(y)) * inside).sum()

    assert sum(area(list(loop)) for loop in loops(inside, x, y)) == pytest.approx(ground)


def test_a_loop_has_corners_only_and_keeps_the_inside_on_its_left() -> None:
    inside = np.ones((3, 3), bool)
    inside[1, 1] = False
    lines = np.array([0.0, 1.0, 2.0, 3.0])

    outer, hole = loops(inside, lines, lines)

    assert set(outer) == {(0, 0), (3, 0), (3, 3), (0, 3)} and area(list(outer)) == 9
    assert set(hole) == {(1, 1), (2, 1), (2, 2), (1, 2)} and area(list(hole)) == -1


def test_cells_that_touch_at_a_corner_are_two_loops() -> None:
    inside = np.array([[True, False], [False, True]])
    lines = np.array([0.0, 1.0, 2.0])

    assert [len(loop) for loop in loops(inside, lines, lines)] == [4, 4]
