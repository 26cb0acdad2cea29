"""Boxes in their row: width by the slide, depth by what stands behind."""

import pytest

from model.dimensions.boxes import (
    access,
    box_back_plane,
    box_depth,
    box_front_length,
    box_width,
    box_width_step,
    slide_closed,
)
from model.errors import CannotBuild
from model.materials import slide
from model.units import GRIDS, ShopGrid

FULL = slide("side_mount_full")
MM = GRIDS["1 mm"]


@pytest.mark.parametrize("opening", [400.0 + i * 7.3 for i in range(40)])
@pytest.mark.parametrize("grid", GRIDS.values(), ids=GRIDS)
def test_a_box_lands_in_its_slides_tolerance_on_any_grid(opening: float, grid: ShopGrid) -> None:
    adds, space = 6.0, 12.7 + 0.3
    wanted = opening - 2 * space - 2 * adds

    step = box_width_step(wanted, 0.3, FULL, grid)
    width = box_width(box_front_length(wanted, step, 1), adds, 1)

    play = (opening - width) / 2 - 12.7
    assert FULL.play_low_mm - 1e-6 <= play <= FULL.play_high_mm + 1e-6


def test_a_size_on_the_grid_already_keeps_the_makers_grid() -> None:
    assert box_width_step(562.0, 0.3, FULL, MM) == MM


def test_the_longest_slide_that_fits_is_taken() -> None:
    assert slide_closed(FULL, None, 600.0, 3, MM) == 558.8  # 22 in: 24 in is 609.6


def test_a_slide_of_the_makers_own_must_fit() -> None:
    assert slide_closed(FULL, 500.0, 600.0, 3, MM) == 500.0
    with pytest.raises(CannotBuild) as refusal:
        slide_closed(FULL, 700.0, 600.0, 3, MM)

    assert refusal.value.field == "slide_length"


def test_a_box_by_slide_is_no_shorter_than_its_slide() -> None:
    assert box_depth("slide", 558.8, 600.0, 1, MM) == 559.0
    assert box_depth("half", 558.8, 600.4, 1, MM) == 600.0


def test_a_box_too_shallow_is_refused() -> None:
    with pytest.raises(CannotBuild) as refusal:
        box_depth("half", 100.0, 100.0, 1, MM)

    assert refusal.value.field == "depth"


def test_access_is_the_share_that_comes_out() -> None:
    assert access(600.0, 450.0, 0.0) == 0.75
    assert access(600.0, 700.0, 0.0) == 1.0
    assert access(600.0, 450.0, 19.0) == pytest.approx(431 / 600)


def test_a_row_without_drawers_has_no_box() -> None:
    assert slide_closed(FULL, None, -5.0, 0, MM) == 0.0
    assert box_depth("half", 0.0, -5.0, 0, MM) == 0.0
    assert access(0.0, 0.0, 0.0) == 0.0
    assert box_back_plane(6.0, 0.0) == 6.0
