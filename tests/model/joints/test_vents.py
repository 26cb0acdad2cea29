"""Vents stand inside the panel, apart from each other, and go right through."""

from __future__ import annotations

import itertools
import math

from hypothesis import assume, given
from hypothesis import strategies as st

from model.joints.vents import vent_holes

PANEL = (1546.0, 684.0, 18.0)
panels = st.tuples(st.floats(600, 2200), st.floats(300, 2200), st.floats(9, 30))


@given(panels, st.floats(12, 60), st.integers(1, 6))
def test_vents_stay_clear_of_the_edges(
    size: tuple[float, float, float], diameter: float, rows: int
) -> None:
    for hole in vent_holes(size, diameter=diameter, rows=rows):
        for axis in (0, 1):
            clear = min(hole.at[axis], size[axis] - hole.at[axis]) - diameter / 2

            assert clear > 0


@given(panels, st.floats(12, 60), st.integers(1, 6))
def test_no_two_vents_run_into_each_other(
    size: tuple[float, float, float], diameter: float, rows: int
) -> None:
    assume(size[1] / (rows + 1) > diameter)  # `vent_web` refuses rows closer than this
    holes = vent_holes(size, diameter=diameter, rows=rows)

    for one, other in itertools.combinations(holes[: 2 * len(holes) // rows], 2):
        assert math.dist(one.at, other.at) > diameter


def test_vents_are_spread_evenly_along_each_row() -> None:
    first_row = vent_holes(PANEL, diameter=25, rows=2)[: int(1546 / 125)]

    apart = {round(b.at[0] - a.at[0], 6) for a, b in itertools.pairwise(first_row)}

    assert apart == {round(1546 / 12, 6)}
    assert {hole.at[1] for hole in first_row} == {684 / 3}


def test_vents_go_right_through_from_the_top() -> None:
    for hole in vent_holes(PANEL, diameter=25, rows=2):
        assert (hole.at[2], hole.toward, hole.depth, hole.diameter) == (18, (0, 0, -1), 18, 25)


def test_no_rows_are_no_vents() -> None:
    assert vent_holes(PANEL, diameter=25, rows=0) == ()


def test_a_narrow_panel_has_one_vent_in_its_row() -> None:
    (hole,) = vent_holes((90.0, 600.0, 18.0), diameter=25, rows=1)

    assert hole.at[:2] == (45, 300)
