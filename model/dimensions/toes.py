"""Toe screws: which screw, from how far up, at which slant. From both edges of a piece into what
its end stands against, so that they neither meet nor split it.
"""

from __future__ import annotations

import math
from typing import NamedTuple

from model.dimensions.fasteners import COVER, Fastener
from model.materials import wood_screw
from model.mechanics.fasteners.spacing import screw_distances
from model.units import Degrees, Mm

START = 1 / 3  # of its length from the joint; common practice, no source
LEANS: tuple[Degrees, ...] = (30.0, 20.0, 15.0)  # from the piece's length; common practice
LEAST_BITE = 4.0  # diameters beyond the joint; common practice, no source
LONGEST: Mm = 63.5  # 2 1/2 in; common practice, no source


class Toe(NamedTuple):
    """A screw, how far from the joint it starts, mm, and how far it leans from the length of the
    piece that it goes through, degrees.
    """

    fastener: Fastener
    start: Mm
    lean: Degrees


def toe_from_both_edges(width: Mm, thickness: Mm, length: Mm, deep: Mm) -> Toe | None:
    """The thickest screw that stands clear of both faces of a piece `thickness` thick, of that the
    longest whose point keeps two diameters from that of the one from the other edge, and stays
    inside what is `deep` behind the joint. Steeper ones are tried only where none at 30 degrees
    bites; None where no screw does.

    `width` is from edge to edge, `length` that of the piece, which screws start within.
    """
    for lean in LEANS:
        for gauge in ("8", "6", "4"):
            toe = _toe(gauge, lean, width, length, deep)
            clear = screw_distances(wood_screw(gauge).shank_mm, has_pilot=True).edge
            if toe is not None and clear <= thickness / 2 + 1e-6:
                return toe
    return None


def _toe(gauge: str, lean: Degrees, width: Mm, length: Mm, deep: Mm) -> Toe | None:
    row, slope = wood_screw(gauge), math.radians(lean)
    shank = row.shank_mm
    most = min(
        LONGEST,
        (width / 2 - shank) / math.sin(slope),
        length / 2 / START,
        (deep - COVER) / (math.cos(slope) - START),
    )
    found = max((each for each in row.lengths_mm if each <= most + 1e-6), default=0.0)
    bite = found * (1 - START / math.cos(slope))
    if bite < LEAST_BITE * shank:
        return None
    return Toe(Fastener(row, found), START * found, lean)
