"""Least distances of EN 1995-1-1 (from memory), in multiples of the diameter."""

from __future__ import annotations

import pytest

from model.errors import BadInput
from model.mechanics.fasteners.spacing import bolts, drawn_screws, pushed_screws


def in_diameters(found: tuple[float, ...], diameter: float) -> list[float]:
    return [round(each / diameter, 6) for each in found]


def test_table_8_2_with_pilot_holes() -> None:
    """Force along the grain, then across it."""
    along, across = (pushed_screws(4, a, has_pilot=True, density=600) for a in (0, 90))

    assert in_diameters(along, 4) == [5, 3, 12, 7, 3, 3]
    assert in_diameters(across, 4) == [4, 4, 7, 7, 5, 3]


def test_table_8_2_thicker_than_5_mm_wants_a_wider_loaded_edge() -> None:
    found = pushed_screws(6, 90, has_pilot=True, density=600)

    assert in_diameters(found, 6) == [4, 4, 7, 7, 7, 3]


def test_table_8_2_without_pilot_holes() -> None:
    light = pushed_screws(4, 0, has_pilot=False, density=400)
    heavier = pushed_screws(4, 0, has_pilot=False, density=450)

    assert in_diameters(light, 4) == [10, 5, 15, 10, 5, 5]
    assert in_diameters(heavier, 4) == [15, 7, 20, 15, 7, 7]


def test_hard_wood_is_drilled() -> None:
    with pytest.raises(BadInput, match="splits without pilot holes"):
        pushed_screws(4, 0, has_pilot=False, density=700)


def test_table_8_6_screws_drawn_out() -> None:
    assert in_diameters(drawn_screws(5), 5) == [7, 5, 10, 10, 4, 4]


def test_table_8_4_bolts() -> None:
    """A loaded end is 7 d or 80 mm away, whichever is more."""
    along, across = bolts(8, 0), bolts(8, 90)

    assert in_diameters(along, 8) == [5, 4, 10, 4, 3, 3]
    assert along.loaded_end == 80
    assert bolts(20, 0).loaded_end == 140
    assert in_diameters(across, 8) == [4, 4, 10, 7, 4, 3]
