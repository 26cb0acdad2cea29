"""Places along a part keep clear of what is taken, and no farther apart than was asked."""

from __future__ import annotations

import itertools

import pytest
from hypothesis import given
from hypothesis import strategies as st

from model.joints.clear_places import between_marks, clear_place, evenly_clear, joined


def gaps(places: tuple[float, ...]) -> list[float]:
    return [b - a for a, b in itertools.pairwise(places)]


def test_stretches_that_overlap_are_one() -> None:
    assert joined([(30, 40), (0, 10), (8, 20), (20, 25)]) == ((0, 25), (30, 40))


@pytest.mark.parametrize(
    ("at", "place"),
    [(5, 5), (10, 10), (12, 10), (18, 20), (20, 20), (31, 30)],
)
def test_a_place_moves_to_the_nearer_end_of_what_is_taken(at: float, place: float) -> None:
    assert clear_place(at, ((10, 20), (30, 40)), 0, 100) == place


def test_a_place_does_not_move_past_its_bounds() -> None:
    assert clear_place(12, ((8, 20),), 10, 100) == 20
    assert clear_place(12, ((0, 200),), 10, 100) == 12  # nothing is clear


def test_places_stand_in_the_middle_between_marks() -> None:
    """Marks each 149 from 44.5: the middles lie at 119, 268, 417."""
    marks = (44.5, 193.5, 342.5, 491.5)

    assert between_marks(53, 483, marks, (), 152.4, 41.7) == (53, 119, 268, 417, 483)


def test_two_share_a_gap_that_is_wider_than_they_may_stand_apart() -> None:
    """Quarters of 200 from the marks: 50, 150, 250, 350, of which the outer ones are not needed."""
    assert between_marks(40, 360, (0, 200, 400), (), 110, 10) == (40, 150, 250, 360)


def test_narrow_gaps_are_skipped_where_fewer_do() -> None:
    marks = tuple(50.0 * i for i in range(9))

    found = between_marks(25, 375, marks, (), 150, 40)

    assert len(found) == 4  # 350 in three steps of at most 150
    assert max(gaps(found)) <= 150


def test_nothing_is_said_to_do_where_the_bounds_cannot_be_kept() -> None:
    assert between_marks(40, 360, (), (), 110, 10) == ()


@given(st.floats(200, 2500), st.floats(50, 400))
def test_no_two_places_stand_farther_apart_than_was_asked(run: float, most: float) -> None:
    found = evenly_clear(0, run, (), most, 0)

    assert max(gaps(found)) <= most + 1e-6
    assert max(gaps(found)) == pytest.approx(min(gaps(found)))
    assert len(found) == 2 or run / (len(found) - 2) > most - 1e-6  # one fewer would not do


def test_a_run_that_the_spacing_divides_gets_no_place_too_many() -> None:
    """Three times 150 mm are four places, also when the run was reckoned in inches."""
    for run in (450.0, 450.0 + 1e-10, 0.1 * 3 * 1500):
        assert len(evenly_clear(0, run, (), 150, 0)) == 4


def test_places_that_move_still_keep_within_the_spacing() -> None:
    """Of four at 0, 150, 300, 450 two would move 20 apart from each other: a fifth is set."""
    found = evenly_clear(0, 450, ((130, 155), (295, 320)), 150, 10)

    assert max(gaps(found)) <= 150
    assert not [x for x in found if 130 < x < 155 or 295 < x < 320]
