"""What a full drawer asks of its box, by plain call."""

from __future__ import annotations

import pytest

from model.dimensions.drawer_forces import (
    bottom_bends,
    bottom_field_across,
    bottom_field_along,
    bottom_field_short,
    bottom_held,
    bottom_lasting_load,
    bottom_own_load,
    bottom_sag,
    bottom_sag_room,
    bottom_test_load,
    box_overhang,
    box_side_modulus,
    drawer_clothes,
    jerk_force,
)
from model.materials import material, stock_grade
from model.mechanics.plate import Bent

PLY = material("birch_ply_6_5")
CLEAR = stock_grade("clear")


def test_clothes_fill_a_drawer_to_the_top_of_its_sides() -> None:
    """900 x 500 x 180 mm at 8.5 lb/ft3 (16 CFR 1261): 11 kg."""
    assert drawer_clothes(136.2, 900, 500, 180) == pytest.approx(11.03, abs=0.01)


def test_a_bottom_bends_under_its_own_weight_too() -> None:
    """6.4 mm of 670 kg/m3 is 4.3 kg/m2, 42 Pa."""
    assert bottom_own_load(PLY, 6.4) == pytest.approx(670 * 0.0064 * 9.80665)
    assert bottom_test_load(718.0, 42.0) == 760
    assert bottom_lasting_load(136.0, 170.0, 42.0) == pytest.approx(136 * 0.17 * 9.80665 + 42)


def test_a_bottom_spans_between_the_middles_of_its_bearings() -> None:
    held = bottom_held(6.0, 1.0)

    assert held == 5
    assert bottom_field_across(800, False, held) == 805
    assert bottom_field_along(500, held) == 505
    assert bottom_field_short(805, 505) == 505


def test_a_centre_runner_halves_the_bottom() -> None:
    assert bottom_field_across(800, True, 5) == pytest.approx(402.5)


def test_a_bottom_of_quarter_inch_ply_in_a_wide_drawer_sags_past_five_millimetres() -> None:
    """Printed coefficients for an even sheet of 6 GPa: 900 x 500, 5.2 mm, 718 Pa: 5.4 mm. Birch of
    6.4 mm with its face grain the long way, the usual way to cut it, is no better.
    """
    bends = bottom_bends(PLY, CLEAR, 6.4, 900, 500, 1)

    assert 4.0 < bends.sag * 718 < 6.0


def test_lasting_things_sag_twice_as_far_in_time() -> None:
    """Creep: NDS 2018, 3.5.2."""
    bends = Bent(0.01, 0.0, 0.0)

    assert bottom_sag(bends, 760, 270) == pytest.approx(7.6)
    assert bottom_sag(bends, 760, 600) == pytest.approx(12.0)


def test_a_row_without_drawers_has_no_bottom() -> None:
    assert bottom_bends(PLY, CLEAR, 6.4, 5, 0, 0) == Bent(0.0, 0.0, 0.0)


def test_a_bottom_may_sag_to_the_rail_that_the_box_runs_over() -> None:
    assert bottom_sag_room(9.525, 6.35) == pytest.approx(15.875)


def test_a_jerk_of_one_is_the_drawers_contents() -> None:
    """0.5 m/s stopped within 12.75 mm: v^2 / 2 s = 9.8 m/s2."""
    assert jerk_force(50.0, 1.0) == pytest.approx(50 * 0.5**2 / (2 * 0.01275), rel=1e-3)


def test_a_box_reaches_past_its_slides_last_screw() -> None:
    spots = (37.0, 280.0, 524.0)

    assert box_overhang(True, False, spots, 997.0, 559.0, 1) == pytest.approx(473)
    assert box_overhang(True, False, spots, 500.0, 559.0, 1) == 0
    assert box_overhang(True, True, spots, 997.0, 559.0, 1) == 0  # skids bear it


def test_a_box_on_runners_reaches_out_as_far_as_it_is_open() -> None:
    assert box_overhang(False, False, (), 700.0, 520.0, 1) == 520
    assert box_overhang(False, False, (), 700.0, 520.0, 0) == 0


def test_a_box_side_is_as_thick_as_its_groove_leaves_it() -> None:
    assert box_side_modulus(12, 4.8, 187) == pytest.approx(7.2 * 187**2 / 6)
