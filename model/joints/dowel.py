"""Dowel joint: round pegs, half in the end of one part and half in the side of the other."""

from __future__ import annotations

from collections.abc import Iterable

from model.joints.groove import middle
from model.joints.spread import spread
from model.part import Face, Hole, Point
from model.units import Mm, ShopGrid

NEAR = 1.95  # diameters from dowel to dowel: two, but for a step of the rule; common practice
DOWELS_APART: Mm = 100.0  # common practice, no source


def dowel_offsets(width: Mm, *, lower: Mm, upper: Mm, diameter: Mm) -> tuple[Mm, ...]:
    """Centres of the dowels across a member's width, from its lower edge.

    Two, in a wide member more, in a narrow one a single one; `lower` and `upper` keep them out of
    what is cut into the edges.
    """
    return spread(
        float(lower), float(width - upper),
        inset=diameter, apart=DOWELS_APART, least=NEAR * diameter,
    )  # fmt: skip


def dowels_clear_of(
    width: Mm,
    lower: Mm,
    upper: Mm,
    diameter: Mm,
    spots: Iterable[Mm],
    clear: Mm,
    grid: ShopGrid,
) -> tuple[Mm, Mm]:
    """`lower` and `upper`, made deeper by whole steps so that the outer dowels stand `clear` of
    these spots across the width; as they were, where two dowels would then stand too near to each
    other.
    """
    first, last = float(lower) + diameter, float(width) - upper - diameter
    near = [at for at in spots if at - clear < first < at + clear]
    far = [at for at in spots if at - clear < last < at + clear]
    deeper = (
        grid.up(max(near) + clear - first) if near else 0.0,
        grid.up(last - min(far) + clear) if far else 0.0,
    )
    fits = last - first - sum(deeper) >= NEAR * diameter - 1e-6
    return (lower + deeper[0], upper + deeper[1]) if fits else (lower, upper)


def holes_on_end(
    size: Point, end: Face, *, offsets: tuple[Mm, ...], diameter: Mm, depth: Mm
) -> tuple[Hole, ...]:
    """Dowel holes in the end of a member, in the middle of its thickness."""
    x, toward = (size[0], -1.0) if end.is_high else (0.0, 1.0)
    return tuple(
        Hole("dowel hole", end, (x, y, size[2] / 2), (toward, 0.0, 0.0), diameter, depth)
        for y in offsets
    )


def holes_in_mate(
    size: Point,
    face: Face,
    *,
    along: tuple[Mm, Mm],
    across: tuple[Mm, Mm],
    offsets: tuple[Mm, ...],
    diameter: Mm,
    depth: Mm,
) -> tuple[Hole, ...]:
    """Dowel holes in the side of the mate, where the member's holes will stand.

    `along` is where the member's width meets the mate's length, `across` where its thickness does.
    """
    at, toward = [0.0, 0.0, 0.0], [0.0, 0.0, 0.0]
    at[face.axis] = size[face.axis] if face.is_high else 0.0
    toward[face.axis] = -1.0 if face.is_high else 1.0
    at[3 - face.axis] = (across[0] + across[1]) / 2
    direction = (toward[0], toward[1], toward[2])
    return tuple(
        Hole("dowel hole", face, (along[0] + y, at[1], at[2]), direction, diameter, depth)
        for y in offsets
    )


def half_way(plane: Mm, length: Mm) -> Mm:
    """Where a dowel begins that lies half on either side of a joint's plane."""
    return middle(2 * plane, length)[0]
