"""How much a board swells and shrinks across its grain. Along the grain it is taken as still.

Sizes come and go in mm or any other length; moisture in % of the oven-dry mass; shrinkage from
green to oven-dry in % of the green size; coefficients as a share of the size per 1 % of moisture.
"""

from __future__ import annotations

from typing import Literal

from model.materials.material import Material
from model.materials.species import Species
from model.units import Mm, Percent

# Tangential: along the year rings, as the width of a flat-sawn board. Radial: across them, as the
# width of a quarter-sawn board and the thickness of a flat-sawn one.
Way = Literal["tangential", "radial"]

LOW, HIGH = 6.0, 14.0  # % moisture, between which the coefficients hold
_BASE = 10.0  # % moisture at which the size is measured that a coefficient is a share of


def change(size: Mm, coefficient: float, start: Percent, end: Percent) -> Mm:
    """How much wider a board gets (less than zero: narrower), from 6 to 14 % moisture.

    Source: Wood Handbook 2010 (FPL-GTR-190), eq 13-2
    """
    return size * coefficient * (end - start)


def change_beyond(
    size: Mm, shrinkage: Percent, start: Percent, end: Percent, saturation: Percent
) -> Mm:
    """The same over a wider range, by the shrinkage that begins at fibre saturation.

    Source: Wood Handbook 2010 (FPL-GTR-190), eq 13-3, from memory
    """
    return size * (end - start) / (100 * saturation / shrinkage - saturation + start)


def coefficient_of(shrinkage: Percent, saturation: Percent) -> float:
    """The coefficient that follows from a shrinkage, for the size at 10 % moisture.

    Source: Wood Handbook 2010 (FPL-GTR-190), footnote of table 13-5, from memory; derived
    """
    base = 100 - shrinkage * (saturation - _BASE) / saturation
    return shrinkage / saturation / base


def shrinkage_of(coefficient: float, saturation: Percent) -> Percent:
    """The shrinkage that a coefficient stands for: the same, solved for the shrinkage."""
    return 100 * coefficient * saturation / (1 + coefficient * (saturation - _BASE))


def shrinkage_to(shrinkage: Percent, moisture: Percent, saturation: Percent) -> Percent:
    """How much of the shrinkage has happened at a moisture below fibre saturation.

    Source: Wood Handbook 2021 (FPL-GTR-282), eq 4-9
    """
    return shrinkage * (1 - moisture / saturation)


def change_of(size: Mm, wood: Species, way: Way, start: Percent, end: Percent) -> Mm:
    """How much wider a board of this wood gets from one moisture to another.

    Inside 6 to 14 % by its coefficient. Beyond by the greater of its shrinkage and the one that its
    coefficient stands for: the oaks of the trade are mixes that move more than one species does.
    Above fibre saturation wood moves no more.
    """
    coefficient = wood.movement_tangential if way == "tangential" else wood.movement_radial
    if min(start, end) >= LOW and max(start, end) <= HIGH:
        return change(size, coefficient, start, end)
    saturation = wood.fibre_saturation_pct
    own = wood.shrinkage_tangential_pct if way == "tangential" else wood.shrinkage_radial_pct
    shrinkage = max(own, shrinkage_of(coefficient, saturation))
    return change_beyond(size, shrinkage, min(start, saturation), min(end, saturation), saturation)


def growth(size: Mm, material: Material, way: Way, start: Percent, end: Percent) -> Mm:
    """How much a size across the grain grows; sheet goods are taken as still."""
    return 0.0 if material.wood is None else change_of(size, material.wood, way, start, end)
