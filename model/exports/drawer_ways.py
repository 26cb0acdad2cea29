"""Which way and how far each drawer of a bed comes out, for files that can move it."""

from __future__ import annotations

from typing import NamedTuple

from model.bed import Bed
from model.part import Point
from model.units import Mm

_OUTWARD: dict[str, Point] = {
    "left": (-1.0, 0.0, 0.0),
    "right": (1.0, 0.0, 0.0),
    "foot": (0.0, -1.0, 0.0),
}


class DrawerWay(NamedTuple):
    """A drawer such as `left-1`: its row and number, the way out (unit vector, bed axes), how far
    it comes.
    """

    name: str
    row: str
    number: int
    toward: Point
    travel: Mm


def drawer_way(bed: Bed, name: str) -> DrawerWay:
    """How a drawer slides: each comes out of its own side of the bed."""
    row, _, number = name.rpartition("-")
    return DrawerWay(name, row, int(number), _OUTWARD[row], float(bed[f"{row}.travel"]))


def drawer_ways(bed: Bed) -> tuple[DrawerWay, ...]:
    """All drawers of a bed, row by row."""
    found = [drawer_way(bed, name) for name in bed.pieces.groups if name]
    rows = list(_OUTWARD)
    return tuple(sorted(found, key=lambda way: (rows.index(way.row), way.number)))
