"""Bolts across wood, and the nuts that lie across a rail and take the bolt's pull."""

from __future__ import annotations

from collections.abc import Mapping

from model.errors import BadInput
from model.mechanics.fasteners.dowel_bearing import SMALL, dowel_bearing_along
from model.mechanics.fasteners.lateral import reduction
from model.mechanics.fasteners.strengths import Design, DesignStress, Yield, above_zero
from model.mechanics.fasteners.yield_modes import CRUSHING, TURNING, Mode, Shear
from model.units import Degrees, Mm


def design_single_shear(shear: Shear, angle: Degrees = 0.0) -> Design:
    """What a bolt through two members may bear; `angle` is the greatest between force and grain.

    Source: NDS 2018, tables 12.3.1A and B, from memory; cells of its table 12A are met
    """
    return _least(shear.single(), shear.diameter, angle)


def design_double_shear(shear: Shear, angle: Degrees = 0.0) -> Design:
    """What a bolt through a main member between two like sides may bear; a steel side plate is a
    side whose bearing strength is the steel's.

    Source: NDS 2018, tables 12.3.1A and B, from memory; cells of its table 12F are met
    """
    return _least(shear.double(), shear.diameter, angle)


def design_nut_bearing(gravity: float, nut: Mm, length: Mm) -> Design:
    """What the wood may bear along its grain from a round nut lying across it, `length` long.

    Crushing only: a nut so short and thick does not bend.
    Source: NDS 2018, table 12.3.1A, mode Im, from memory
    """
    above_zero(nut_diameter=nut, nut_length=length)
    return Design(nut * length * dowel_bearing_along(gravity) / _term("Im", nut, 0.0))


def design_shear_out(shear_stress: DesignStress, end: Mm, thick: Mm) -> Design:
    """What two planes of wood may bear in shear, from a nut or bolt `end` from a member's end out
    to that end, `thick` deep. Shear is uneven along a plane: its peak is taken as 1.5 V / A.

    Source: first principles; the peak as in a beam, Wood Handbook 2021, equation 9-14
    """
    above_zero(allowable_shear=shear_stress, wood_to_the_end=end, thickness=thick)
    return Design(2 * end * thick * shear_stress / 1.5)


def _least(modes: Mapping[Mode, Yield], diameter: Mm, angle: Degrees) -> Design:
    return Design(min(load / _term(mode, diameter, angle) for mode, load in modes.items()))


def _term(mode: Mode, diameter: Mm, angle: Degrees) -> float:
    """R_d: K_D below 1/4 in; above it 4, 3.6 or 3.2 by mode, times 1 + angle / 360."""
    if not 0 <= angle <= 90:
        raise BadInput("angle", f"Force and grain meet at 0 to 90 degrees, not {angle:g}.")
    if diameter < SMALL:
        return reduction(diameter)
    by_mode = 4.0 if mode in CRUSHING else 3.6 if mode in TURNING else 3.2
    return by_mode * (1 + 0.25 * angle / 90)
