"""What was wholly in the picture stays in it, whatever grows or shrinks; a near look stays near."""

from __future__ import annotations

from typing import NamedTuple

import numpy as np

from app.view.camera import Array, Camera, Picture

FIT = 1.10  # leaves some air round the bed


class Frame(NamedTuple):
    """Size of the picture, and what should be in it: corners of boxes (n, 3), the largest first.

    The first box holds the bed and room for its dimension lines, the last one the bed alone.
    """

    picture: Picture
    boxes: tuple[Array, ...]

    def fitted(self, camera: Camera) -> Camera:
        """All of it, from the same side."""
        return camera.fitted(self.boxes[0], self.picture, FIT)

    def shows(self, camera: Camera, box: int) -> bool:
        """Whether a box is wholly in the picture."""
        x, y, depth = camera.project(self.boxes[box], self.picture).T
        across = (x >= 0) & (x <= self.picture.width)
        return bool((across & (y >= 0) & (y <= self.picture.height) & (depth > 0)).all())

    def is_like(self, other: Frame) -> bool:
        """Whether nothing has grown or shrunk."""
        pairs = zip(self.boxes, other.boxes, strict=True)
        return self.picture == other.picture and all(np.array_equal(a, b) for a, b in pairs)


class Framing:
    """Steps back as far as it must, and comes forward again to where the maker had put the eye."""

    def __init__(self) -> None:
        self._frame: Frame | None = None
        self._asked: tuple[Camera, Frame] | None = None  # where the maker put the eye, and for what
        self._made: Camera | None = None  # where the eye was put instead

    def accept(self, frame: Frame) -> None:
        """Something moved under the maker's hand: the eye must not move with it."""
        self._frame, self._asked, self._made = frame, None, None

    def kept(self, camera: Camera, frame: Frame) -> Camera:
        """The camera for what is to be shown now."""
        last, self._frame = self._frame, frame
        if last is None or last.is_like(frame):
            return camera
        if self._asked is None or camera is not self._made:
            self._asked = camera, last
        self._made = _stepped_back(*self._asked, frame)
        return self._made


def _stepped_back(asked: Camera, before: Frame, now: Frame) -> Camera:
    for box in range(len(before.boxes)):
        if before.shows(asked, box):
            return asked if now.shows(asked, box) else now.fitted(asked)
    return asked
