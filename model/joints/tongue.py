"""Tongue: what two rabbets leave of an edge or an end, to go into a groove."""

from __future__ import annotations

from model.joints.groove import middle
from model.joints.rabbet import rabbet
from model.part import Cut, Face, Point
from model.units import Mm


def tongue(
    size: Point,
    edge: Face,
    *,
    length: Mm,
    thickness: Mm | None = None,
    between: tuple[Mm, Mm] | None = None,
    kind: str = "tongue rabbet",
) -> tuple[Cut, ...]:
    """The rabbets at `edge` that leave a tongue standing out by `length`.

    The tongue lies in the middle of the part and is `thickness` thick, or lies `between` two
    distances from the back. Flush with a face it needs one rabbet; as thick as its part, none.
    """
    low, high = between or middle(size[2], size[2] if thickness is None else thickness)
    sides = ((Face.BACK, low), (Face.FACE, size[2] - high))
    return tuple(
        rabbet(size, face, edge, width=length, depth=depth, kind=kind)
        for face, depth in sides
        if depth > 1e-6
    )
