"""From which sides a part is looked at, and how a long view lies on paper.

From view to view the part is only rolled about its length, the near end at the left. A sheet whose
main view is the back is turned half round, the near end at its right: as a board is turned over, so
that its lower edge stays below.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from model.part import Face, Point
from model.units import Mm


@dataclass(frozen=True, kw_only=True)
class Look:
    """A look along `toward` (an axis of the part) with the length to the right, or to the left
    where it `is_turned` half round.

    `up` is the axis that runs up the paper, or down it where `up_sign` is -1; the eye lies at the
    high end of `toward` where `is_high`.
    """

    face: Face
    up: int
    up_sign: int
    is_turned: bool = False

    @property
    def turned(self) -> Look:
        """The same look with the paper turned half round."""
        return replace(self, up_sign=-self.up_sign, is_turned=not self.is_turned)

    @property
    def above(self) -> Face:
        """The side of the part that lies above on paper."""
        sides = (Face.LOWER, Face.UPPER) if self.up == 1 else (Face.BACK, Face.FACE)
        return sides[self.up_sign > 0]

    @property
    def toward(self) -> int:
        return self.face.axis

    @property
    def is_high(self) -> bool:
        return self.face.is_high

    def flat(self, point: Point, size: Point) -> tuple[Mm, Mm]:
        """A point of the part as it lies in the view: from the left, and from the bottom."""
        up = point[self.up]
        along = size[0] - point[0] if self.is_turned else point[0]
        return (along, up if self.up_sign > 0 else size[self.up] - up)

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
    """The faces that are shown, from the top of the paper down, with `main` among them; the back as
    main one is turned half round.
    """
    start = ROLLED.index(main) - 1
    rolled = [ROLLED[(start + k) % 4] for k in range(4)]
    is_downwards = is_third_angle != (main is Face.BACK)
    shown = rolled if is_downwards else [*reversed(rolled[:3]), rolled[3]]
    return tuple(face for face in shown if face in faces)
