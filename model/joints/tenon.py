"""Mortise and tenon, and the stub tenon, which is a short one."""

from __future__ import annotations

from model.joints.groove import middle
from model.joints.rabbet import rabbet
from model.joints.slot import slot
from model.joints.tongue import tongue
from model.part import Cut, Face, Point
from model.units import Mm


def tenon(
    size: Point, end: Face, *, length: Mm, thickness: Mm, lower: Mm = 0.0, upper: Mm = 0.0
) -> tuple[Cut, ...]:
    """The cuts at an end that leave a tenon in the middle of the thickness.

    `lower` and `upper` are the shoulders at the two edges: how far the tenon stands back from them.
    """
    cheeks = tongue(size, end, length=length, thickness=thickness, kind="tenon cheek")
    shoulders = tuple(
        rabbet(size, edge, end, width=length, depth=back, kind="tenon shoulder")
        for edge, back in ((Face.LOWER, lower), (Face.UPPER, upper))
        if back > 1e-6
    )
    return cheeks + shoulders


def mortise(
    size: Point, face: Face, *, depth: Mm, along: tuple[Mm, Mm], across: tuple[Mm, Mm]
) -> Cut:
    """The mortise that a tenon fills, but for the relief at its floor that `depth` counts in.

    `along` is the tenon's place along the mate's length, `across` its place on the other axis.
    """
    return slot(size, face, depth=depth, first=along, second=across, kind="mortise")


def tenon_in(
    along: tuple[Mm, Mm], across: tuple[Mm, Mm], *, thickness: Mm, lower: Mm, upper: Mm
) -> tuple[tuple[Mm, Mm], tuple[Mm, Mm]]:
    """Where on the mate a member's tenon goes, from where the whole member meets it."""
    inside = middle(across[1] - across[0], thickness)
    return (
        (along[0] + lower, along[1] - upper),
        (across[0] + inside[0], across[0] + inside[1]),
    )
