"""The longest screw that keeps its point in the wood."""

from __future__ import annotations

from typing import NamedTuple

from model.materials import WoodScrew, wood_screw
from model.units import Mm

COVER: Mm = 3.0  # 1/8 in of wood stays before a screw's point; common practice, no source


BRACKET_GAUGE = "8"  # of the thickest screws that the holes of an inch bracket take; from memory


class Fastener(NamedTuple):
    """A wood screw and its length, mm."""

    screw: WoodScrew
    length: Mm


def longest_screw(most: Mm, gauges: tuple[str, ...] = ("8", "6", "4")) -> Fastener:
    """The longest screw of the first gauge that is sold short enough to stay inside `most`.

    When none is, the shortest of the last gauge: the check of screw points then speaks up.
    """
    for gauge in gauges:
        screw = wood_screw(gauge)
        fitting = [length for length in screw.lengths_mm if length <= most + 1e-6]
        if fitting:
            return Fastener(screw, max(fitting))
    screw = wood_screw(gauges[-1])
    return Fastener(screw, min(screw.lengths_mm))
