"""Lengths are shown and rounded without losing or hiding anything."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from model.errors import BadInput
from model.read_length import parse_length
from model.units import GRIDS, ShopGrid, show_bare, show_length

grids = st.sampled_from(sorted(GRIDS)).map(GRIDS.__getitem__)
lengths = st.floats(min_value=0, max_value=5000, allow_nan=False)

# ---------------------------------------------------------------- showing


@pytest.mark.parametrize(
    ("mm", "unit", "shown"),
    [
        (695, "mm", "695 mm"),
        (695.3, "mm", "695.3 mm"),
        (19.05, "mm", "19.05 mm"),
        (695.325, "mm", "~695.3 mm"),
        (0, "mm", "0 mm"),
        (-3, "mm", "-3 mm"),
        (27.375 * 25.4, "inch", '27 3/8"'),
        (0.5 * 25.4, "inch", '1/2"'),
        (27 * 25.4, "inch", '27"'),
        (-0.125 * 25.4, "inch", '-1/8"'),
        (695, "inch", '~27 23/64"'),
        ((20 + 5 / 128) * 25.4, "inch", '20 5/128"'),
        (0.01, "inch", '~0"'),
    ],
)
def test_lengths_are_shown_as_a_tape_reads(mm: float, unit: str, shown: str) -> None:
    assert show_length(mm, unit) == shown


def test_a_coarser_step_says_that_it_rounds() -> None:
    assert show_length(27.375 * 25.4, "inch", 25.4 / 4) == '~27 1/2"'
    assert show_length(27.25 * 25.4, "inch", 25.4 / 4) == '27 1/4"'
    assert show_length(695.3, "mm", 1) == "~695 mm"


def test_a_table_cell_leaves_the_unit_to_its_heading() -> None:
    assert show_bare(27.375 * 25.4, "inch") == "27 3/8"
    assert show_bare(695.3, "mm") == "695.3"


def test_an_unknown_unit_is_refused() -> None:
    with pytest.raises(BadInput, match="neither"):
        show_length(1, "cubit")


@given(lengths, st.sampled_from(("mm", "inch")))
def test_what_is_shown_can_be_typed_in_again(mm: float, unit: str) -> None:
    half_step = (25.4 / 64 if unit == "inch" else 0.1) / 2

    shown = show_length(mm, unit)

    assert abs(parse_length(shown) - mm) <= half_step + 1e-6  # one rounding to the shown step
    assert parse_length(show_bare(mm, unit), unit) == parse_length(shown)


@given(lengths, st.sampled_from(("mm", "inch")))
def test_a_size_without_a_tilde_is_true(mm: float, unit: str) -> None:
    shown = show_length(mm, unit)

    if not shown.startswith("~"):
        assert abs(parse_length(shown) - mm) <= 0.0005 + 1e-9  # half a micron counts as true


# ---------------------------------------------------------------- the shop grid


@given(grids, lengths)
def test_down_near_and_up_are_in_order_and_within_a_step(grid: ShopGrid, size: float) -> None:
    down, near, up = grid.down(size), grid.near(size), grid.up(size)

    assert down <= near <= up
    assert down - 2e-6 <= size <= up + 2e-6
    assert up - down <= grid.step + 2e-6
    assert abs(near - size) <= grid.step / 2 + 2e-6


@given(grids, st.integers(-5000, 5000))
def test_a_size_on_the_grid_stays(grid: ShopGrid, steps: int) -> None:
    size = grid.near(steps * grid.step)

    assert grid.down(size) == grid.near(size) == grid.up(size) == size
    assert grid.holds(size)


@given(grids, st.integers(1, 3000), st.integers(1, 12))
def test_sums_of_grid_sizes_stay_on_the_grid(grid: ShopGrid, steps: int, count: int) -> None:
    """Floating-point dust must not push a column of dimensions to the next step."""
    size = grid.near(steps * grid.step)

    assert grid.down(sum([size] * count)) == pytest.approx(steps * count * grid.step, abs=1e-6)


def test_half_way_goes_up() -> None:
    assert GRIDS["1 mm"].near(10.5) == 11
    assert GRIDS["1/16 in"].near(25.4 / 32) == pytest.approx(25.4 / 16)


def test_grids_are_named_as_makers_say_them() -> None:
    assert {name: grid.name for name, grid in GRIDS.items()} == {name: name for name in GRIDS}
    assert ShopGrid(25.4 / 128, "inch").name == "1/128 in"


def test_finer_steps_follow_the_unit() -> None:
    assert [g.name for g in GRIDS["1/16 in"].finer()] == [
        "1/16 in",
        "1/32 in",
        "1/64 in",
        "1/128 in",
    ]
    assert [g.name for g in GRIDS["1 mm"].finer()] == ["1 mm", "0.5 mm", "0.1 mm"]
    assert [g.name for g in GRIDS["0.5 mm"].finer()] == ["0.5 mm", "0.1 mm"]


@pytest.mark.parametrize(
    ("grid", "low", "high", "size", "step"),
    [
        ("1 mm", 100.6, 101.2, 101, "1 mm"),
        ("1 mm", 100.2, 100.8, 100.5, "0.5 mm"),
        ("1 mm", 100.55, 100.75, 100.7, "0.1 mm"),
        ("1/16 in", 25.4, 26.0, 25.4, "1/16 in"),
        ("1/16 in", 26.1, 26.3, 26.19375, "1/32 in"),
        ("1/16 in", 26.5, 26.7, 26.590625, "1/64 in"),
    ],
)
def test_a_tolerance_is_met_on_the_coarsest_step_inside_it(
    grid: str, low: float, high: float, size: float, step: str
) -> None:
    landing = GRIDS[grid].within(low, high)

    assert landing.size == pytest.approx(size, abs=1e-6)
    assert landing.grid.name == step


@given(grids, lengths)
def test_a_slides_play_is_always_met(grid: ShopGrid, low: float) -> None:
    """0.6 mm in all is the play of a side-mount slide: a 1/64 in step always lands in it."""
    landing = grid.within(low, low + 0.6)

    assert low - 1e-6 <= landing.size <= low + 0.6 + 1e-6
    assert landing.grid.holds(landing.size)
    coarser = [g for g in grid.finer() if g.step > landing.grid.step]
    assert not any(low < g.up(low) < low + 0.6 for g in coarser)


def test_a_tolerance_finer_than_any_step_is_refused() -> None:
    with pytest.raises(BadInput, match="wider tolerance"):
        GRIDS["1 mm"].within(100.01, 100.02)
