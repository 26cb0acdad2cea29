"""Groove: a slot along a part that takes the edge of a panel, a bottom or a tongue."""

from __future__ import annotations

from model.joints.slot import slot
from model.part import Cut, Face, Point
from model.units import Mm


def groove(
    size: Point,
    face: Face,
    *,
    between: tuple[Mm, Mm],
    depth: Mm,
    along: tuple[Mm, Mm] | None = None,
) -> Cut:
    """A groove in an edge or a face, along the length.

    `between` are its two walls: across the thickness when it lies in an edge, across the width
    when it lies in a face. `along` is where a stopped groove begins and ends; None is through.
    """
    return slot(size, face, depth=depth, first=along, second=between, kind="groove")


def middle_groove(
    size: Point, edge: Face, *, width: Mm, depth: Mm, along: tuple[Mm, Mm] | None = None
) -> Cut:
    """A groove in the middle of an edge's thickness, as frames hold their panels."""
    return groove(size, edge, between=middle(size[2], width), depth=depth, along=along)


def middle(room: Mm, width: Mm) -> tuple[Mm, Mm]:
    """Where something begins and ends that lies in the middle of `room`."""
    return (float(room - width) / 2, float(room + width) / 2)
