"""From which sides a part is looked at, and how a long view lies on paper.

Seen from a face or an edge, the near end is always at the left: from view to view the part is only
rolled about its length.
"""

from __future__ import annotations

from dataclasses import dataclass

from model.part import Face, Point
from model.units import Mm


@dataclass(frozen=True, kw_only=True)
class Look:
    """A look along `toward` (an axis of the part) with the length to the right.

    `up` is the axis that runs up the paper, or down it where `up_sign` is -1; the eye lies at the
    high end of `toward` where `is_high`.
    """

    face: Face
    up: int
    up_sign: int

    @property
    def toward(self) -> int:
        return self.face.axis

    @property
    def is_high(self) -> bool:
        return self.face.is_high

    def flat(self, point: Point, size: Point) -> tuple[Mm, Mm]:
        """A point of the part as it lies in the view: from the left, and from the bottom."""
        up = point[self.up]
        return (point[0], up if self.up_sign > 0 else size[self.up] - up)

    def height(self, size: Point) -> Mm:
        """How high the view is, mm of wood."""
        return size[self.up]


LOOKS = {
    Face.FACE: Look(face=Face.FACE, up=1, up_sign=1),
    Face.UPPER: Look(face=Face.UPPER, up=2, up_sign=-1),
    Face.BACK: Look(face=Face.BACK, up=1, up_sign=-1),
    Face.LOWER: Look(face=Face.LOWER, up=2, up_sign=1),
}

# Downwards on paper as third-angle projection unrolls a part; first-angle runs the other way.
# Source: ISO 5456-2, from memory.
ROLLED = (Face.UPPER, Face.FACE, Face.LOWER, Face.BACK)


def in_order(faces: set[Face], main: Face, is_third_angle: bool) -> tuple[Face, ...]:
    """The faces that are shown, from the top of the paper down, with `main` among them."""
    start = ROLLED.index(main) - 1
    rolled = [ROLLED[(start + k) % 4] for k in range(4)]
    shown = rolled if is_third_angle else [*reversed(rolled[:3]), rolled[3]]
    return tuple(face for face in shown if face in faces)
