"""Blocks behind the fixed fronts of a dummy side."""

import pytest

from model.dimensions.fixed_fronts import block_depth, block_height, block_lap, block_places
from model.errors import CannotBuild
from model.units import GRIDS

MM = GRIDS["1 mm"]


def test_two_blocks_share_a_stile() -> None:
    assert 2 * block_lap(100.0, 50.0, 60.0, MM) <= 50.0


def test_a_block_reaches_from_behind_its_stile_to_the_front() -> None:
    assert block_depth(28.0, 13.0, 6.0) == 35.0


def test_blocks_wider_than_the_opening_are_refused() -> None:
    with pytest.raises(CannotBuild) as refusal:
        block_places((0.0,), True, 10.0, 120.0, 100.0)

    assert refusal.value.field == "dummy_block_width"


def test_blocks_need_height_beside_the_bearers() -> None:
    with pytest.raises(CannotBuild):
        block_height(130.0, 100.0, True, MM)
    assert block_height(130.0, 100.0, False, MM) == 30.0
