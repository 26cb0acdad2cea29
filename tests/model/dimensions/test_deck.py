"""Slats and panels: alike, evenly spread, long enough to stay on their cleats."""

from __future__ import annotations

import itertools

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from model.bed import Design, solve
from model.checks.record import Verdict
from model.dimensions.deck import (
    batten_bottom,
    batten_from_x,
    batten_gap,
    batten_halves,
    batten_length,
    batten_places,
    batten_span,
    cleat_inner_x,
    cleat_on_rail,
    cleat_overhang,
    cleat_screw_length,
    deck_panel_from,
    deck_panel_length,
    deck_panel_pitch,
    deck_panel_places,
    slat_bearing_least,
    slat_clearance_built,
    slat_end_gap,
    slat_from_x,
    slat_length,
    slat_pitch,
    slat_places,
    slat_screw_in,
    slat_screw_length,
    slat_spacer,
    slats,
    vent_web,
)
from model.errors import CannotBuild
from model.materials import wood_screw
from model.units import GRIDS, ShopGrid

GRID = GRIDS["1 mm"]
INCH = 25.4
POST = 66.0

grids = st.sampled_from(sorted(GRIDS)).map(GRIDS.__getitem__)
rails = st.floats(1500, 2400)
ROOM = 0.8  # at each post, so that slats and panels go in


# ---------------------------------------------------------------- slats along the bed


@given(grids, rails, st.floats(40, 130), st.floats(30, 130))
def test_slats_gaps_and_end_gaps_add_up_to_the_rail(
    grid: ShopGrid, rail: float, width: float, most: float
) -> None:
    rail, width = grid.up(rail), grid.near(width)
    count = slats("slats", "largest gap", 14, rail, most, width)

    spacer = slat_spacer("slats", rail, count, width, grid)
    end = slat_end_gap(rail, count, slat_pitch(width, spacer), spacer)

    total = 2 * end + count * width + (count - 1) * spacer
    assert total == pytest.approx(rail, abs=1e-6)  # floats: no step is lost
    assert grid.holds(spacer)
    assert end >= ROOM - 1e-6


@given(grids, rails, st.floats(40, 130), st.floats(30, 130))
def test_no_gap_is_wider_than_the_largest_and_one_slat_fewer_would_break_that(
    grid: ShopGrid, rail: float, width: float, most: float
) -> None:
    rail = grid.up(rail)
    count = slats("slats", "largest gap", 14, rail, most, width)

    spacer = slat_spacer("slats", rail, count, width, grid)
    with_fewer = (rail - 2 * ROOM - (count - 1) * width) / (count - 2)

    assert spacer <= most + 1e-6
    assert with_fewer > most - 1e-6


@given(grids, rails, st.floats(40, 130), st.floats(30, 130))
def test_what_the_spacer_leaves_over_is_less_than_half_a_step_for_each_gap(
    grid: ShopGrid, rail: float, width: float, most: float
) -> None:
    rail = grid.up(rail)
    count = slats("slats", "largest gap", 14, rail, most, width)
    spacer = slat_spacer("slats", rail, count, width, grid)

    end = slat_end_gap(rail, count, slat_pitch(width, spacer), spacer)

    assert end < (count - 1) * grid.step / 2 + ROOM + 1e-6


def test_a_chosen_number_of_slats_is_kept() -> None:
    assert slats("slats", "count", 9, 2058, 64, 89) == 9


def test_uneven_slats_on_a_strap_get_one_spacer() -> None:
    """Equal gap = (run - n * width) / (n - 1), a builder's page: (2058 - 14 * 89) / 13 = 62.46."""
    spacer = slat_spacer("slats", 2058, 14, 89, GRID)

    assert spacer == 62
    assert slat_end_gap(2058, 14, 89 + 62, 62) == (2058 - 14 * 89 - 13 * 62) / 2


def test_slats_that_would_fill_the_rail_leave_room_to_go_in() -> None:
    """14 slats of 89 mm and 13 gaps of 60 are 2026 mm: on the mm the spacer is 59, and 6.5 mm stay
    at each end.
    """
    spacer = slat_spacer("slats", 2026, 14, 89, GRID)

    assert spacer == 59
    assert slat_end_gap(2026, 14, 89 + 59, 59) == 6.5


def test_slats_stand_between_the_posts() -> None:
    places = slat_places("slats", POST, 3, 151, 14)

    assert len(places) == 14
    assert places[0] == POST + 3
    assert {b - a for a, b in itertools.pairwise(places)} == {151}
    assert places[-1] + 89 + 3 == POST + 2058


def test_a_deck_of_panels_has_no_slats_and_one_of_slats_no_panels() -> None:
    assert slat_places("panels", POST, 3, 151, 14) == ()
    assert deck_panel_places("slats", POST, 685, 3) == ()


def test_more_slats_than_the_rail_is_long_are_refused_by_their_number() -> None:
    assert slat_spacer("slats", 2058, 23, 89, GRID) == 0  # 23 * 89 = 2047
    with pytest.raises(CannotBuild, match="24 slats of 89 mm are longer") as refusal:
        slat_spacer("slats", 2058, 24, 89, GRID)

    assert refusal.value.field == "slat_count"


def test_wide_slats_that_cannot_come_close_enough_are_refused_by_their_gap() -> None:
    """10 slats of 200 mm leave 58 mm: 6.4 for each gap. 11 would not go in, yet 5 was asked for."""
    with pytest.raises(CannotBuild, match="11 slats of 200 mm are longer") as refusal:
        slats("slats", "largest gap", 14, 2058, 5, 200)

    assert refusal.value.field == "slat_gap_most"
    assert slats("slats", "largest gap", 14, 2058, 6.5, 200) == 10


def test_a_deck_of_panels_is_not_refused_over_slats_that_it_has_not() -> None:
    slat_spacer("panels", 2058, 60, 89, GRID)
    slats("panels", "largest gap", 14, 2058, 5, 200)


# ---------------------------------------------------------------- slats across the bed


@given(grids, st.floats(700, 2200), st.floats(0, 12))
def test_slat_and_clearances_add_up_to_the_well(
    grid: ShopGrid, well: float, clearance: float
) -> None:
    length = slat_length(well, clearance, grid)

    built = slat_clearance_built(well, length)

    assert length + 2 * built == pytest.approx(well, abs=1e-6)
    assert -1e-6 <= built - clearance < grid.step / 2 + 1e-6
    assert grid.holds(length)


def test_slats_lie_in_the_middle() -> None:
    assert slat_from_x(1546) == -1546 / 2


def test_slats_half_an_inch_short_drop_off_their_cleats_at_one_side() -> None:
    """A family's slats were 1/2 in short and fell at night, always on one side."""
    cleat, well = 0.75 * INCH, 54 * INCH

    left = slat_bearing_least(cleat, well, well - 0.5 * INCH)

    assert left == pytest.approx(0.25 * INCH)


def test_a_slat_screw_stands_over_the_middle_of_the_cleat() -> None:
    """Cleat and slat are counted from the rail: 15 mm in, less the 2 mm that the slat begins."""
    assert slat_screw_in(2, 30) + 2 == 30 / 2


# ---------------------------------------------------------------- cleats


def test_a_cleat_stands_out_from_the_rail() -> None:
    assert cleat_inner_x(775, 30) == 745


def test_a_cleat_that_hangs_into_an_opening_is_refused_by_the_top_rail() -> None:
    """The top rail is as wide as recess, slat and cleat together: common practice, no source."""
    assert cleat_overhang(300, 300, True, False) == 0
    with pytest.raises(CannotBuild, match=r"hang 2\.0 mm into the openings") as refusal:
        cleat_overhang(298, 300, False, True)

    assert refusal.value.field == "top_rail_width"


def test_a_bed_without_openings_lets_its_cleats_hang() -> None:
    assert cleat_overhang(290, 300, False, False) == -10


def test_a_solid_rail_narrower_than_its_cleat_needs_is_refused() -> None:
    assert cleat_on_rail(97, 400, 303, True, False) == 0
    with pytest.raises(CannotBuild, match=r"hang 1\.0 mm below the side rail") as refusal:
        cleat_on_rail(96, 400, 303, False, True)

    assert refusal.value.field == "rail_width"


def test_two_framed_sides_have_no_solid_rail_to_refuse() -> None:
    assert cleat_on_rail(90, 400, 300, True, True) == -10


# ---------------------------------------------------------------- screws


def test_a_cleat_screw_goes_in_and_does_not_come_out() -> None:
    """30 mm of cleat and 22 of rail less 3 mm of cover: 49 mm at most, and 50.8 (2 in) is more."""
    screw = wood_screw(8)

    length = cleat_screw_length(screw, 30, 22, 3)

    assert length == max(x for x in screw.lengths_mm if x <= 49)
    assert 30 < length <= 30 + 22 - 3


def test_cleat_screws_of_two_and_a_half_inches_come_through_thin_rails() -> None:
    """2 1/2 in in a 1 1/2 in cleat: the habit suits a 1 1/4 in rail and not a 3/4 in one."""
    screw = wood_screw(8)

    assert cleat_screw_length(screw, 1.5 * INCH, 0.75 * INCH, 3) < 2.5 * INCH
    assert cleat_screw_length(screw, 1.5 * INCH, 1.25 * INCH, 3) == pytest.approx(2.5 * INCH)


def test_a_slat_screw_is_no_longer_than_three_slats_and_ends_inside_the_cleat() -> None:
    screw = wood_screw(8)

    for thickness, cleat in ((19, 38), (25, 38), (19, 90)):
        length = slat_screw_length(screw, thickness, cleat, 3)

        assert thickness < length <= min(3 * thickness, thickness + cleat - 3)


def test_a_gauge_that_is_not_sold_long_enough_fails_its_check_and_refuses_no_bed() -> None:
    """No. 4 screws are too short for a cleat of 30 mm: the bed builds, and the check says so."""
    bed = solve(Design().with_choices({"cleat_screw": "4"}))

    said = [f for f in bed.findings if "crews of the cleat" in f.title]
    assert {f.verdict for f in said} == {Verdict.FAILS}
    assert "does not end in" in said[0].reason


# ---------------------------------------------------------------- panels


@given(grids, rails, st.integers(1, 6), st.floats(0, 10), st.floats(38, 150))
def test_panels_joints_and_ends_add_up_to_the_rail(
    grid: ShopGrid, rail: float, count: int, gap: float, post: float
) -> None:
    length = deck_panel_length(rail, count, gap, grid)
    pitch = deck_panel_pitch(length, gap)
    start = deck_panel_from(post, rail, count, pitch, gap)
    places = deck_panel_places("panels", start, pitch, count)

    foot, head = places[0] - post, post + rail - (places[-1] + length)

    assert len(places) == count
    assert foot == pytest.approx(head, abs=1e-6)
    hair = count * 1e-6 / 2 + 1e-9  # the grid lets each panel be 1 nm over; and float dust
    assert ROOM - hair <= foot < count * grid.step / 2 + ROOM + hair
    assert grid.holds(length)


@given(st.floats(500, 900), st.floats(0, 10), st.floats(40, 130))
def test_a_batten_carries_both_panels_alike(length: float, gap: float, width: float) -> None:
    assume(gap < width)
    places = deck_panel_places("panels", POST, deck_panel_pitch(length, gap), 3)

    battens = batten_places(places, gap, width)

    assert len(battens) == 2
    for start, before, after in zip(battens, places[:-1], places[1:], strict=True):
        under_one = before + length - start
        under_other = start + width - after
        assert under_one == pytest.approx(under_other, abs=1e-6)


def test_panels_lie_one_behind_the_other() -> None:
    assert deck_panel_places("panels", POST, 686, 3) == (POST, POST + 686, POST + 2 * 686)


def test_battens_lie_flat_under_the_panels() -> None:
    assert batten_bottom(341, 22) + 22 == 341


def test_rows_of_vents_that_run_into_each_other_are_refused_by_their_number() -> None:
    """Six rows in a panel of 343 mm lie 49 mm apart; 6 mm (1/4 in) of wood is kept between vents:
    common practice, no source."""
    assert vent_web("panels", 343, 6, 43) == 6
    with pytest.raises(CannotBuild, match=r"5\.0 mm of the panel would be left") as refusal:
        vent_web("panels", 343, 6, 44)

    assert refusal.value.field == "vent_rows"


def test_a_deck_without_vents_is_not_refused_over_them() -> None:
    vent_web("slats", 343, 6, 60)
    vent_web("panels", 50, 0, 60)


def test_one_panel_needs_no_batten() -> None:
    assert batten_places((POST,), 2, 89) == ()


@given(grids, st.floats(300, 1100), st.floats(18, 90))
def test_battens_fill_the_room_from_cleat_to_beam_on_both_sides(
    grid: ShopGrid, inner: float, beam: float
) -> None:
    span = batten_span(inner, beam, True)
    length = batten_length(span, grid)
    gap = batten_gap(span, length)
    starts = [batten_from_x(True, inner, gap) + x for x in batten_halves(True, span, beam)]

    left, right = ((x, x + length) for x in starts)

    assert left[0] - -inner == pytest.approx(gap, abs=1e-6)
    assert -beam / 2 - left[1] == pytest.approx(gap, abs=1e-6)
    assert right[0] - beam / 2 == pytest.approx(gap, abs=1e-6)
    assert inner - right[1] == pytest.approx(gap, abs=1e-6)
    assert -1e-6 <= gap < grid.step / 2 + 1e-6


def test_without_a_beam_one_batten_reaches_from_cleat_to_cleat() -> None:
    span = batten_span(745, 38, False)

    assert span == 2 * 745
    assert batten_halves(False, span, 38) == (0.0,)
