"""Bolts and the nuts they pull at."""

from __future__ import annotations

from dataclasses import replace

import pytest

from model.errors import BadInput
from model.mechanics.fasteners.bolts import (
    design_double_shear,
    design_nut_bearing,
    design_shear_out,
    design_single_shear,
)
from model.mechanics.fasteners.dowel_bearing import STEEL_PLATE, bending_yield, dowel_bearing
from model.mechanics.fasteners.strengths import DesignStress, UltimateStress
from model.mechanics.fasteners.yield_modes import Shear

OAK = dowel_bearing(0.67, 8)


def joined(side: float, side_bearing: UltimateStress) -> Shear:
    return Shear(
        diameter=8, bending_yield=bending_yield(8), main_bearing=OAK, main_length=40,
        side_bearing=side_bearing, side_length=side,
    )  # fmt: skip


def test_a_bolt_that_bends_bears_twice_as_much_in_two_planes() -> None:
    """Members so thick that the bolt bends twice (mode IV) whichever way."""
    thick = replace(joined(90, OAK), main_length=180)

    assert design_double_shear(thick) == pytest.approx(2 * design_single_shear(thick))


def test_in_two_planes_the_middle_member_may_crush_first() -> None:
    """8 x 10 mm of oak at 51.7 MPa / 4: 1035 N, whatever the sides."""
    thin = replace(joined(90, OAK), main_length=10)

    assert design_double_shear(thin) == pytest.approx(8 * 10 * OAK / 4)


def test_a_steel_side_plate_holds_more_than_as_much_wood() -> None:
    wood = design_double_shear(joined(3, OAK))

    assert design_double_shear(joined(3, STEEL_PLATE)) > wood


def test_force_across_the_grain_is_borne_less() -> None:
    """Every term is a quarter more across the grain."""
    shear = joined(25, OAK)

    assert design_single_shear(shear, 90) == pytest.approx(design_single_shear(shear) / 1.25)
    with pytest.raises(BadInput, match="0 to 90"):
        design_single_shear(shear, 120)


def test_a_barrel_nut_crushes_the_wood_before_it() -> None:
    """15 mm nut, 25 mm long, G 0.42: 15 x 25 x 77.2 x 0.42 / 4 = 3041 N."""
    assert design_nut_bearing(0.42, 15, 25) == pytest.approx(3041, abs=3)


def test_wood_before_a_nut_shears_out_along_two_planes() -> None:
    """38 mm to the end, 25 mm deep, 1.5 MPa allowed: 2 x 38 x 25 x 1.5 / 1.5 = 1900 N."""
    assert design_shear_out(DesignStress(1.5), 38, 25) == pytest.approx(1900)


def test_a_bolt_with_nothing_round_it_is_refused() -> None:
    with pytest.raises(BadInput, match="length in the side member"):
        joined(0, OAK)
