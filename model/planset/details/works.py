"""What is cut into a piece, where it stands on the bed: boxes around its stock, cuts and holes."""

from __future__ import annotations

from typing import NamedTuple

import numpy as np

from model.building.joined import Joined
from model.parts.pieces import Bools, Floats


class Works(NamedTuple):
    """Corners `low` and `high` (n, 3) in bed axes: the stock first (kind ""), then cuts and round
    holes (`is_round`).
    """

    kinds: tuple[str, ...]
    low: Floats
    high: Floats
    is_round: Bools

    def near(self, low: Floats, high: Floats) -> Bools:
        """Which of them share room with a box."""
        return np.asarray((self.low < high).all(axis=1) & (self.high > low).all(axis=1))


def works(all_of: Joined, piece: int) -> Works:
    """Of a piece as it is cut."""
    form, matrix = all_of.part(piece), all_of.pieces.matrices[piece]
    cuts, holes = form.cuts, form.holes
    low = np.array([(0.0, 0.0, 0.0), *(cut.low for cut in cuts), *(hole.at for hole in holes)])
    high = np.array([form.size, *(cut.high for cut in cuts), *(hole.at for hole in holes)])
    if holes:
        way = np.array([hole.toward for hole in holes])
        deep = np.array([hole.depth for hole in holes])[:, None]
        side = (1 - np.abs(way)) * np.array([hole.diameter for hole in holes])[:, None] / 2
        first = 1 + len(cuts)
        low[first:] += np.minimum(way * deep, 0.0) - side
        high[first:] += np.maximum(way * deep, 0.0) + side
    ends = np.stack([low, high]) @ matrix[:3, :3].T + matrix[:3, 3]
    return Works(
        kinds=("", *(cut.kind for cut in cuts), *(hole.kind for hole in holes)),
        low=ends.min(axis=0),
        high=ends.max(axis=0),
        is_round=np.repeat([False, False, True], [1, len(cuts), len(holes)]),
    )
