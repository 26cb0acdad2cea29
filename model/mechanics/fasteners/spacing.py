"""How near to each other, to an end and to an edge screws and bolts may stand before wood splits.

One published set is used throughout, that of EN 1995-1-1:2004 (from memory): for screws up to 6 mm
pushed sideways its table 8.2 for nails, as 8.7.1 asks, with or without pilot holes; for screws
drawn out its table 8.6; for bolts its table 8.4. All are multiples of the outer diameter d.
"""

from __future__ import annotations

from math import cos, radians, sin
from typing import NamedTuple

from model.errors import BadInput
from model.mechanics.fasteners.strengths import above_zero
from model.units import Degrees, KgPerM3, Mm

SOURCE_SIDEWAYS = "EN 1995-1-1:2004, 8.7.1 and table 8.2, from memory"
SOURCE_DRAWN = "EN 1995-1-1:2004, table 8.6, from memory"
SOURCE_BOLTS = "EN 1995-1-1:2004, table 8.4, from memory"
NEEDS_PILOT: KgPerM3 = 500.0  # heavier wood is always drilled; Source: EN 1995-1-1, 8.3.1.1
_THICK: Mm = 5.0
_LIGHT: KgPerM3 = 420.0
_BOLT_END: Mm = 80.0


class Distances(NamedTuple):
    """The least distances, mm: between fasteners along and across the grain; to an end that the
    force points at, and to one that it does not; to an edge, likewise.
    """

    along: Mm
    across: Mm
    loaded_end: Mm
    end: Mm
    loaded_edge: Mm
    edge: Mm


def pushed_screws(diameter: Mm, angle: Degrees, *, has_pilot: bool, density: KgPerM3) -> Distances:
    """For screws up to 6 mm pushed sideways at `angle` to the grain, in wood of a density.

    Refused: wood above 500 kg/m3 without pilot holes.
    """
    above_zero(diameter=diameter, density=density)
    if not has_pilot and density > NEEDS_PILOT:
        raise BadInput(
            "pilot",
            f"Wood of {density:.0f} kg/m3 splits without pilot holes; drill from "
            f"{NEEDS_PILOT:.0f} kg/m3 up.",
        )
    c, s = abs(cos(radians(angle))), abs(sin(radians(angle)))
    is_light = density <= _LIGHT
    factors = _drilled(c, s, diameter) if has_pilot else _driven(c, s, diameter, is_light)
    return Distances(*(factor * diameter for factor in factors))


def drawn_screws(diameter: Mm) -> Distances:
    """For screws drawn out of wood at least 12 d thick: 7 d and 5 d apart, end 10 d, edge 4 d."""
    above_zero(diameter=diameter)
    return Distances(*(factor * diameter for factor in (7, 5, 10, 10, 4, 4)))


def bolts(diameter: Mm, angle: Degrees) -> Distances:
    """For bolts pushed at `angle` to the grain; a loaded end is 7 d or 80 mm away."""
    above_zero(diameter=diameter)
    c, s = abs(cos(radians(angle))), abs(sin(radians(angle)))
    free_end = max(1 + 6 * s, 4)
    factors = (4 + c, 4, 7, free_end, max(2 + 2 * s, 3), 3)
    found = Distances(*(factor * diameter for factor in factors))
    return found._replace(loaded_end=max(found.loaded_end, _BOLT_END))


def _drilled(c: float, s: float, diameter: Mm) -> tuple[float, ...]:
    """With pilot holes: the same for all wood."""
    edge = 3 + (2 if diameter < _THICK else 4) * s
    return (4 + c, 3 + s, 7 + 5 * c, 7, edge, 3)


def _driven(c: float, s: float, diameter: Mm, is_light: bool) -> tuple[float, ...]:
    """Without pilot holes, in light wood up to 420 kg/m3 or in wood up to 500."""
    is_thin = diameter < _THICK
    if is_light:
        along = 5 + (5 if is_thin else 7) * c
        return (along, 5, 10 + 5 * c, 10, 5 + (2 if is_thin else 5) * s, 5)
    return (7 + 8 * c, 7, 15 + 5 * c, 15, 7 + (2 if is_thin else 5) * s, 7)
