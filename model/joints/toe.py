"""Toe screws: driven at a slant through the edges of a piece into what its end stands against."""

from __future__ import annotations

import math
from typing import NamedTuple

from model.dimensions.toes import Toe
from model.part import Face, Point, Screw
from model.units import Degrees, Mm


def toed(size: Point, end: Face, toe: Toe | None, into: str) -> tuple[Screw, ...]:
    """One screw from each edge of a piece, in the middle of its thickness, leaving by `end`."""
    if toe is None:
        return ()
    lean = math.radians(toe.lean)
    x, out = (size[0] - toe.start, 1.0) if end.is_high else (toe.start, -1.0)
    row = toe.fastener.screw
    return tuple(
        Screw(
            f"wood screw {row.key}", (x, y, size[2] / 2),
            (out * math.cos(lean), way * math.sin(lean), 0.0),
            toe.fastener.length, row.shank_mm, into,
        )
        for y, way in ((0.0, 1.0), (float(size[1]), -1.0))
    )  # fmt: skip


class SetOut(NamedTuple):
    """How a screw at a slant is set out: the face of its piece that it starts in, how far from the
    `end` that it leaves by, mm, how far in from the nearer face beside it (half the thickness where
    it starts in the middle of an edge), and how far it leans from that piece's length, degrees.
    """

    face: Face
    end: Face
    start: Mm
    beside: Mm
    lean: Degrees


def set_out(size: Point, screw: Screw) -> SetOut | None:
    """Read from the screw itself; None for one that goes straight, or slants otherwise than from a
    long face towards an end.
    """
    along, *across = (float(way) for way in screw.toward)
    length = math.hypot(along, *across)
    slant = [k for k, way in enumerate(across, start=1) if abs(way) > _FLAT * length]
    if abs(along) <= _FLAT * length or len(slant) != 1:
        return None
    axis = slant[0]
    other = 3 - axis
    starts_low = screw.toward[axis] > 0
    faces = {(1, True): Face.LOWER, (1, False): Face.UPPER, (2, True): Face.BACK}
    face = faces.get((axis, starts_low), Face.FACE)
    end = Face.FAR if along > 0 else Face.NEAR
    return SetOut(
        face=face,
        end=end,
        start=size[0] - screw.at[0] if along > 0 else screw.at[0],
        beside=min(screw.at[other], size[other] - screw.at[other]),
        lean=math.degrees(math.atan2(abs(screw.toward[axis]), abs(along))),
    )


_FLAT = 1e-9
