"""The centre beam lies under the deck, clear of the drawers, on something that carries it."""

from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from model.dimensions.beam import (
    beam_block_bottom,
    beam_block_from_x,
    beam_block_length,
    beam_bottom,
    beam_drawer_gap,
    beam_end_gap,
    beam_from_x,
    beam_from_y,
    beam_leg_height,
    beam_leg_places,
    beam_leg_spots,
    beam_legs_from,
    beam_length,
    beam_over_drawers,
    beam_span,
    centre_reserve,
    crossing_drawers,
    has_beam,
    opening_middle,
    spread,
)
from model.errors import CannotBuild
from model.units import GRIDS, ShopGrid

GRID = GRIDS["1 mm"]
grids = st.sampled_from(sorted(GRIDS)).map(GRIDS.__getitem__)


# ---------------------------------------------------------------- where it lies


def test_the_beam_lies_right_under_the_deck_and_on_the_centre_line() -> None:
    assert beam_bottom(340, 64) + 64 == 340
    assert beam_from_x(38) + 38 == -beam_from_x(38)


@given(grids, st.floats(1600, 2600), st.floats(20, 60), st.floats(0, 10))
def test_beam_and_end_gaps_add_up_to_the_room_between_the_end_rails(
    grid: ShopGrid, bed: float, rail: float, clearance: float
) -> None:
    span = beam_span(bed, rail)
    length = beam_length(span, clearance, grid)
    gap = beam_end_gap(span, length)

    start = beam_from_y(rail, gap)

    assert start - rail == pytest.approx(gap)
    assert bed - rail - (start + length) == pytest.approx(gap, abs=1e-6)
    assert -1e-6 <= gap - clearance < grid.step / 2 + 1e-6
    assert grid.holds(length)


# ---------------------------------------------------------------- clear of the drawers


def test_a_beam_that_ends_above_the_boxes_lets_them_pass() -> None:
    assert beam_over_drawers(True, 280, 280)
    assert not beam_over_drawers(True, 279.9, 280)


def test_no_beam_is_over_no_drawers() -> None:
    assert not has_beam("none")
    assert not beam_over_drawers(False, 400, 280)


def test_drawers_leave_half_the_beam_free_only_where_it_is_in_the_way() -> None:
    assert centre_reserve("bearers", True, 38) == 0
    assert centre_reserve("bearers", False, 38) == 19
    assert centre_reserve("none", False, 38) == 0


def test_legs_are_in_the_way_even_of_drawers_that_pass_under_the_beam() -> None:
    """A leg lands on the floor, clear of the drawers."""
    assert centre_reserve("legs", True, 38) == 19


@pytest.mark.parametrize(
    ("rows", "crosses"),
    [
        ((3, "half", 3, "half", 0), False),
        ((3, "full", 0, "half", 0), True),
        ((1, "full", 0, "half", 0), True),
        ((0, "half", 1, "full", 0), True),
        ((0, "full", 3, "half", 0), False),
        ((3, "slide", 3, "slide", 1), True),
    ],
)
def test_full_depth_drawers_and_those_of_the_foot_cross_the_middle(
    rows: tuple[int, str, int, str, int], crosses: bool
) -> None:
    assert crossing_drawers(*rows) is crosses  # type: ignore[arg-type]


def test_a_beam_that_hangs_into_crossing_drawers_is_refused_by_its_height() -> None:
    assert beam_drawer_gap(True, True, 280, 280) == 0
    with pytest.raises(CannotBuild, match=r"hangs 4\.0 mm into drawers") as refusal:
        beam_drawer_gap(True, True, 276, 280)

    assert refusal.value.field == "beam_height"


def test_a_beam_between_half_drawers_may_hang_lower_than_their_tops() -> None:
    assert beam_drawer_gap(True, False, 276, 280) == -4


# ---------------------------------------------------------------- what carries it


def test_end_cleats_give_the_beams_screws_wood_on_both_sides() -> None:
    length = beam_block_length(38, GRID)

    assert length == 3 * 38
    assert beam_block_length(38.1, GRID) == 115  # 114.3: rounded up, so that none is too short
    assert beam_block_from_x(length) == -length / 2


def test_end_cleats_below_the_end_rails_are_refused_only_where_they_are_made() -> None:
    assert beam_block_bottom("ends", 280, 38, 242, 200) == 242
    with pytest.raises(CannotBuild, match=r"hang 3\.0 mm below the end rails") as refusal:
        beam_block_bottom("ends", 280, 38, 200, 245)

    assert refusal.value.field == "beam_height"
    assert beam_block_bottom("legs", 280, 38, 200, 245) == 242


def test_legs_reach_from_the_floor_to_the_beam() -> None:
    assert beam_leg_height(276, "legs", "half", "half", 3, 3) == 276


@pytest.mark.parametrize("full", [("full", "half", 3, 0), ("half", "full", 0, 2)])
def test_full_depth_drawers_leave_the_legs_no_place(full: tuple[str, str, int, int]) -> None:
    with pytest.raises(CannotBuild, match="Full-depth drawers pass where the legs") as refusal:
        beam_leg_height(276, "legs", *full)  # type: ignore[arg-type]

    assert refusal.value.field == "beam"


def test_a_depth_without_drawers_is_in_nobodys_way() -> None:
    assert beam_leg_height(276, "legs", "full", "full", 0, 0) == 276
    assert beam_leg_height(276, "bearers", "full", "half", 3, 0) == 276


def test_legs_stand_behind_the_foot_drawers() -> None:
    assert beam_legs_from(2, 566, 66) == 566
    assert beam_legs_from(0, 566, 66) == 66


def test_legs_stand_in_the_middle_of_openings() -> None:
    places, width = (116.0, 785.0, 1454.0), 619.0
    middle = opening_middle(3, width, 800)

    assert beam_leg_spots(3, places, 2, (116.0, 1000.0), middle) == (425.5, 1094.5, 1763.5)


def test_the_right_rows_openings_serve_where_the_left_has_none() -> None:
    middle = opening_middle(0, 0, 800)

    assert beam_leg_spots(0, (), 2, (116.0, 1000.0), middle) == (516.0, 1400.0)


@pytest.mark.parametrize("legs", [1, 2, 3, 6])
def test_without_drawers_the_beam_bends_as_hard_over_its_legs_as_between_them(legs: int) -> None:
    places = beam_leg_places("legs", legs, (), 66, 2124, 64, GRID)

    centres = [at + 32 for at in places]
    before, behind = centres[0] - 66, 2124 - centres[-1]
    assert before == pytest.approx(behind, abs=GRID.step)
    for one, other in pairwise(centres):
        # Even load: w a^2 / 2 over the leg, w p^2 / 8 - w a^2 / 2 between two legs.
        left = (other - one) ** 2 / 8 - before**2 / 2
        assert before**2 / 2 == pytest.approx(left, rel=0.03)  # both ends on the grid


def test_other_beams_have_no_legs() -> None:
    for beam in ("none", "bearers", "ends"):
        assert beam_leg_places(beam, 2, (), 66, 2124, 64, GRID) == ()


def test_legs_behind_openings_are_put_on_their_spots() -> None:
    places = beam_leg_places("legs", 2, (425.5, 1094.5, 1763.5), 66, 2124, 64, GRID)

    assert [at + 32 for at in places] == pytest.approx([425.5, 1763.5], abs=GRID.step / 2)


def test_spread_takes_both_ends_first() -> None:
    spots = (1.0, 2.0, 3.0, 4.0, 5.0)

    assert spread(2, spots) == (1.0, 5.0)
    assert spread(3, spots) == (1.0, 3.0, 5.0)
    assert spread(1, spots) == (3.0,)
    assert spread(9, spots) == spots


@given(st.integers(1, 6), st.integers(1, 6))
def test_spread_gives_so_many_different_spots(wanted: int, count: int) -> None:
    spots = tuple(float(i) for i in range(count))

    taken = spread(wanted, spots)

    assert len(set(taken)) == len(taken) == min(wanted, count)
    assert set(taken) <= set(spots)
