"""Fastener formulas against worked values and tables.

Sources: the Wood Handbook 2021 (FPL-GTR-282), chapter 8; NDS 2018 (National Design Specification
for Wood Construction), tables 12.2A, seen in print, and 12.2B, 12L, 12M, 12A, 12F, from memory.
The tables are in pounds: that our metric functions meet them also tests the conversion.
"""

from __future__ import annotations

import pytest

from model.errors import BadInput
from model.mechanics.fasteners.bolts import design_double_shear, design_single_shear
from model.mechanics.fasteners.dowel_bearing import (
    STEEL_PLATE,
    bending_yield,
    dowel_bearing,
    small_dowel_bearing,
)
from model.mechanics.fasteners.lateral import (
    ScrewJoint,
    design_from_yield,
    design_screw_lateral,
    handbook_yield_lateral,
    lateral_constant,
    proportional_limit_lateral,
    wood_side,
)
from model.mechanics.fasteners.strengths import UltimateStress
from model.mechanics.fasteners.withdrawal import (
    design_lag_withdrawal,
    design_screw_withdrawal,
    ultimate_lag_withdrawal,
    ultimate_screw_withdrawal,
)
from model.mechanics.fasteners.yield_modes import Shear
from model.mechanics.timber import at_angle

INCH = 25.4
LBF = 4.4482216152605
PSI = 0.006894757293168
NO_6, NO_8 = 3.51, 4.17  # shanks, Wood Handbook table 8-9


# ---------------------------------------------------------------- withdrawal


def test_eq_8_10_wood_screw() -> None:
    """No. 8, 25 mm of thread in yellow-poplar."""
    assert ultimate_screw_withdrawal(0.42, NO_8, 25) == pytest.approx(1990.7, abs=0.1)


def test_eq_8_10_in_inches_and_pounds() -> None:
    """15 700 G^2 D L, from memory; it equals the metric form."""
    found = ultimate_screw_withdrawal(0.42, 0.16417 * INCH, 0.98425 * INCH) / LBF

    assert found == pytest.approx(447.5, abs=0.1)
    assert found == pytest.approx(15_700 * 0.42**2 * 0.16417 * 0.98425, rel=3e-4)


def test_eq_8_10_in_sugar_maple() -> None:
    assert ultimate_screw_withdrawal(0.63, NO_8, 25) == pytest.approx(4479, abs=0.5)


def test_eq_8_14_lag_screw() -> None:
    found = ultimate_lag_withdrawal(0.51, 6.35, 38)

    assert found == pytest.approx(6942.5, abs=2)
    pounds = 8100 * 0.51**1.5 * (6.35 / INCH) ** 0.75 * (38 / INCH)  # from memory
    assert found / LBF == pytest.approx(pounds, rel=3e-4)


@pytest.mark.parametrize(
    ("gravity", "inches", "per_inch"),
    [
        (0.73, 0.25, 397), (0.50, 0.25, 225), (0.50, 0.3125, 266), (0.50, 0.5, 378),
        (0.42, 0.375, 235), (0.35, 0.5, 222), (0.31, 1.0, 311),
    ],
)  # fmt: skip
def test_table_12_2a_lag_screw(gravity: float, inches: float, per_inch: float) -> None:
    found = design_lag_withdrawal(gravity, inches * INCH, INCH) / LBF

    assert found == pytest.approx(per_inch, abs=0.51)  # printed to a pound


def test_table_12_2b_wood_screw() -> None:
    """No. 8 in wood of 0.50: 117 lbf for each inch of thread, from memory."""
    assert design_screw_withdrawal(0.50, 0.164 * INCH, INCH) / LBF == pytest.approx(117, abs=0.5)


def test_margins_that_the_design_values_are_built_on() -> None:
    """15 700 / 2850 = 5.5 for wood screws, 8100 / 1800 = 4.5 for lag screws."""
    wood_screw = ultimate_screw_withdrawal(0.5, 4, 20) / design_screw_withdrawal(0.5, 4, 20)
    lag_screw = ultimate_lag_withdrawal(0.5, 8, 50) / design_lag_withdrawal(0.5, 8, 50)

    assert wood_screw == pytest.approx(5.509, abs=0.003)
    assert lag_screw == pytest.approx(4.5, abs=0.002)


# ---------------------------------------------------------------- sideways


def test_eq_8_13_older_form() -> None:
    """No. 8 in yellow-poplar: K 23.17."""
    assert proportional_limit_lateral("hardwood", 0.42, NO_8) == pytest.approx(402.9, abs=0.1)


@pytest.mark.parametrize(
    ("kind", "gravity", "k", "psi"),
    [
        ("hardwood", 0.33, 23.17, 3360), ("hardwood", 0.50, 31.99, 4640),
        ("hardwood", 0.74, 44.13, 6400), ("softwood", 0.42, 23.17, 3360),
        ("softwood", 0.45, 29.79, 4320), ("softwood", 0.48, 36.40, 5280),
    ],
)  # fmt: skip
def test_table_8_4_constants(kind: str, gravity: float, k: float, psi: float) -> None:
    """The inch-pound column is from memory; the metric one equals it to 0.02 %."""
    found = lateral_constant(kind, gravity)  # type: ignore[arg-type]

    assert found == k
    assert found / PSI == pytest.approx(psi, rel=2.5e-4)


@pytest.mark.parametrize(("kind", "gravity"), [("softwood", 0.55), ("hardwood", 0.80)])
def test_table_8_4_has_no_constant_for_heavy_wood(kind: str, gravity: float) -> None:
    with pytest.raises(BadInput, match=f"no constant for {kind} of specific gravity {gravity:.2f}"):
        lateral_constant(kind, gravity)  # type: ignore[arg-type]


@pytest.mark.parametrize(("main", "side", "load"), [(0.42, 0.42, 879.6), (0.42, 0.63, 1312)])
def test_table_8_5_yield_model(main: float, side: float, load: float) -> None:
    """No. 8, side 19 mm, steel of 620 MPa: one hinge in poplar, two with a maple side."""
    found = handbook_yield_lateral(
        NO_8, 19, main_bearing=small_dowel_bearing(main), side_bearing=small_dowel_bearing(side),
        steel_yield=UltimateStress(620),
    )  # fmt: skip

    assert found == pytest.approx(load, abs=0.6)


def test_table_8_5_divided_down_is_close_to_the_older_form() -> None:
    """880 N / 2.2 = 400 N, against 403 N."""
    poplar = small_dowel_bearing(0.42)
    found = handbook_yield_lateral(
        NO_8, 19, main_bearing=poplar, side_bearing=poplar, steel_yield=UltimateStress(620)
    )

    design = design_from_yield(found, NO_8)

    assert design == pytest.approx(400, abs=0.5)
    assert design == pytest.approx(proportional_limit_lateral("hardwood", 0.42, NO_8), rel=0.01)


def test_eq_8_3_in_inches_and_pounds() -> None:
    """16 600 G^1.84 lbf/in2, from memory."""
    assert small_dowel_bearing(0.5) / PSI == pytest.approx(16_600 * 0.5**1.84, rel=5e-4)


GRAVITIES = (0.67, 0.55, 0.50, 0.49, 0.46, 0.43, 0.42, 0.37, 0.36, 0.35)
ROOT_6, SHANK_6 = 0.113 * INCH, 0.138 * INCH  # NDS appendix L, from memory


def no_6(gravity: float, side: float, side_bearing: UltimateStress) -> float:
    """Pounds on a No. 6 screw with ten diameters in the main member."""
    shear = Shear(
        diameter=ROOT_6, bending_yield=bending_yield(SHANK_6),
        main_bearing=small_dowel_bearing(gravity), main_length=10 * SHANK_6,
        side_bearing=side_bearing, side_length=side * INCH,
    )  # fmt: skip
    return design_from_yield(min(shear.single().values()), ROOT_6) / LBF


# The standard rounds bearing strengths to 50 lbf/in2 and loads to a pound.
POUND = 0.9


@pytest.mark.parametrize(
    ("gravity", "load"),
    list(zip(GRAVITIES, (88, 67, 59, 57, 53, 49, 47, 41, 40, 38), strict=True)),
)
def test_table_12l_no_6_screw_through_half_an_inch(gravity: float, load: float) -> None:
    found = no_6(gravity, 0.5, small_dowel_bearing(gravity))

    assert found == pytest.approx(load, abs=POUND)


@pytest.mark.parametrize(
    ("gravity", "load"),
    list(zip(GRAVITIES, (89, 76, 70, 69, 66, 62, 60, 54, 53, 52), strict=True)),
)
def test_table_12m_no_6_screw_through_20_gauge_steel(gravity: float, load: float) -> None:
    assert no_6(gravity, 0.036, STEEL_PLATE) == pytest.approx(load, abs=POUND)


@pytest.mark.parametrize(
    ("gravity", "load"),
    list(zip(GRAVITIES, (88, 67, 59, 57, 53, 49, 47, 41, 40, 38), strict=True)),
)
def test_the_design_value_of_a_screw_is_that_table_or_a_little_less(
    gravity: float, load: float
) -> None:
    """One share of root to shank serves all gauges: for No. 6 it is 3.5 % thin."""
    joint = ScrewJoint(
        shank=SHANK_6, side=INCH / 2, side_bearing=wood_side(gravity), main_gravity=gravity,
        bite=11 * SHANK_6,
    )  # fmt: skip

    assert 0.94 * load - POUND < design_screw_lateral(joint) / LBF < load + POUND


# ---------------------------------------------------------------- bolts


def bolt(gravity: float, inches: float, angle: float) -> Shear:
    """Two members of 1 1/2 in, force at an angle to the grain of both."""
    bears = dowel_bearing(gravity, inches * INCH, angle)
    return Shear(
        diameter=inches * INCH, bending_yield=bending_yield(inches * INCH),
        main_bearing=bears, main_length=1.5 * INCH, side_bearing=bears, side_length=1.5 * INCH,
    )  # fmt: skip


@pytest.mark.parametrize(
    ("gravity", "inches", "angle", "load"),
    [
        (0.67, 0.5, 0, 650), (0.67, 0.5, 90, 330), (0.55, 0.5, 0, 530), (0.55, 0.5, 90, 250),
        (0.50, 0.5, 0, 480), (0.50, 0.5, 90, 220), (0.50, 0.625, 0, 600),
    ],
)  # fmt: skip
def test_table_12a_bolt_in_single_shear(
    gravity: float, inches: float, angle: float, load: float
) -> None:
    found = design_single_shear(bolt(gravity, inches, angle), angle) / LBF

    assert found == pytest.approx(load, abs=5.5)  # printed to ten pounds


@pytest.mark.parametrize(("angle", "load"), [(0, 1050), (90, 470)])
def test_table_12f_bolt_in_double_shear(angle: float, load: float) -> None:
    found = design_double_shear(bolt(0.50, 0.5, angle), angle) / LBF

    assert found == pytest.approx(load, abs=5.5)


def test_eq_8_16_bearing_at_an_angle() -> None:
    assert at_angle(38.2, 3.4, 45) == pytest.approx(6.244, abs=0.001)
