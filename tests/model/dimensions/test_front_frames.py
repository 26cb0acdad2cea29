"""Framed fronts add up: stiles and field, panel and float."""

import pytest

from model.dimensions.front_frames import (
    front_field_width,
    front_panel_float,
    front_panel_reach,
    front_panel_recess,
    front_panel_tuck,
    front_panel_width,
    front_rail_length,
)
from model.errors import CannotBuild
from model.units import GRIDS

MM = GRIDS["1 mm"]


def test_stiles_and_rail_make_the_front() -> None:
    field = front_field_width(574.0, 55.0, "frame and panel", 1)

    assert 2 * 55.0 + field == 574.0
    assert front_rail_length(field, 10.0) == field + 20.0


def test_panel_and_float_fill_the_grooves() -> None:
    width = front_panel_width(464.0, front_panel_reach(10.0, 3.175, "frame and panel", 1), MM)
    tuck = front_panel_tuck(width, 464.0)

    assert width + 2 * front_panel_float(10.0, tuck) == 464.0 + 20.0
    assert front_panel_float(10.0, tuck) >= 3.175


def test_a_panel_thicker_than_the_room_behind_its_groove_is_refused() -> None:
    with pytest.raises(CannotBuild) as refusal:
        front_panel_recess("frame and panel", 19.0, 6.0, 15.0, 1)

    assert refusal.value.field == "front_panel_stock"


def test_a_slab_has_no_recess() -> None:
    assert front_panel_recess("slab", 19.0, 6.0, 15.0, 1) == 0.0
