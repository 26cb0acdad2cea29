"""Panels that close a frame reach into their grooves, keep their float, and leave walls of wood."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from model.dimensions.closing import (
    blind_bay_from,
    blind_bays,
    blind_panel_tuck,
    blind_panel_width,
    closed_bays,
    closing_float,
    closing_panel_bottom,
    closing_panel_height,
    closing_panel_plane,
    closing_panel_tuck,
    closing_panel_width,
)
from model.errors import CannotBuild
from model.units import GRIDS, ShopGrid

GRID = GRIDS["1 mm"]
grids = st.sampled_from(sorted(GRIDS)).map(GRIDS.__getitem__)
depths, floats = st.floats(9, 20), st.floats(0, 8)


def test_only_a_closed_side_has_panels_in_its_bays() -> None:
    places = (116.0, 785.0)

    assert closed_bays("closed frame", places) == places
    for side in ("drawer", "plain", "dummy"):
        assert closed_bays(side, places) == ()


def test_the_bay_beside_foot_drawers_is_blind_where_there_is_a_frame() -> None:
    start = blind_bay_from(66, 50)

    assert start == 116
    assert blind_bays(True, 400, start) == (116,)
    assert blind_bays(False, 400, start) == ()
    assert blind_bays(True, 0, start) == ()


def test_a_blind_bay_too_narrow_for_a_panel_is_refused() -> None:
    assert blind_bays(True, 40, 116) == (116,)
    for room in (39, 0.5, -20):
        with pytest.raises(CannotBuild, match="No room is left for the closed bay") as refusal:
            blind_bays(True, room, 116)

        assert refusal.value.field == "end_stile_least"


@given(grids, st.floats(40, 450), st.floats(120, 900), st.floats(40, 600), depths, floats)
def test_a_panel_keeps_its_float_and_loses_no_more_than_a_step(
    grid: ShopGrid, height: float, width: float, blind: float, depth: float, room: float
) -> None:
    height, width, depth = grid.near(height), grid.near(width), grid.near(depth)
    sizes = [
        (closing_panel_height(height, depth, room, grid), height),
        (closing_panel_width(width, depth, room, grid), width),
        (blind_panel_width(blind, depth, room, grid), blind),
    ]

    for size, bay in sizes:
        left = depth - (size - bay) / 2

        assert grid.holds(size)
        assert -1e-6 <= left - room < grid.step / 2 + 1e-6


@given(grids, st.floats(40, 450), st.floats(120, 900), depths, floats)
def test_the_float_that_is_told_covers_every_edge(
    grid: ShopGrid, height: float, width: float, depth: float, room: float
) -> None:
    """The joint between panel and groove may leave so much: it must hold for height and width."""
    tall = closing_panel_height(height, depth, room, grid)
    wide = closing_panel_width(width, depth, room, grid)

    told = closing_float(depth, tall, height, grid)

    assert told >= depth - (tall - height) / 2 - 1e-6
    assert told >= depth - (wide - width) / 2 - 1e-6
    assert told <= room + grid.step + 1e-6


def test_a_panel_is_kept_centred_in_its_grooves() -> None:
    tall = closing_panel_height(233, 10, 3, GRID)
    bottom = closing_panel_bottom(65, 233, tall)

    assert tall == 233 + 2 * (10 - 3)
    assert 65 - bottom == (bottom + tall) - (65 + 233) == 7


def test_a_panel_reaches_alike_into_both_stiles() -> None:
    assert closing_panel_tuck(633, 619) == blind_panel_tuck(414, 400) == 7


def test_a_panel_lies_in_the_middle_of_its_frame() -> None:
    plane = closing_panel_plane(6, 22, 6, (116.0,), ())

    assert plane - 6 == (6 + 22) - (plane + 6) == 8


def test_a_groove_that_leaves_thin_walls_is_refused_by_the_panel() -> None:
    """6 mm (1/4 in) of wall is kept beside a groove; common practice, no source."""
    assert closing_panel_plane(6, 22, 10, (116.0,), ()) == 12
    for bays in (((116.0,), ()), ((), (116.0,))):
        with pytest.raises(CannotBuild, match=r"leave walls of 5\.0 mm") as refusal:
            closing_panel_plane(6, 22, 12, *bays)

        assert refusal.value.field == "panel_stock"


def test_a_side_without_panels_has_no_groove_to_refuse() -> None:
    closing_panel_plane(6, 22, 20, (), ())
