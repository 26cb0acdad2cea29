"""A row adds up to its rail: end stiles, openings and the stiles between, whatever the numbers."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from model.bed import Design, solve
from model.dimensions import layout
from model.dimensions.layout import (
    LEAST_OPENING,
    first_end_stile,
    last_end_stile,
    opening_width,
    stile_spans,
)
from model.errors import CannotBuild
from model.rules import Chapter, Dimensions, RuleBook
from model.units import GRIDS, Count, Measured, Mm, ShopGrid

GRID = GRIDS["1 mm"]
NEEDS = {
    "opening_width_measured": Measured,
    "grid": ShopGrid,
    **dict.fromkeys(("bays", "drawers"), Count),
    **dict.fromkeys(("run_from", "run_to", "row_from", "blind_bay"), Mm),
    **dict.fromkeys(("end_stile_least", "mid_stile"), Mm),
}
BOOK = RuleBook(NEEDS, [Chapter(layout)])


def laid_out(
    grid: ShopGrid = GRID,
    bays: int = 3,
    run: float = 2058.0,
    run_from: float = 66.0,
    corner: float = 0.0,
    end_stile_least: float = 50.0,
    mid_stile: float = 50.0,
) -> Dimensions:
    """A row that begins `corner` mm behind the start of its frame, where that is not 0."""
    least, mid = grid.near(end_stile_least), grid.near(mid_stile)
    return Dimensions(BOOK).changed(
        {
            "grid": grid, "bays": bays, "drawers": bays, "run_from": run_from,
            "run_to": run_from + grid.up(run), "row_from": run_from + grid.near(corner),
            "blind_bay": max(grid.near(corner) - least, 0.0), "end_stile_least": least,
            "mid_stile": mid, "opening_width_measured": None,
        }
    )  # fmt: skip


ROWS = st.fixed_dictionaries(
    {
        "grid": st.sampled_from(sorted(GRIDS)).map(GRIDS.__getitem__),
        "bays": st.integers(1, 6),
        "run": st.floats(1900, 2400),
        "run_from": st.floats(38, 150),
        "corner": st.one_of(st.just(0.0), st.floats(300, 600)),
        "end_stile_least": st.floats(25, 80),
        "mid_stile": st.floats(20, 80),
    }
)


# ---------------------------------------------------------------- what holds for any row


@given(ROWS)
def test_a_row_adds_up_to_its_run(chosen: dict[str, Any]) -> None:
    row = laid_out(**chosen)

    openings = row["bays"] * row["opening_width"] + (row["bays"] - 1) * row["mid_stile"]
    total = row["first_end_stile"] + openings + row["last_end_stile"]

    assert total == pytest.approx(row["row_run"], abs=1e-6)  # floats: no step is lost


@given(ROWS)
def test_openings_and_stiles_are_cut_on_the_grid(chosen: dict[str, Any]) -> None:
    row = laid_out(**chosen)

    for name in ("opening_width", "first_end_stile", "last_end_stile"):
        assert row["grid"].holds(row[name]), name


@given(ROWS)
def test_no_end_stile_is_narrower_than_the_least(chosen: dict[str, Any]) -> None:
    row = laid_out(**chosen)

    assert row["first_end_stile"] >= row["end_stile_least"] - 1e-6
    assert row["last_end_stile"] >= row["end_stile_least"] - 1e-6


@given(ROWS)
@example(
    {
        "grid": GRID, "bays": 1, "run": 2000.0, "run_from": 66.1, "corner": 0.0,
        "end_stile_least": 50.0, "mid_stile": 50.0,
    }
)  # fmt: skip
def test_an_odd_step_goes_to_the_stile_at_the_head(chosen: dict[str, Any]) -> None:
    row = laid_out(**chosen)

    steps = (row["last_end_stile"] - row["first_end_stile"]) / row["grid"].step

    assert steps == pytest.approx(0, abs=1e-4) or steps == pytest.approx(1, abs=1e-4)


@given(ROWS)
def test_what_rounding_left_over_is_less_than_a_step_for_each_opening(
    chosen: dict[str, Any],
) -> None:
    row = laid_out(**chosen)

    leftover = row["end_stiles_width"] - 2 * row["end_stile_least"]

    assert -1e-6 <= leftover < row["bays"] * row["grid"].step + 1e-6


@given(ROWS)
def test_stiles_and_openings_take_turns_and_leave_nothing(chosen: dict[str, Any]) -> None:
    row = laid_out(**chosen)
    spans = row["stile_spans"][-(row["bays"] + 1) :]

    between = [(a[1], b[0]) for a, b in zip(spans[:-1], spans[1:], strict=True)]

    assert spans[0][0] == row["row_from"]
    assert spans[-1][1] == row["run_to"]
    for (start, end), place in zip(between, row["opening_places"], strict=True):
        assert start == pytest.approx(place, abs=1e-6)
        assert end - start == pytest.approx(row["opening_width"], abs=1e-6)


@given(ROWS)
def test_stiles_are_as_wide_as_their_names_say(chosen: dict[str, Any]) -> None:
    row = laid_out(**chosen)
    spans = row["stile_spans"][-(row["bays"] + 1) :]

    widths = [end - start for start, end in spans]

    between = [row["mid_stile"]] * (row["bays"] - 1)
    expected = [row["first_end_stile"], *between, row["last_end_stile"]]
    assert widths == pytest.approx(expected, abs=1e-6)
    assert row["last_stile_from"] == pytest.approx(spans[-1][0], abs=1e-6)


@given(ROWS)
def test_a_row_behind_foot_drawers_has_one_more_stile_at_the_corner(
    chosen: dict[str, Any],
) -> None:
    row = laid_out(**chosen)
    spans = row["stile_spans"]

    if not row["blind_bay"]:
        assert len(spans) == row["bays"] + 1
        return
    assert len(spans) == row["bays"] + 2
    assert spans[0] == (row["run_from"], row["run_from"] + row["end_stile_least"])
    assert spans[1][0] - spans[0][1] == pytest.approx(row["blind_bay"], abs=1e-6)


# ---------------------------------------------------------------- by hand


def test_three_drawers_in_a_rail_by_hand() -> None:
    """2058 less 2 * 50 and 2 * 50 leaves 1858, and 1858 / 3 = 619.33: one millimetre is left."""
    row = laid_out(bays=3, run=2058)

    assert row["opening_width"] == 619
    assert (row["first_end_stile"], row["last_end_stile"]) == (50, 51)


def test_openings_are_rounded_down_on_inches_too() -> None:
    """75 in less 2 * 1 3/4 and 1 1/2 in leaves 70 in: two openings of 35 in, nothing over."""
    inch = 25.4

    row = laid_out(
        GRIDS["1/16 in"], bays=2, run=75 * inch, end_stile_least=1.75 * inch, mid_stile=1.5 * inch
    )

    assert row["opening_width"] == pytest.approx(35 * inch)
    assert row["first_end_stile"] == pytest.approx(row["last_end_stile"])


def test_an_even_leftover_is_shared_alike() -> None:
    assert (first_end_stile(104, GRID), last_end_stile(104, 52)) == (52, 52)


def test_the_stile_at_the_head_takes_an_odd_step() -> None:
    first = first_end_stile(105, GRID)

    assert (first, last_end_stile(105, first)) == (52, 53)


def test_one_opening_has_no_stile_between() -> None:
    row = laid_out(bays=1)

    assert row["mid_stiles_width"] == 0
    assert len(row["stile_spans"]) == 2


def test_a_plain_side_has_no_openings_and_no_stiles() -> None:
    row = laid_out(bays=0)

    assert row["opening_width"] == 0
    assert row["opening_places"] == ()
    assert row["stile_spans"] == ()


def test_openings_too_narrow_for_a_hand_are_refused_by_the_number_of_drawers() -> None:
    assert opening_width(6 * LEAST_OPENING, 6, 6, GRID) == LEAST_OPENING
    with pytest.raises(CannotBuild, match="openings would be 119 mm wide") as refusal:
        opening_width(6 * LEAST_OPENING - 1, 6, 6, GRID)

    assert refusal.value.field == "drawers"


def test_the_refused_number_of_drawers_is_the_one_of_its_own_row() -> None:
    choices = NEEDS | {"left.drawers": Count, "left.bays": Count}
    book = RuleBook(choices, [Chapter(layout, ("left",))])
    values = dict(laid_out().values) | {"left.drawers": 6, "left.bays": 6, "run_to": 700.0}

    with pytest.raises(CannotBuild) as refusal:
        Dimensions(book).changed({name: values[name] for name in choices})

    assert refusal.value.field == "left.drawers"


def test_no_bays_no_spans_whatever_the_corner() -> None:
    assert stile_spans(0, 66, 400, 50, (), 0, 516, 2000) == ()


def test_boxes_follow_an_opening_that_was_measured() -> None:
    """Built a little narrow: the box gives way, and the end stiles are what they came out as."""
    plain = solve(Design())
    asked = plain["left.opening_width"] - 1.5

    bed = solve(Design().with_choices({"left.opening_width_measured": asked}))

    assert bed["left.opening_width"] == asked
    assert bed["left.box_width"] < plain["left.box_width"]
    assert bed["right.box_width"] == plain["right.box_width"]
    stiles = bed["left.first_end_stile"] + bed["left.last_end_stile"]
    assert stiles == pytest.approx(bed["left.row_run"] - 3 * asked - 2 * bed["mid_stile"])


def test_a_measured_height_is_what_boxes_are_sized_by() -> None:
    plain = solve(Design())
    asked = plain["opening_height"] - 3

    bed = solve(Design().with_choices({"opening_height_measured": asked}))

    assert bed["opening_height"] == asked
    assert bed["box_height"] < plain["box_height"]


def test_a_measured_opening_that_leaves_no_stiles_is_refused_beside_its_field() -> None:
    with pytest.raises(CannotBuild) as refusal:
        solve(Design().with_choices({"left.opening_width_measured": 700}))

    assert refusal.value.field == "left.opening_width_measured"
