"""Which way a part lies on the bed, so that its near end and face are not mistaken for the far end
and the back.
"""

from __future__ import annotations

import numpy as np

from model.parts.marks import Mark
from model.parts.pieces import Floats
from model.shop.order.say import listed

# Bed axes: x across, y from foot to head, z up; left and right as seen from the foot.
_WAYS = {
    (1, 0, 0): "to the right", (-1, 0, 0): "to the left", (0, 1, 0): "to the head",
    (0, -1, 0): "to the foot", (0, 0, 1): "up", (0, 0, -1): "down",
}  # fmt: skip
_SIDES = (("near end", 0, -1), ("face", 2, 1), ("upper edge", 1, 1))


def on_bed_words(mark: Mark) -> str:
    """`near end down, face to the head and upper edge to the right`; of several pieces only what
    all of them have alike, "" where they have nothing.
    """
    turns = mark.matrices[:, :3, :3]
    told = [f"{name} {way}" for name, axis, sign in _SIDES if (way := _way(turns, axis, sign))]
    return listed(told)


def _way(turns: Floats, axis: int, sign: int) -> str:
    """Where one side of all pieces looks, "" where they differ or stand askew."""
    ways = np.round(turns[:, :, axis] * sign)
    if not (ways == ways[0]).all():
        return ""
    x, y, z = (int(each) for each in ways[0])
    return _WAYS.get((x, y, z), "")
