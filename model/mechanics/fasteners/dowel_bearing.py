"""How hard wood and steel bear a dowel that is pushed sideways into them, and how it bends."""

from __future__ import annotations

from model.errors import BadInput
from model.mechanics.fasteners.strengths import (
    INCH,
    MPA_PER_PSI,
    UltimateStress,
    above_zero,
    wood_gravity,
)
from model.mechanics.timber import at_angle
from model.units import Degrees, Mm

SMALL: Mm = 6.35  # 1/4 in: below it the grain's direction does not count; NDS 2018, 12.3.3
STEEL_PLATE = UltimateStress(61_850 * MPA_PER_PSI)  # ASTM A653 grade 33; NDS 2018, table 12M note

# Bending yield strength by diameter: up to inch, lbf/in2.
# Source: NDS 2018, notes to tables 12L and 12A, from memory
_BENDING_YIELD = (
    (0.142, 100_000),
    (0.177, 90_000),
    (0.236, 80_000),
    (0.273, 70_000),
    (0.344, 60_000),
    (float("inf"), 45_000),
)


def small_dowel_bearing(gravity: float) -> UltimateStress:
    """Dowel bearing strength of wood for a dowel below 1/4 in, any direction: 114.5 G^1.84.

    Source: Wood Handbook 2021 (FPL-GTR-282), equation 8-3
    """
    wood_gravity(gravity)
    return UltimateStress(114.5 * gravity**1.84)


def dowel_bearing_along(gravity: float) -> UltimateStress:
    """Dowel bearing strength along the grain for 1/4 in and thicker: 11 200 G lbf/in2.

    Source: NDS 2018, table 12.3.3, from memory
    """
    wood_gravity(gravity)
    return UltimateStress(11_200 * MPA_PER_PSI * gravity)


def dowel_bearing_across(gravity: float, diameter: Mm) -> UltimateStress:
    """Dowel bearing strength across the grain for 1/4 in and thicker: 6100 G^1.45 / D^0.5.

    Source: NDS 2018, table 12.3.3, from memory
    """
    wood_gravity(gravity)
    above_zero(diameter=diameter)
    return UltimateStress(6100 * MPA_PER_PSI * gravity**1.45 / (diameter / INCH) ** 0.5)


def dowel_bearing(gravity: float, diameter: Mm, angle: Degrees = 0.0) -> UltimateStress:
    """Dowel bearing strength at `angle` between force and grain; below 1/4 in the angle does not
    count, above it lies between along and across by Hankinson's formula.

    Source: NDS 2018, 12.3.3 and 12.3.4; Wood Handbook 2021, equation 8-16
    """
    if diameter < SMALL:
        return small_dowel_bearing(gravity)
    along, across = dowel_bearing_along(gravity), dowel_bearing_across(gravity, diameter)
    return UltimateStress(at_angle(along, across, angle))


def bending_yield(diameter: Mm) -> UltimateStress:
    """Bending yield strength of steel screws and bolts, by their nominal diameter.

    Source: NDS 2018, notes to tables 12A and 12L, from memory
    """
    if not diameter > 0:
        raise BadInput("diameter", "A fastener has a diameter above zero.")
    inch = diameter / INCH
    psi = next(psi for most, psi in _BENDING_YIELD if inch <= most + 1e-9)
    return UltimateStress(psi * MPA_PER_PSI)
