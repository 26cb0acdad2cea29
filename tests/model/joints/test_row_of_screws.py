"""A row of screws starts and ends clear of the end grain and leaves no stretch unscrewed."""

from __future__ import annotations

import itertools
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from model.joints.row_of_screws import row_of_screws
from model.part import Face, Hole, Screw

CLEAT = (2058.0, 38.0, 30.0)


def row(
    size: tuple[float, float, float] = CLEAT, **changes: Any
) -> tuple[tuple[Hole, ...], tuple[Screw, ...]]:
    options = {
        "through": Face.FACE, "into": "side_rail", "length": 44.45, "diameter": 4.17, "shank_hole": 4.4,
        "spacing": 150.0, "end_distance": 40.0,
    }  # fmt: skip
    return row_of_screws(size, **(options | changes))


@given(st.floats(200, 2500), st.floats(50, 400))
def test_no_two_screws_stand_farther_apart_than_was_asked(run: float, spacing: float) -> None:
    _, screws = row((run, 38.0, 30.0), spacing=spacing)

    apart = [b.at[0] - a.at[0] for a, b in itertools.pairwise(screws)]

    assert max(apart) <= spacing + 1e-6
    assert max(apart) == pytest.approx(min(apart))


@given(st.floats(200, 2500), st.floats(50, 400))
def test_one_screw_fewer_would_leave_them_too_far_apart(run: float, spacing: float) -> None:
    _, screws = row((run, 38.0, 30.0), spacing=spacing)

    gaps = len(screws) - 1

    assert gaps == 1 or (run - 80) / (gaps - 1) > spacing


def test_a_run_that_the_spacing_divides_gets_no_screw_too_many() -> None:
    """Three times 150 mm are four screws, also when the run was reckoned in inches."""
    for run in (450.0, 450.0 + 1e-10, 0.1 * 3 * 1500):
        assert len(row((run + 80, 38.0, 30.0))[1]) == 4


def test_the_outer_screws_stand_clear_of_both_ends() -> None:
    _, screws = row()

    assert screws[0].at[0] == 40
    assert screws[-1].at[0] == pytest.approx(2058 - 40)


def test_screws_stand_in_the_middle_of_the_width() -> None:
    holes, screws = row()

    assert {screw.at[1] for screw in screws} == {hole.at[1] for hole in holes} == {38 / 2}


def test_every_screw_has_its_hole_through_the_part() -> None:
    holes, screws = row()

    assert [hole.at for hole in holes] == [screw.at for screw in screws]
    assert {(hole.diameter, hole.depth) for hole in holes} == {(4.4, 30)}


@pytest.mark.parametrize(("through", "start", "way"), [(Face.FACE, 30, -1), (Face.BACK, 0, 1)])
def test_screws_go_in_at_the_face_that_they_are_driven_from(
    through: Face, start: float, way: float
) -> None:
    holes, screws = row(through=through)

    assert {screw.at[2] for screw in screws} == {start}
    assert {each.toward for each in (*holes, *screws)} == {(0, 0, way)}


@pytest.mark.parametrize(("through", "head"), [(Face.FACE, 27), (Face.BACK, 3)])
def test_a_sunk_head_starts_inside_the_wood(through: Face, head: float) -> None:
    holes, screws = row(through=through, sunk=3)

    assert {screw.at[2] for screw in screws} == {head}
    assert {hole.at[2] for hole in holes} == {30 if through is Face.FACE else 0}


def test_screws_know_what_they_bite() -> None:
    _, screws = row(into="top_rail")

    assert {(screw.into, screw.length, screw.diameter) for screw in screws} == {
        ("top_rail", 44.45, 4.17)
    }
