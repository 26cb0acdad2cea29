"""Which dimension lines are drawn from where the eye stands, and where they run in the picture."""

from __future__ import annotations

from collections.abc import Iterable
from typing import NamedTuple

import numpy as np

from app.view.camera import Array, Bounds, Camera, Picture, corners
from app.view.dimension_lines import NOWHERE, Dimension3D

LEAST_LENGTH = 16.0  # px: shorter ones are seen end on
STAND_OFF = 18.0  # px: nearer to what it measures a line is hard to tell from an edge
END_ON = 0.9  # cosine: lines that run away from the eye more than this say nothing
OBLIQUE = 0.12  # cosine: faces that are turned further away hide what is written on them


class Drawn(NamedTuple):
    """A dimension in the picture: both ends of its line and of what it measures, px."""

    dimension: Dimension3D
    line: Array
    measured: Array


def chosen(
    lines: Iterable[Dimension3D], camera: Camera, picture: Picture, bounds: Bounds
) -> list[Drawn]:
    """The best seen line of each key, in the order in which the keys first come."""
    outline = camera.project(corners(bounds), picture)
    best: dict[str, tuple[tuple[float, ...], Drawn]] = {}
    better_end: dict[str, float] = {}
    lines = tuple(lines)
    points = [(*each.line, each.start, each.end) for each in lines]
    all_seen = camera.project(np.array(points, float).reshape(-1, 3), picture).reshape(-1, 4, 3)
    for dimension, seen in zip(lines, all_seen, strict=True):
        key = dimension.group
        drawn = Drawn(dimension, seen[:2, :2], seen[2:, :2])
        first = better_end.setdefault(key, dimension.start[1])
        if (seen[:, 2] <= 0).any() or not _can_be_seen(drawn, camera):
            continue
        score = _score(drawn, first, seen, outline)
        if key not in best or score > best[key][0]:
            best[key] = (score, drawn)
    return [drawn for _, drawn in best.values()]


def _can_be_seen(drawn: Drawn, camera: Camera) -> bool:
    dimension, toward = drawn.dimension, camera.axes[2]
    if dimension.faces != NOWHERE and np.dot(dimension.faces, toward) < OBLIQUE:
        return False
    if dimension.is_clearance:
        return True
    way = np.subtract(dimension.end, dimension.start)
    is_end_on = abs(np.dot(way, toward)) > END_ON * np.linalg.norm(way)
    return not is_end_on and bool(np.linalg.norm(drawn.line[1] - drawn.line[0]) >= LEAST_LENGTH)


def _score(drawn: Drawn, first: float, seen: Array, outline: Array) -> tuple[float, ...]:
    """Uprights stand beside the bed, at their better end and well off it; others near the eye."""
    if not drawn.dimension.is_upright:
        return (-round(float(seen[:2, 2].mean())),)
    x = drawn.line[:, 0]
    beside = max(outline[:, 0].min() - x.max(), x.min() - outline[:, 0].max())
    stands_off = float(np.linalg.norm(drawn.measured - drawn.line, axis=1).min()) > STAND_OFF
    return (beside > 0, drawn.dimension.start[1] == first, stands_off, round(beside / 8))
