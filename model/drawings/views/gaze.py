"""From where a thing is looked at: by parallel lines, as drawings of parts and beds are made.

Axes are the bed's (x across, y from foot to head, z up), or a part's own where a part is shown.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import cached_property
from typing import Self

import numpy as np

from model.part import Point
from model.parts.pieces import Floats


@dataclass(frozen=True, kw_only=True)
class Gaze:
    """Two unit vectors, square to each other, that run to the right and up on the paper."""

    right: Point
    up: Point

    @cached_property
    def axes(self) -> Floats:
        """(3, 3): rows that run to the right, up, and out of the paper towards the eye."""
        right, up = np.array(self.right), np.array(self.up)
        return np.stack([right, up, np.cross(right, up)]) + 0.0

    @cached_property
    def toward(self) -> Floats:
        """(3,): the unit vector from the thing to the eye."""
        return np.asarray(self.axes[2])

    def flat(self, points: Floats) -> Floats:
        """Points (..., 3) as the eye sees them: (..., 2), mm to the right and up."""
        return np.asarray(points @ self.axes[:2].T)

    def placed(self, points: Floats) -> Floats:
        """Points (..., 3) as right, up, and how near they are to the eye: (..., 3), mm."""
        return np.asarray(points @ self.axes.T)

    @classmethod
    def down_from(cls, toward: Point) -> Self:
        """With z upright on the paper, from an eye that lies in this direction.

        Refused: an eye straight above or below, for which no way on the paper is up.
        """
        x, y, _ = toward
        if math.hypot(x, y) < 1e-9:
            raise ValueError("an eye straight above or below needs its own right and up")
        eye = np.array(toward, float) / np.linalg.norm(toward)
        right = np.cross((0.0, 0.0, 1.0), eye)
        right /= np.linalg.norm(right)
        return cls(right=_point(right), up=_point(np.cross(eye, right)))


def _point(vector: Floats) -> Point:
    x, y, z = (vector + 0.0).tolist()
    return (x, y, z)


_RIGHT, _HEAD, _UP = (1.0, 0.0, 0.0), (0.0, 1.0, 0.0), (0.0, 0.0, 1.0)
_LEFT, _FOOT = (-1.0, 0.0, 0.0), (0.0, -1.0, 0.0)

# Elevations of a bed, named after where the eye stands.
FRONT = Gaze(right=_RIGHT, up=_UP)  # from the foot
BACK = Gaze(right=_LEFT, up=_UP)  # from the head
LEFT = Gaze(right=_FOOT, up=_UP)
RIGHT = Gaze(right=_HEAD, up=_UP)
PLAN = Gaze(right=_RIGHT, up=_HEAD)
BELOW = Gaze(right=_RIGHT, up=_FOOT)

# All three axes are drawn equally short. Source: ISO 5456-3, isometric, from memory.
FOOT_LEFT = Gaze.down_from((-1.0, -1.0, 1.0))
FOOT_RIGHT = Gaze.down_from((1.0, -1.0, 1.0))
HEAD_LEFT = Gaze.down_from((-1.0, 1.0, 1.0))
HEAD_RIGHT = Gaze.down_from((1.0, 1.0, 1.0))
UNDER_FOOT_LEFT = Gaze.down_from((-1.0, -1.0, -1.0))

# Two axes are drawn alike, the third, which runs towards the eye, half as long (7° and 42°).
# Source: ISO 5456-3, dimetric, from memory; as a true view its eye lies at 1 : √7 : 1.
DIMETRIC_FOOT_LEFT = Gaze.down_from((-1.0, -math.sqrt(7.0), 1.0))
DIMETRIC_FOOT_RIGHT = Gaze.down_from((1.0, -math.sqrt(7.0), 1.0))
DIMETRIC_LEFT = Gaze.down_from((-math.sqrt(7.0), -1.0, 1.0))
DIMETRIC_RIGHT = Gaze.down_from((math.sqrt(7.0), -1.0, 1.0))
