"""Pulling a drawer with the mouse: how far the mouse has gone along the drawer's way out."""

from __future__ import annotations

import numpy as np

from app.view.camera import Camera, Picture

LEAST_WAY = 60.0  # px: a drawer seen from the front hardly moves in the picture
DOWN = np.array((0.0, 220.0))  # then moving the mouse down pulls it, this far for all of its way


def pulled(
    travel: tuple[float, float, float],
    start: float,
    mouse: tuple[float, float],
    camera: Camera,
    picture: Picture,
) -> float:
    """How far open the drawer is, 0 to 1, when the mouse has moved from a `start` share."""
    here = np.asarray(camera.centre)
    ends = camera.project(np.stack((here, here + travel)), picture)[:, :2]
    way = ends[1] - ends[0]
    if np.linalg.norm(way) < LEAST_WAY:
        way = DOWN
    return float(np.clip(start + np.dot(mouse, way) / np.dot(way, way), 0.0, 1.0))
