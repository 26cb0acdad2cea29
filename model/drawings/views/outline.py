"""The outline of all there is to see: strokes with nothing beside them, drawn wide.

Openings that one sees through are no outline: of lines that hang together it is told by the area
they enclose, gone round with the empty side to the left, whether it is the outside that is empty.
"""

from __future__ import annotations

from typing import NamedTuple

import numpy as np
from scipy.sparse import coo_array
from scipy.sparse.csgraph import connected_components
from scipy.spatial import cKDTree

from model.drawings.views.bodies import Bodies
from model.drawings.views.gaze import Gaze
from model.drawings.views.hiding import bare
from model.drawings.views.stretches import Stretches, left_of, together
from model.parts.pieces import Bools, Floats, Ints
from model.units import Mm

_SAME: Mm = 0.1  # ends nearer than this hang together
_LEAST: Mm = 0.05  # of a part of a stroke


class Parted(NamedTuple):
    """Parts of strokes: `ends` (m, 2, 2), the `stroke` (m,) of each, whether it is `outline`."""

    ends: Floats
    stroke: Ints
    outline: Bools


def parted(strokes: Floats, gaze: Gaze, bodies: Bodies) -> Parted:
    """Visible strokes (n, 2, 2) on the paper, broken where they begin or cease to be outline."""
    count = len(strokes)
    left, right = bare(strokes @ gaze.axes[:2], gaze, bodies.lo, bodies.hi, bodies.facets)
    only_right = left_of(count, together(left, left_of(count, right)))
    inside = left_of(count, together(left, right))
    every = together(left, only_right, inside)
    side = np.repeat([1, -1, 0], [len(left.line), len(only_right.line), len(inside.line)])
    ends = _cut(strokes, every)
    long = np.linalg.norm(ends[:, 1] - ends[:, 0], axis=1) > _LEAST
    order = np.lexsort((every.begin, every.line))
    order = order[long[order]]
    ends, side = ends[order], side[order]
    return Parted(ends, every.line[order], _is_outside(ends, side))


def _cut(strokes: Floats, some: Stretches) -> Floats:
    share = np.stack([some.begin, some.end], axis=1)[..., None]
    begin, end = strokes[some.line, :1], strokes[some.line, 1:]
    return np.asarray(begin + share * (end - begin))


def _is_outside(ends: Floats, side: Ints) -> Bools:
    """Whether lines with nothing to their left (1) or right (-1) bound the outside."""
    found = side != 0
    own = ends[found]
    if not len(own):
        return np.asarray(found)
    ahead = np.where((side[found] > 0)[:, None, None], own, own[:, ::-1])
    group = _hanging_together(own)
    (x0, y0), (x1, y1) = ahead[:, 0].T, ahead[:, 1].T
    area = np.bincount(group, x0 * y1 - x1 * y0)
    found[found] = (area < 0)[group]
    return np.asarray(found)


def _hanging_together(ends: Floats) -> Ints:
    """A number for each line, alike for those that share ends, by whatever chain."""
    points = ends.reshape(-1, 2)
    meet = cKDTree(points).query_pairs(_SAME, output_type="ndarray") // 2
    links = coo_array((np.ones(len(meet)), (meet[:, 0], meet[:, 1])), shape=(len(ends),) * 2)
    return np.asarray(connected_components(links, directed=False)[1], np.intp)
