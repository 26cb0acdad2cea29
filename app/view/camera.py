"""Where the eye stands, and how bed points become picture points. Plain numpy, no window needed.

Points are (n, 3), mm, bed axes. Pictures are in pixels, x to the right, y down, origin upper left.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from functools import cached_property
from typing import NamedTuple

import numpy as np
import numpy.typing as npt

Array = npt.NDArray[np.float64]
Point = tuple[float, float, float]
Bounds = tuple[Point, Point]

HALF_WIDTH = math.tan(math.radians(30) / 2)  # narrow, so that posts stand upright and parallel
LEAST_DISTANCE, MOST_DISTANCE = 60.0, 60_000.0

# Azimuth (degrees round z from +x) and elevation of the eye.
VIEWS = {
    "foot": (-90.0, 0.0),
    "head": (90.0, 0.0),
    "left": (180.0, 0.0),
    "right": (0.0, 0.0),
    "above": (-90.0, 90.0),
    "corner": (-58.0, 21.0),
}


USUAL = (1000, 700)  # px: what has its size in pixels grows with larger pictures


class Picture(NamedTuple):
    """Size of the picture in pixels."""

    width: int
    height: int

    @property
    def scale(self) -> float:
        """How many times larger texts and stripes are drawn than in a picture of usual size."""
        return max(min(self.width / USUAL[0], self.height / USUAL[1]), 1.0)


@dataclass(frozen=True, kw_only=True)
class Camera:
    """An eye that looks at `centre` from `distance` mm away."""

    centre: Point = (0.0, 0.0, 0.0)
    distance: float = 5000.0
    azimuth: float = VIEWS["corner"][0]
    elevation: float = VIEWS["corner"][1]
    is_parallel: bool = False

    # ------------------------------------------------------------ looking

    @cached_property
    def axes(self) -> Array:
        """(3, 3): rows are the unit vectors to the right, up, and towards the eye."""
        a, e = math.radians(self.azimuth), math.radians(self.elevation)
        right = (-math.sin(a), math.cos(a), 0.0)
        up = (-math.sin(e) * math.cos(a), -math.sin(e) * math.sin(a), math.cos(e))
        toward = (math.cos(e) * math.cos(a), math.cos(e) * math.sin(a), math.sin(e))
        return np.array((right, up, toward))

    @cached_property
    def eye(self) -> Array:
        """Where the eye stands."""
        return np.asarray(self.centre) + self.distance * self.axes[2]

    def view_matrix(self) -> Array:
        """(4, 4): bed axes to eye axes, the eye looking along -z."""
        matrix = np.eye(4)
        matrix[:3, :3] = self.axes
        matrix[:3, 3] = -matrix[:3, :3] @ self.eye
        return matrix

    def projection_matrix(self, picture: Picture, reach: float) -> Array:
        """(4, 4): eye axes to clip space; what lies within `reach` of the centre is kept."""
        far = self.distance + reach
        near = self.distance - reach
        if not self.is_parallel:
            near = max(near, 0.02 * self.distance)
        across = HALF_WIDTH
        up = across * picture.height / picture.width
        matrix = np.zeros((4, 4))
        if self.is_parallel:
            matrix[0, 0], matrix[1, 1] = 1 / (across * self.distance), 1 / (up * self.distance)
            matrix[2, 2], matrix[2, 3] = -2 / (far - near), -(far + near) / (far - near)
            matrix[3, 3] = 1.0
        else:
            matrix[0, 0], matrix[1, 1] = 1 / across, 1 / up
            matrix[2, 2] = -(far + near) / (far - near)
            matrix[2, 3] = -2 * far * near / (far - near)
            matrix[3, 2] = -1.0
        return matrix

    def project(self, points: Array, picture: Picture) -> Array:
        """(n, 3): picture x and y of each point, and its distance before the eye in mm."""
        seen = (np.asarray(points, float) - self.eye) @ self.axes.T
        depth = -seen[:, 2]
        width = HALF_WIDTH * (
            np.full_like(depth, self.distance) if self.is_parallel else np.maximum(depth, 1e-6)
        )
        scale = picture.width / 2 / width
        x = picture.width / 2 + seen[:, 0] * scale
        y = picture.height / 2 - seen[:, 1] * scale
        return np.stack((x, y, depth), axis=1)

    def ray(self, x: float, y: float, picture: Picture) -> tuple[Array, Array]:
        """The line of sight through a pixel: a point on it and its unit direction."""
        sideways = (2 * x / picture.width - 1) * HALF_WIDTH
        upwards = (picture.height - 2 * y) / picture.width * HALF_WIDTH
        right, up, toward = self.axes
        offset = sideways * right + upwards * up
        if self.is_parallel:
            return self.eye + offset * self.distance, -toward
        direction = offset - toward
        return self.eye, direction / np.linalg.norm(direction)

    def mm_per_pixel(self, picture: Picture) -> float:
        """How much of the bed a pixel covers, at the centre."""
        return float(2 * HALF_WIDTH * self.distance / picture.width)

    # ------------------------------------------------------------ moving

    def orbited(self, azimuth: float, elevation: float) -> Camera:
        """Turned round the centre by degrees; it stops overhead and just under the floor."""
        raised = float(np.clip(self.elevation + elevation, -30.0, 90.0))
        return replace(self, azimuth=(self.azimuth + azimuth + 180) % 360 - 180, elevation=raised)

    def panned(self, dx: float, dy: float, picture: Picture) -> Camera:
        """Moved so that what is at the centre goes along with the mouse."""
        right, up, _ = self.axes
        step = (-dx * right + dy * up) * self.mm_per_pixel(picture)
        return replace(self, centre=_point(np.asarray(self.centre) + step))

    def zoomed(self, factor: float, at: tuple[float, float], picture: Picture) -> Camera:
        """Nearer (factor below 1) or farther; what lies under the mouse stays there."""
        distance = float(np.clip(self.distance * factor, LEAST_DISTANCE, MOST_DISTANCE))
        factor = distance / self.distance
        right, up, _ = self.axes
        mm = self.mm_per_pixel(picture)
        held = ((at[0] - picture.width / 2) * right - (at[1] - picture.height / 2) * up) * mm
        centre = np.asarray(self.centre) + held * (1 - factor)
        return replace(self, centre=_point(centre), distance=distance)

    def turned_to(self, view: str) -> Camera:
        """One of the fixed views; the centre stays."""
        azimuth, elevation = VIEWS[view]
        return replace(self, azimuth=azimuth, elevation=elevation)

    def fitted(self, points: Array, picture: Picture, margin: float = 1.1) -> Camera:
        """As near as shows all points; `margin` 1.1 leaves a tenth of the picture free."""
        camera = replace(self, centre=_point((points.min(0) + points.max(0)) / 2))
        half = HALF_WIDTH / margin
        limits = np.array((half, half * picture.height / picture.width))
        for _ in range(4):  # perspective moves the middle of what is seen: a few rounds settle it
            seen = (points - np.asarray(camera.centre)) @ camera.axes.T
            ahead = 0.0 if camera.is_parallel else seen[:, 2:]
            distance = float((np.abs(seen[:, :2]) / limits + ahead).max())
            depth = distance - seen[:, 2:] if not camera.is_parallel else distance
            slant = seen[:, :2] / depth
            middle = (slant.max(0) + slant.min(0)) / 2 * distance
            centre = np.asarray(camera.centre) + middle @ camera.axes[:2]
            camera = replace(camera, centre=_point(centre), distance=max(distance, LEAST_DISTANCE))
        return camera

    def towards(self, other: Camera, share: float) -> Camera:
        """Part of the way to another camera, the short way round."""
        turn = (other.azimuth - self.azimuth + 180) % 360 - 180
        centre = np.asarray(self.centre) * (1 - share) + np.asarray(other.centre) * share
        return replace(
            other,
            centre=_point(centre),
            distance=self.distance * (other.distance / self.distance) ** share,
            azimuth=self.azimuth + turn * share,
            elevation=self.elevation + (other.elevation - self.elevation) * share,
        )


def corners(bounds: Bounds) -> Array:
    """(8, 3): the corners of a box."""
    low, high = bounds
    return np.array([(x, y, z) for x in (low[0], high[0]) for y in (low[1], high[1])
                     for z in (low[2], high[2])])  # fmt: skip


def _point(array: Array) -> Point:
    x, y, z = array.tolist()
    return (x, y, z)
