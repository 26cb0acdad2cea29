"""Dual feasible functions: no whole gives less than its parts, looked at for every length."""

import numpy as np
import pytest

from model.cutting.bounds.dual_feasible import family, parts, steps, threshold

ROOMS = (7, 12, 30, 31)


@pytest.mark.parametrize("room", ROOMS)
def test_no_whole_gives_less_than_its_parts(room: int) -> None:
    """Then no row of pieces gives more than the room does: what every bound rests on."""
    lengths = np.arange(room + 1)
    for row in family(lengths, room, tuple(range(1, room + 1))):
        for a in range(room + 1):
            whole, pieces = row[a:], row[a] + row[: room + 1 - a]
            assert (whole >= pieces).all(), (room, a, row)


@pytest.mark.parametrize("room", ROOMS)
def test_each_measure_of_a_room_is_more_than_nothing(room: int) -> None:
    assert (family(np.array([room]), room, tuple(range(1, room + 1)))[:, 0] > 0).all()


def test_a_threshold_gives_all_of_the_room_to_what_leaves_too_little() -> None:
    lengths = np.array([29, 30, 50, 70, 71, 100])

    assert threshold(lengths, 100, 30).tolist() == [0, 30, 50, 70, 100, 100]


def test_parts_count_how_many_cannot_lie_beside_each_other() -> None:
    """Of pieces longer than a third only two lie in a row: each gives half of it."""
    lengths = np.array([33, 34, 50, 67])

    assert (parts(lengths, 100, 2) / (2 * 100)).tolist() == [0, 0.5, 0.5, 1]


def test_a_whole_part_gives_itself() -> None:
    assert parts(np.array([4, 6, 8]), 12, 2).tolist() == [8, 12, 16]  # thirds: 1/3 of 24, ...


def test_steps_count_what_a_long_piece_leaves_no_room_for() -> None:
    """Steps of 30 in 100: 3 fit. Beside 71 none does, so it gives all 3; beside 60 one."""
    lengths = np.array([29, 30, 50, 60, 71])

    assert (steps(lengths, 100, 30) / 2).tolist() == [0, 1, 1.5, 2, 3]
