"""Plates: what stiffens them, and what is refused."""

from __future__ import annotations

import pytest

from model.errors import BadInput
from model.mechanics.plate import Bent, bent, even_plate, sheet_plate

PLYWOOD = sheet_plate(12_700, 4800, 6.4, 620, 0.07)


def test_half_the_thickness_sags_eight_times_as_much() -> None:
    thin, thick = (bent(even_plate(6000, t), 700, 500, 1e-3).sag for t in (6, 12))

    assert thin == pytest.approx(8 * thick)


def test_sag_and_moments_grow_with_the_load() -> None:
    once, twice = (bent(PLYWOOD, 700, 500, load) for load in (1e-3, 2e-3))

    assert tuple(twice) == pytest.approx(tuple(2 * each for each in once))
    assert bent(PLYWOOD, 700, 500, 0.0) == Bent(0.0, 0.0, 0.0)


def test_face_grain_across_the_short_way_sags_less() -> None:
    """The short way carries most: there the stiff direction belongs."""
    stiff_short = bent(PLYWOOD, 450, 900, 1e-3).sag
    stiff_long = bent(PLYWOOD, 900, 450, 1e-3).sag

    assert stiff_short < 0.6 * stiff_long


def test_turning_the_plate_and_its_grain_changes_nothing_but_the_names() -> None:
    turned = sheet_plate(4800, 12_700, 6.4, 620, 0.07)

    one, other = bent(PLYWOOD, 700, 500, 1e-3), bent(turned, 500, 700, 1e-3)

    assert (one.sag, one.moment_x, one.moment_y) == pytest.approx(
        (other.sag, other.moment_y, other.moment_x)
    )


@pytest.mark.parametrize("plate", [even_plate(6000, 9), PLYWOOD])
def test_clamped_edges_sag_far_less(plate: object) -> None:
    resting = bent(plate, 700, 500, 1e-3)  # type: ignore[arg-type]
    clamped = bent(plate, 700, 500, 1e-3, "clamped")  # type: ignore[arg-type]

    assert 0.15 < clamped.sag / resting.sag < 0.4


def test_a_sheet_alike_both_ways_is_an_even_plate() -> None:
    assert sheet_plate(6000, 6000, 9, 6000 / 2.6, 0.3) == even_plate(6000, 9)


@pytest.mark.parametrize("figures", [(0, 5000, 6, 500), (9000, 5000, 0, 500), (9000, 5000, 6, 0)])
def test_a_plate_without_stiffness_is_refused(figures: tuple[float, ...]) -> None:
    with pytest.raises(BadInput, match="stiffness above zero"):
        sheet_plate(*figures, ratio=0.1)


def test_a_plate_without_width_is_refused() -> None:
    with pytest.raises(BadInput, match="length and a width"):
        bent(PLYWOOD, 700, 0, 1e-3)
