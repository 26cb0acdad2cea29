"""Lines joined, drawn once, chained and thinned, on a handful of them."""

from __future__ import annotations

import math

import numpy as np
import pytest

from model.drawings.views.chains import chained
from model.drawings.views.crowding import Inked, uncrowded
from model.drawings.views.stretches import Stretches, joined, left_of
from model.drawings.views.strokes import HIDDEN, SECTION, VISIBLE, Lines, drawn_once


def lines(*given: tuple[float, float, float, float, int, int, float]) -> Lines:
    """From x, y to x, y; piece, rank, how near."""
    rows = np.array(given, float)
    return Lines(
        rows[:, :4].reshape(-1, 2, 2), rows[:, 4].astype(int), rows[:, 5].astype(int), rows[:, 6]
    )


def told(found: Lines) -> list[tuple[list[float], int, int]]:
    ends = np.round(found.ends.reshape(-1, 4), 3).tolist()
    return list(zip(ends, found.piece.tolist(), found.rank.tolist(), strict=True))


def stretches(*given: tuple[int, float, float]) -> Stretches:
    line, begin, end = zip(*given, strict=True)
    return Stretches(np.array(line), np.array(begin), np.array(end))


def test_stretches_that_meet_are_joined_on_their_own_line_only() -> None:
    found = joined(
        stretches((1, 0.5, 0.7), (0, 0.2, 0.4), (0, 0.4, 0.6), (1, 0.1, 0.2), (0, 0.3, 0.5))
    )

    assert found.line.tolist() == [0, 1, 1]
    assert found.begin == pytest.approx([0.2, 0.1, 0.5])
    assert found.end == pytest.approx([0.6, 0.2, 0.7])


def test_what_is_left_of_lines_is_all_that_no_stretch_takes() -> None:
    found = left_of(3, stretches((0, -0.5, 0.25), (0, 0.5, 0.75), (2, 0.0, 1.0)))

    assert found.line.tolist() == [0, 0, 1]
    assert found.begin == pytest.approx([0.25, 0.75, 0.0])
    assert found.end == pytest.approx([0.5, 1.0, 1.0])


def test_a_line_drawn_twice_is_the_nearer_pieces() -> None:
    found = drawn_once(lines((0, 0, 10, 0, 1, VISIBLE, 5.0), (10, 0, 0, 0, 2, VISIBLE, 9.0)))

    assert told(found) == [([0, 0, 10, 0], 2, VISIBLE)]


def test_visible_goes_before_hidden_however_near() -> None:
    found = drawn_once(lines((0, 0, 10, 0, 1, HIDDEN, 9.0), (4, 0, 6, 0, 2, VISIBLE, 1.0)))

    assert told(found) == [
        ([4, 0, 6, 0], 2, VISIBLE), ([0, 0, 4, 0], 1, HIDDEN), ([6, 0, 10, 0], 1, HIDDEN),
    ]  # fmt: skip


def test_a_cut_face_goes_before_all() -> None:
    found = drawn_once(lines((0, 0, 10, 0, 1, VISIBLE, 9.0), (0, 0, 10, 0, 2, SECTION, math.inf)))

    assert told(found) == [([0, 0, 10, 0], 2, SECTION)]


@pytest.mark.parametrize("degrees", [0, 17, 30, 90, 135, 179.9999])
def test_what_goes_on_straight_is_one_stroke_in_any_direction(degrees: float) -> None:
    x, y = math.cos(math.radians(degrees)), math.sin(math.radians(degrees))

    found = drawn_once(
        lines(
            (3 * x, 3 * y, 7 * x, 7 * y, 1, VISIBLE, 0.0),
            (3 * x, 3 * y, 0, 0, 1, VISIBLE, 0.0),
            (7 * x, 7 * y, 12 * x, 12 * y, 1, VISIBLE, 0.0),
        )  # fmt: skip
    )

    assert len(found.piece) == 1
    assert np.linalg.norm(found.ends[0, 1] - found.ends[0, 0]) == pytest.approx(12.0, abs=0.002)


def test_parallel_lines_stay_two() -> None:
    found = drawn_once(lines((0, 0, 10, 0, 1, VISIBLE, 0.0), (0, 0.1, 10, 0.1, 1, VISIBLE, 0.0)))

    assert len(found.piece) == 2


def test_a_corner_ends_a_chain_and_a_bend_does_not() -> None:
    bend = [((0.0, 0.0), (1.0, 0.0)), ((2.0, 0.3), (1.0, 0.0)), ((2.0, 0.3), (2.0, 3.0))]

    assert chained(bend) == [((0.0, 0.0), (1.0, 0.0), (2.0, 0.3)), ((2.0, 0.3), (2.0, 3.0))]


def test_a_round_in_any_order_is_one_closed_chain() -> None:
    corners = [(math.cos(k * math.pi / 12), math.sin(k * math.pi / 12)) for k in range(25)]
    sides = [(corners[k], corners[k + 1]) for k in range(24)]
    mixed = [sides[(7 * k) % 24][:: 1 if k % 3 else -1] for k in range(24)]

    found = chained([(side[0], side[1]) for side in mixed])

    assert len(found) == 1
    assert len(found[0]) == 25
    assert math.dist(found[0][0], found[0][-1]) < 1e-9


def test_where_three_lines_meet_a_chain_ends_unless_one_goes_straight_on() -> None:
    tee = [((0.0, 0.0), (5.0, 0.0)), ((5.0, 0.0), (9.0, 0.0)), ((5.0, 0.0), (5.0, 4.0))]

    assert chained(tee) == [((0.0, 0.0), (5.0, 0.0), (9.0, 0.0)), ((5.0, 0.0), (5.0, 4.0))]


def inked(x0: float, y0: float, x1: float, y1: float, rank: int = 1, width: float = 0.25) -> Inked:
    return Inked((x0, y0), (x1, y1), width, rank)


def test_of_two_close_lines_the_longer_is_drawn_whole_and_the_other_where_it_is_alone() -> None:
    found = uncrowded([inked(0, 0.1, 40, 0.1), inked(10, 0, 60, 0)])

    assert found[1] == [((10, 0), (60, 0))]
    assert found[0] == [((0, 0.1), (10, 0.1))]


def test_the_more_important_of_two_close_lines_stays() -> None:
    found = uncrowded([inked(0, 0, 50, 0, rank=2), inked(10, 0.1, 20, 0.1, rank=1)])

    assert found[1] == [((10, 0.1), (20, 0.1))]
    assert found[0] == [((0, 0), (10, 0)), ((20, 0), (50, 0))]


def test_lines_with_white_between_them_both_stay() -> None:
    found = uncrowded([inked(0, 0, 50, 0), inked(0, 0.3, 50, 0.3), inked(0, 0, 0, 50)])

    assert [len(each) for each in found] == [1, 1, 1]


def test_of_three_close_lines_the_outer_two_stay() -> None:
    """What was left out itself takes no room from its other neighbour."""
    found = uncrowded([inked(0, 0, 50, 0), inked(0, 0.15, 40, 0.15), inked(0, 0.3, 45, 0.3)])

    assert [len(each) for each in found] == [1, 0, 1]


def test_lines_far_apart_on_one_level_do_not_thin_each_other() -> None:
    found = uncrowded(
        [inked(0, 0, 9, 0), inked(30, 0.1, 45, 0.1), inked(50, 0.1, 66, 0.1), inked(70, 0, 75, 0)]
    )

    assert [len(each) for each in found] == [1, 1, 1, 1]
