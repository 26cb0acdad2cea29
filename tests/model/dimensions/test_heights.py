"""Heights stack up from the floor to the sleeper, whichever of them the maker fixed."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from model.brief.heights import HeightFrom
from model.dimensions import heights
from model.dimensions.heights import cleat_bottom, opening_height, rail_top, sleeping_height
from model.errors import CannotBuild
from model.rules import Chapter, Dimensions, RuleBook
from model.units import GRIDS, Measured, Mm, ShopGrid

GRID = GRIDS["1 mm"]
INCH = 25.4

NEEDS = {
    "opening_height_measured": Measured,
    "height_from": HeightFrom,
    "grid": ShopGrid,
    **dict.fromkeys(("rail_height", "wished_opening_height", "wished_sleeping_height"), Mm),
    **dict.fromkeys(("top_rail_width", "bottom_rail_width", "floor_gap", "recess"), Mm),
    **dict.fromkeys(("deck_thickness", "mattress_high", "cleat_width"), Mm),
}
BOOK = RuleBook(NEEDS, [Chapter(heights)])


def stacked(grid: ShopGrid = GRID, **changes: Any) -> Dimensions:
    """Heights for these choices; what a saw is set to lies on the grid, as it does in a brief."""
    chosen = {
        "height_from": "rail height", "rail_height": 400, "wished_opening_height": 200,
        "wished_sleeping_height": 610, "top_rail_width": 102, "bottom_rail_width": 45,
        "floor_gap": 20, "recess": 40, "deck_thickness": 19.05, "mattress_high": 254,
        "cleat_width": 38, "opening_height_measured": None,
    }  # fmt: skip
    chosen |= changes
    cut = ("top_rail_width", "bottom_rail_width", "recess", "cleat_width")
    cut += ("rail_height", "wished_opening_height")
    on_grid = {name: grid.near(chosen[name]) for name in cut}
    return Dimensions(BOOK).changed(chosen | on_grid | {"grid": grid})


HEIGHTS = st.fixed_dictionaries(
    {
        "grid": st.sampled_from(sorted(GRIDS)).map(GRIDS.__getitem__),
        "rail_height": st.floats(350, 760),
        "wished_opening_height": st.floats(70, 450),
        "wished_sleeping_height": st.floats(560, 1000),
        "top_rail_width": st.floats(60, 150),
        "bottom_rail_width": st.floats(25, 80),
        "floor_gap": st.floats(0, 100),
        "recess": st.floats(10, 60),
        "deck_thickness": st.floats(12, 40),
        "mattress_high": st.floats(150, 300),
        "cleat_width": st.floats(20, 60),
    }
)
ANY_OF = st.sampled_from(("rail height", "opening height", "sleeping height"))


# ---------------------------------------------------------------- a column adds up


@given(HEIGHTS, ANY_OF)
def test_floor_gap_rails_and_opening_add_up_to_the_rail_height(
    chosen: dict[str, Any], height_from: str
) -> None:
    bed = stacked(**chosen, height_from=height_from)

    column = bed["frame_bottom"] + bed["frame_height"]
    inside = bed["bottom_rail_width"] + bed["opening_height"] + bed["top_rail_width"]

    assert column == pytest.approx(bed["rail_top"], abs=1e-6)  # floats, no rounding
    assert inside == pytest.approx(bed["frame_height"], abs=1e-6)


@given(HEIGHTS, ANY_OF)
def test_the_grids_leftover_widens_the_floor_gap_by_less_than_a_step(
    chosen: dict[str, Any], height_from: str
) -> None:
    bed = stacked(**chosen, height_from=height_from)

    leftover = bed["frame_bottom"] - bed["floor_gap"]

    assert -1e-6 <= leftover < bed["grid"].step  # 1e-6: the grid's hair


@given(HEIGHTS, ANY_OF)
def test_the_grids_leftover_deepens_the_recess_by_less_than_a_step(
    chosen: dict[str, Any], height_from: str
) -> None:
    bed = stacked(**chosen, height_from=height_from)

    leftover = bed["recess_built"] - bed["recess"]

    assert -1e-6 <= leftover < bed["grid"].step + 1e-6


@given(HEIGHTS)
def test_what_a_saw_or_stop_is_set_to_lies_on_the_grid(chosen: dict[str, Any]) -> None:
    bed = stacked(**chosen)

    for name in ("rail_top", "opening_height", "deck_bottom"):
        assert bed["grid"].holds(bed[name]), name


# ---------------------------------------------------------------- which height is fixed


def test_a_floor_gap_of_a_hair_takes_no_step_from_a_fixed_opening() -> None:
    """Up to the grid and down again, a stack one nanometre over a step once lost a whole step."""
    grid = GRIDS["1/16 in"]

    wished = {"height_from": "opening height", "wished_opening_height": 69.85}
    rails = {"top_rail_width": 60.325, "bottom_rail_width": 25.4}
    bed = stacked(grid=grid, floor_gap=1e-6, **wished, **rails)

    assert bed["opening_height"] == pytest.approx(69.85, abs=1e-6)


@given(HEIGHTS)
def test_a_fixed_opening_is_built_as_wished(chosen: dict[str, Any]) -> None:
    bed = stacked(**chosen, height_from="opening height")

    assert bed["opening_height"] == pytest.approx(bed["wished_opening_height"], abs=1e-6)


@given(HEIGHTS)
def test_a_fixed_sleeping_height_is_met_within_a_step_and_a_half(chosen: dict[str, Any]) -> None:
    """Half a step for the rail's top edge, a whole one for the deck below it."""
    bed = stacked(**chosen, height_from="sleeping height")

    off = bed["sleeping_height"] - bed["wished_sleeping_height"]

    step = bed["grid"].step
    assert -1.5 * step - 1e-6 <= off <= 0.5 * step + 1e-6


def test_a_wished_sleeping_height_leaves_the_drawer_what_the_mattress_does_not_eat() -> None:
    """No jumping into bed fixed one total, and a thick mattress ate the drawers: a blog, 2018."""
    thin = stacked(height_from="sleeping height", wished_sleeping_height=610, mattress_high=200)
    thick = stacked(height_from="sleeping height", wished_sleeping_height=610, mattress_high=300)

    assert thin["rail_top"] == 610 - 200 + 40
    assert thin["opening_height"] == thin["rail_top"] - 20 - 45 - 102
    assert thin["opening_height"] - thick["opening_height"] == 300 - 200


def test_each_way_of_fixing_a_height_goes_its_own_way() -> None:
    sizes = (400, 200, 167, 610, 254, 40, GRID)

    assert rail_top("rail height", *sizes) == 400
    assert rail_top("opening height", *sizes) == 167 + 200
    assert rail_top("sleeping height", *sizes) == 610 - 254 + 40


def test_a_rail_height_off_the_grid_goes_to_the_nearest_step() -> None:
    assert rail_top("rail height", 400.4, 200, 167, 610, 254, 40, GRID) == 400
    assert rail_top("rail height", 400.6, 200, 167, 610, 254, 40, GRID) == 401


def test_the_opening_is_what_floor_gap_and_rails_leave() -> None:
    assert opening_height(400, 20.5 + 45 + 102, GRID) == 232  # 232.5 before rounding


def test_the_sleeper_lies_on_the_mattress_and_it_on_the_deck() -> None:
    assert sleeping_height(360, 254) == 614


def test_a_deck_of_another_thickness_keeps_its_top() -> None:
    slats, panels = stacked(deck_thickness=20), stacked(deck_thickness=15)

    assert slats["deck_top"] == panels["deck_top"]
    assert panels["deck_bottom"] - slats["deck_bottom"] == 20 - 15


def test_cleats_below_the_floor_are_refused_by_their_width() -> None:
    with pytest.raises(CannotBuild, match="cleats would stand below the floor") as refusal:
        cleat_bottom(30, 38)

    assert refusal.value.field == "cleat_width"
    assert cleat_bottom(38, 38) == 0
