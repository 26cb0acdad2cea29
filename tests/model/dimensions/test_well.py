"""The mattress finds its room whatever stands round it, and the grid's leftover widens the well."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from model.brief.posts import RailSet
from model.dimensions import well
from model.dimensions.well import between_posts, end_rail_set_back, rail_set_back
from model.errors import CannotBuild
from model.rules import Chapter, Dimensions, RuleBook
from model.units import GRIDS, Mm, ShopGrid

GRID = GRIDS["1 mm"]
INCH = 25.4

NEEDS = {
    "rail_set": RailSet,
    "grid": ShopGrid,
    **dict.fromkeys(("rail_reveal", "post_width", "post_along", "frame_thickness"), Mm),
    **dict.fromkeys(("mattress_across", "mattress_along", "side_fit", "end_fit"), Mm),
    **dict.fromkeys(("head_stands_in", "foot_stands_in"), Mm),
}
BOOK = RuleBook(NEEDS, [Chapter(well)])


def built(**changes: Any) -> Dimensions:
    chosen = {
        "grid": GRID, "rail_set": "set back", "rail_reveal": 6, "post_width": 70, "post_along": 66,
        "frame_thickness": 22, "mattress_across": 1524, "mattress_along": 2032, "side_fit": 13,
        "end_fit": 13, "head_stands_in": 0, "foot_stands_in": 0,
    }  # fmt: skip
    return Dimensions(BOOK).changed(chosen | changes)


BEDS = st.fixed_dictionaries(
    {
        "grid": st.sampled_from(sorted(GRIDS)).map(GRIDS.__getitem__),
        "rail_set": st.sampled_from(("flush", "centred", "set back")),
        "rail_reveal": st.floats(0, 10),
        "post_width": st.floats(45, 150),
        "post_along": st.floats(45, 150),
        "frame_thickness": st.floats(15, 35),
        "mattress_across": st.floats(700, 2200),
        "mattress_along": st.floats(1500, 2300),
        "side_fit": st.floats(0, 38),
        "end_fit": st.floats(0, 38),
        "head_stands_in": st.floats(0, 50),
        "foot_stands_in": st.floats(0, 50),
    }
)


# ---------------------------------------------------------------- the well


@given(BEDS)
def test_the_well_is_never_narrower_than_mattress_and_fit(chosen: dict[str, Any]) -> None:
    bed = built(**chosen)

    leftover = bed["well_width"] - bed["mattress_across"] - 2 * bed["side_fit"]

    assert -1e-5 <= leftover < bed["grid"].step + 1e-5  # floats and the grid's hair


@given(BEDS)
def test_the_well_is_never_shorter_than_mattress_and_fit(chosen: dict[str, Any]) -> None:
    bed = built(**chosen)

    leftover = bed["well_length"] - bed["mattress_along"] - 2 * bed["end_fit"]

    assert -1e-5 <= leftover < bed["grid"].step + 1e-5


@given(BEDS)
def test_room_beside_the_mattress_is_told_as_built(chosen: dict[str, Any]) -> None:
    bed = built(**chosen)

    filled = bed["mattress_across"] + 2 * bed["side_fit_built"]

    assert filled == pytest.approx(bed["well_width"], abs=1e-6)
    assert bed["side_fit_built"] >= bed["side_fit"] - 1e-5


@given(BEDS)
def test_posts_and_what_is_between_them_add_up_to_the_beds_width(chosen: dict[str, Any]) -> None:
    bed = built(**chosen)

    at_the_end = bed["between_posts"] + 2 * bed["post_width"]
    at_the_rails = bed["well_width"] + 2 * (bed["rail_set_back"] + bed["frame_thickness"])

    assert at_the_end == pytest.approx(bed["bed_width"], abs=1e-6)
    assert at_the_rails == pytest.approx(bed["bed_width"], abs=1e-6)


@given(BEDS)
def test_posts_and_side_rail_add_up_to_the_beds_length(chosen: dict[str, Any]) -> None:
    bed = built(**chosen)

    assert bed["rail_length"] + 2 * bed["post_along"] == pytest.approx(bed["bed_length"], abs=1e-6)


@given(BEDS)
def test_rails_are_cut_on_the_grid(chosen: dict[str, Any]) -> None:
    bed = built(**chosen)

    assert bed["grid"].holds(bed["rail_length"])
    assert bed["grid"].holds(bed["between_posts"])


@given(BEDS)
def test_rails_stand_inside_their_posts(chosen: dict[str, Any]) -> None:
    bed = built(**chosen)

    assert 0 <= bed["rail_set_back"] <= bed["post_width"] - bed["frame_thickness"] + 1e-6
    assert 0 <= bed["end_rail_set_back"] <= bed["post_along"] - bed["frame_thickness"] + 1e-6


@given(BEDS)
def test_the_mattress_lies_in_the_middle_of_its_well(chosen: dict[str, Any]) -> None:
    bed = built(**chosen)

    foot = bed["mattress_foot_y"] - (bed["post_along"] + bed["foot_stands_in"])
    mattress_head = bed["mattress_foot_y"] + bed["mattress_along"]
    head = bed["rail_end"] - bed["head_stands_in"] - mattress_head

    assert foot == pytest.approx(head, abs=1e-6)
    assert foot == pytest.approx(bed["end_fit_built"], abs=1e-6)


def test_a_queen_with_half_an_inch_all_round() -> None:
    """Reckoned by hand: rails stand 6 + 22 mm deep in posts of 70 mm."""
    bed = built()

    assert bed["well_width"] == 1524 + 2 * 13
    assert bed["between_posts"] == 1550 - 2 * (70 - 28)
    assert bed["bed_width"] == 1550 + 2 * 28
    assert bed["rail_length"] == 2032 + 2 * 13
    assert bed["bed_length"] == 2058 + 2 * 66


def test_a_cap_that_stands_in_at_the_head_lengthens_the_rails() -> None:
    plain, capped = built(), built(head_stands_in=18)

    assert capped["rail_length"] - plain["rail_length"] == 18
    assert capped["well_length"] == plain["well_length"]
    assert capped["mattress_foot_y"] == plain["mattress_foot_y"]


def test_a_measured_mattress_that_is_wider_widens_the_bed_alike() -> None:
    """Mattresses "vary from any standard": a king of 76 in that measures 77."""
    label, measured = built(mattress_across=76 * INCH), built(mattress_across=77 * INCH)

    grown = measured["bed_width"] - label["bed_width"]

    assert grown == pytest.approx(INCH, abs=GRID.step)  # each width lies within one step


def test_rails_set_back_farther_do_not_narrow_the_well() -> None:
    flush, back = built(rail_set="flush"), built(rail_set="set back", rail_reveal=20)

    assert flush["well_width"] == back["well_width"]
    assert back["bed_width"] - flush["bed_width"] == 2 * 20


# ---------------------------------------------------------------- rails in their posts


def test_rails_stand_flush_centred_or_set_back() -> None:
    assert rail_set_back("flush", 6, 70, 22, GRID) == 0
    assert rail_set_back("centred", 6, 70, 22, GRID) == (70 - 22) / 2
    assert rail_set_back("set back", 6, 70, 22, GRID) == 6


def test_a_centred_rail_off_the_grid_moves_outwards() -> None:
    assert rail_set_back("centred", 6, 70, 21, GRID) == 24  # 24.5 before rounding
    assert rail_set_back("centred", 6, 70, 21, GRIDS["0.5 mm"]) == 24.5


def test_end_rails_go_by_the_posts_depth() -> None:
    assert end_rail_set_back("centred", 6, 66, 22, GRID) == (66 - 22) / 2


@pytest.mark.parametrize("rail_set", ["flush", "centred", "set back"])
def test_rails_thicker_than_their_posts_are_refused(rail_set: RailSet) -> None:
    with pytest.raises(CannotBuild, match=r"rails \(45 mm\) are thicker .* \(40 mm\)") as refusal:
        rail_set_back(rail_set, 0, 40, 45, GRID)

    assert refusal.value.field == "frame_stock"


def test_a_rail_as_thick_as_its_post_stands_flush() -> None:
    assert rail_set_back("flush", 6, 40, 40, GRID) == 0


def test_rails_set_back_out_of_their_posts_are_refused() -> None:
    assert rail_set_back("set back", 20, 42, 22, GRID) == 20
    with pytest.raises(CannotBuild, match="stand out behind their posts") as refusal:
        rail_set_back("set back", 20.5, 42, 22, GRID)

    assert refusal.value.field == "rail_reveal"


def test_posts_that_leave_no_room_between_them_are_refused() -> None:
    """300 mm: below that no end rail is worth its joints; common practice, no source."""
    assert between_posts(600, 0, 150, GRID) == 300
    with pytest.raises(CannotBuild, match="no end rail fits between them") as refusal:
        between_posts(599, 0, 150, GRID)

    assert refusal.value.field == "post_width"
