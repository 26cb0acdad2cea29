"""What the head of a wood screw sits in: countersunk wood, or a washer over a wide hole."""

from __future__ import annotations

from model.materials.screw import WoodScrew, pull_screws, screws
from model.part import Hole
from model.parts.marks import Mark
from model.units import Mm

_SAME: Mm = 0.05  # tables of screws are rounded to hundredths


def head_for(hole: Hole) -> WoodScrew | None:
    """The wood screw that passes a shank hole with no play, so that its head is countersunk.

    None for all other holes, and for those that are drilled wide.
    """
    if hole.kind != "shank hole":
        return None
    rows = screws().values()
    return next((row for row in rows if abs(row.shank_hole_mm - hole.diameter) < _SAME), None)


def is_wide(hole: Hole) -> bool:
    """Whether a hole for a screw's shank, or for a pull's screw, is drilled wide, so that what it
    holds can be set: its head would slip in, and takes a washer.
    """
    if hole.kind == "pull hole":
        known = (row.clearance_hole_mm for row in pull_screws().values())
        return not any(abs(wide - hole.diameter) < _SAME for wide in known)
    return hole.kind == "shank hole" and head_for(hole) is None


def takes_washers(mark: Mark) -> bool:
    """Whether the screws through a part go through wide holes."""
    return any(is_wide(hole) for hole in mark.part.holes)
