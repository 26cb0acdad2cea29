"""How near to each other, to an end and to an edge screws and bolts may stand before wood splits.

One published set is used throughout, that of NDS 2018 (from memory): for wood screws the table of
its commentary, C12.1.5.7, with pilot holes or without; for bolts its tables 12.5.1A to D. All are
multiples of the diameter. Wood must not split: nearer than this nothing is promised.
"""

from __future__ import annotations

from typing import NamedTuple

from model.errors import BadInput
from model.mechanics.fasteners.strengths import above_zero
from model.units import Degrees, Mm

SOURCE_SCREWS = "NDS 2018 commentary, table C12.1.5.7, wood screws, from memory"
SOURCE_BOLTS = "NDS 2018, tables 12.5.1A to D, from memory"


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


def bolt_distances(diameter: Mm, angle: Degrees, *, is_softwood: bool) -> Distances:
    """For bolts that bear their full design value, pushed at `angle` to the grain: along it (0) or
    across it (90); no other angles are tabled.

    Source: NDS 2018, tables 12.5.1A to C, from memory
    """
    above_zero(diameter=diameter)
    if angle not in (0, 90):
        raise BadInput("angle", "Bolt distances are tabled along and across the grain only.")
    if angle == 90:
        factors: tuple[float, ...] = (4, 4, 4, 4, 4)
    else:
        factors = (1.5, 7 if is_softwood else 5, 4, 4, 4)
    return Distances(*(factor * diameter for factor in factors))
