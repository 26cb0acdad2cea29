"""Pocket screw: a screw at 15 degrees from a face out through the end, into the part that it meets.

The axis leaves the end in the middle of the stock's thickness. From there the head's seat lies back
along the axis by the table's `seat_mm`; the pocket runs on from the seat to the face.
Source: common practice, no source; sizes by thickness of stock from the table of pocket screws.
"""

from __future__ import annotations

import math
from collections.abc import Iterable

from model.errors import CannotBuild
from model.joints.spread import spread
from model.joints.work import Work
from model.materials import PocketScrew, pocket_screw
from model.part import Face, Hole, Point, Screw
from model.units import Mm

POCKET_INSET: Mm = 12.0  # from the edge to the first pocket; common practice, no source
POCKETS_APART: Mm = 100.0  # common practice, no source
POCKETS_NEAR: Mm = 16.0  # two bores of 3/8 in side by side and wood between; common practice
POCKET_WALL: Mm = 3.0  # 1/8 in: between a pocket and what is cut into the edge; common practice


def screw_for(stock: Mm, field: str) -> PocketScrew:
    """The pocket screw for a stock; a refusal names the `field` that the stock comes from."""
    try:
        return pocket_screw(float(stock))
    except CannotBuild:
        sentence = "No pocket screw is sold for stock of this thickness."
        raise CannotBuild(field, sentence) from None


def pocket_offsets(width: Mm, *, lower: Mm, upper: Mm, bore: Mm) -> tuple[Mm, ...]:
    """Centres of pockets of diameter `bore` across a member's width, from its lower edge.

    One stands in the middle where two find no room: see `width_for_two`. `lower` and `upper` are
    how deep the two edges are cut.
    """
    first, last = pocket_inset(lower, bore), float(width) - pocket_inset(upper, bore)
    return spread(first, last, inset=0.0, apart=POCKETS_APART, least=POCKETS_NEAR)


def pocket_inset(cut: Mm, bore: Mm) -> Mm:
    """From a member's edge, cut `cut` deep, to the middle of the first pocket."""
    return max(POCKET_INSET, float(cut) + bore / 2 + POCKET_WALL)


def cuts_clear_of(
    width: Mm, lower: Mm, upper: Mm, bore: Mm, spots: Iterable[Mm], clear: Mm
) -> tuple[Mm, Mm]:
    """`lower` and `upper`, made deeper so that two pockets stand `clear` of these spots across the
    width, or as far inwards as leaves them room beside each other.
    """
    inset = POCKET_WALL + bore / 2
    first, last = pocket_inset(lower, bore), float(width) - pocket_inset(upper, bore)
    room = max(last - first - POCKETS_NEAR, 0.0) / 2
    near = [at for at in spots if at - clear < first < at + clear]
    far = [at for at in spots if at - clear < last < at + clear]
    if near and room:
        lower = min(max(near) + clear, first + room) - inset
    if far and room:
        upper = float(width) - max(min(far) - clear, last - room) - inset
    return lower, upper


def width_for_two(lower: Mm, upper: Mm, bore: Mm) -> Mm:
    """The least width of a member that takes two pockets beside each other."""
    return pocket_inset(lower, bore) + POCKETS_NEAR + pocket_inset(upper, bore)


def pocket(
    size: Point, end: Face, face: Face, *, offset: Mm, screw: PocketScrew, into: str
) -> Work:
    """One pocket at an end: its bore from `face` to the seat, the pilot to the end, the screw."""
    angle = math.radians(screw.angle_degrees)
    exit_point = (size[0] if end.is_high else 0.0, float(offset), size[2] / 2)
    toward = (
        math.cos(angle) if end.is_high else -math.cos(angle),
        0.0,
        -math.sin(angle) if face.is_high else math.sin(angle),
    )
    to_mouth = size[2] / 2 / math.sin(angle)
    if to_mouth <= screw.seat_mm:
        raise CannotBuild("frame_stock", "The stock is too thin for a pocket screw's seat.")
    seat, mouth = (_back(exit_point, toward, way) for way in (screw.seat_mm, to_mouth))
    bore, shank = screw.pocket_diameter_mm, screw.pilot_diameter_mm
    return Work(
        holes=(
            Hole("pocket hole", face, mouth, toward, bore, to_mouth - screw.seat_mm),
            Hole("pocket pilot", face, seat, toward, shank, screw.seat_mm),
        ),
        screws=(Screw("pocket screw", seat, toward, screw.length_mm, screw.shank_mm, into),),
    )


def _back(point: Point, toward: Point, way: Mm) -> Point:
    return (point[0] - way * toward[0], point[1] - way * toward[1], point[2] - way * toward[2])
