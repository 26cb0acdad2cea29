"""How near to each other, to an end and to an edge screws may stand before wood splits.

One published set is used throughout, that of the commentary on NDS 2018, table C12.1.5.7 (from
memory), with pilot holes or without: multiples of the shank. Nearer than this nothing is promised.
"""

from __future__ import annotations

from typing import NamedTuple

from model.mechanics.fasteners.strengths import above_zero
from model.units import Mm

SOURCE_SCREWS = "NDS 2018, commentary, minimum spacing of wood screws, from memory"


class Distances(NamedTuple):
    """The least distances, mm: to an edge; to an end that the force points at, and to any other;
    between fasteners of a row that runs along the grain, or across it.
    """

    edge: Mm
    loaded_end: Mm
    end: Mm
    along: Mm
    across: Mm


def screw_distances(diameter: Mm, *, has_pilot: bool, through_steel: bool = False) -> Distances:
    """For wood screws of that shank, in wood or through a steel side plate into wood.

    Source: NDS 2018 commentary, table C12.1.5.7, from memory
    """
    above_zero(diameter=diameter)
    if through_steel:
        factors = (2.5, 5, 3, 5, 2.5) if has_pilot else (2.5, 10, 5, 10, 5)
    else:
        factors = (2.5, 10, 5, 10, 5) if has_pilot else (2.5, 15, 10, 15, 10)
    return Distances(*(factor * diameter for factor in factors))


def wood_between(one: Mm, other: Mm) -> Mm:
    """The least wood between two shanks, of these diameters, that pass each other: one diameter of
    the thicker, so that neither drill nor screw runs into the other.

    Source: common practice, no source
    """
    above_zero(one=one, other=other)
    return max(one, other)
