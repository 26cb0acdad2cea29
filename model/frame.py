"""Frames: how a side or an end of the bed is looked at while its parts are laid out.

Every side and end is laid out as seen by a person who stands before it: u runs along it, v goes
into the bed from the outer plane of its posts, z goes up from the floor. So left and right share
their rules.
"""

from __future__ import annotations

from functools import cached_property
from typing import Literal, NamedTuple

import numpy as np
import numpy.typing as npt

from model.units import Mm

Axis = Literal["x", "y"]


class _Axes(NamedTuple):
    along: Axis
    inward: Literal[1, -1]
    outer_plane: float


class Frame(_Axes):
    """Axes of a side or end: `along` is the bed axis that u runs along (always towards +),
    `inward` the direction of v on the other one, `outer_plane` the place of v = 0 on it, in mm.
    """

    @cached_property
    def matrix(self) -> npt.NDArray[np.float64]:
        """(4, 4): takes (u, v, z, 1) in the frame to (x, y, z, 1) on the bed, mm. May be a mirror
        image.
        """
        m = np.zeros((4, 4))
        u, v = (0, 1) if self.along == "x" else (1, 0)
        m[u, 0] = 1.0
        m[v, 1] = self.inward
        m[v, 3] = self.outer_plane
        m[2, 2] = m[3, 3] = 1.0
        return m


BED = Frame("x", 1, 0.0)


def side_frame_at(outer_plane: Mm, inward: Literal[1, -1]) -> Frame:
    """The frame of a long side, whose outer plane stands at x = `outer_plane`."""
    return Frame("y", inward, float(outer_plane))


def end_frame_at(outer_plane: Mm, inward: Literal[1, -1]) -> Frame:
    """The frame of the foot or head end, whose outer plane stands at y = `outer_plane`."""
    return Frame("x", inward, float(outer_plane))
