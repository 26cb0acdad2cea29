"""What is on show and how it stands: scene, style, open drawers, assemblies pulled apart. No Qt.

Changes only mark what is stale; `prepare` brings it up to date once, however many changes came
between two pictures.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import replace

import numpy as np
import numpy.typing as npt

from app.view.camera import Array, Bounds
from app.view.items import FloorItem
from app.view.layers import BedLayers, Style
from app.view.motion import offsets
from app.view.picking import first_hit
from app.view.scene import Scene
from app.view.shadow import floor_shadow
from app.view.strain import Strain
from app.view.worked_layers import WorkedLayers

RESORT = 0.03  # how far the line of sight turns (radians) before glass is sorted anew


class Stage:
    """One scene, and the buffers that show it."""

    def __init__(self) -> None:
        self.scene: Scene | None = None
        self.style = Style()
        self.open: dict[str, float] = {}
        self.apart = 0.0
        self.layers, self.worked, self.floor = BedLayers(), WorkedLayers(), FloorItem(-50)
        self.strain: Strain | None = None
        self._moved: npt.NDArray[np.float32] = np.zeros((1, 3), np.float32)
        self._is_stale = True
        self._sorted_for = np.zeros(3)

    def show(self, scene: Scene) -> None:
        """Another bed, of whose strength nothing is known. Drawers that it has too stay open."""
        self.scene = scene
        self.show_strain(None)
        known = len(scene.looks)
        self.restyle(selected=frozenset(p for p in self.style.selected if p < known), hovered=-1)
        self.move()

    def restyle(self, **changes: object) -> bool:
        """Change the style; False if it is so already."""
        style = replace(self.style, **changes)  # type: ignore[arg-type]
        if style == self.style:
            return False
        self.style, self._is_stale = style, True
        return True

    def show_strain(self, strain: Strain | None) -> None:
        """How hard the frame of this scene works, and how it bends."""
        self.strain = strain
        frame = None if strain is None else frozenset(strain.body.piece.tolist())
        self.style, self._is_stale = replace(self.style, frame=frame), True

    def move(self, shares: Mapping[str, float] | None = None, apart: float | None = None) -> None:
        """Open drawers by a share of their way, pull assemblies apart: all 0 to 1."""
        self.open |= {name: _share(value) for name, value in (shares or {}).items()}
        self.apart = self.apart if apart is None else _share(apart)
        if self.scene is not None:
            self._moved = offsets(self.scene, self.open, self.apart)
            self._is_stale = True

    @property
    def reach(self) -> dict[str, float]:
        """How far drawers stand out of each row that has an open one, mm."""
        found: dict[str, float] = {}
        for drawer, way in (self.scene.travel if self.scene is not None else {}).items():
            row, out = (
                drawer.rpartition("-")[0],
                self.open.get(drawer, 0.0) * float(np.abs(way).sum()),
            )
            if out:
                found[row] = max(found.get(row, 0.0), out)
        return found

    @property
    def boxes(self) -> tuple[Array, Array]:
        """Lower and upper corner of each piece where it stands now."""
        assert self.scene is not None
        return self.scene.low + self._moved, self.scene.high + self._moved

    @property
    def _shown(self) -> npt.NDArray[np.bool_]:
        assert self.scene is not None
        return self.style.shows_mattress | ~self.scene.is_mattress

    @property
    def bounds(self) -> Bounds:
        """The box round all that is shown."""
        low, high = (corner[self._shown] for corner in self.boxes)
        return tuple(low.min(0).tolist()), tuple(high.max(0).tolist())  # type: ignore[return-value]

    def prepare(self, toward: Array) -> None:
        """Send what has changed to the graphics card; `toward` points to the eye."""
        if self.scene is None:
            return
        if self._is_stale:
            self.layers.place(self.scene, self._moved)
            self.layers.paint(self.scene, self.style)
            self.worked.show(self.strain if self.style.is_by_strength else None, self._moved)
            self.floor.show_shadow(floor_shadow(*(corner[self._shown] for corner in self.boxes)))
        if self._is_stale or np.linalg.norm(toward - self._sorted_for) > RESORT:
            self.layers.sort_ghosts(toward)
            self._sorted_for = toward
        self._is_stale = False

    def piece_on(self, origin: Array, direction: Array) -> int:
        """The piece a line of sight meets first, or -1. A mattress of glass is looked through."""
        if self.scene is None:
            return -1
        if self.style.is_by_strength and self.strain is not None:
            hit = first_hit(origin, direction, self.worked.triangles)
            if hit >= 0:  # what stands before the frame is glass
                return int(self.strain.body.piece[hit])
        solid = ~self.scene.is_mattress if self.style.is_see_through else self._shown
        keep = np.flatnonzero(solid[self.scene.piece_of_triangle])
        triangles = (
            self.scene.triangles[keep] + self._moved[self.scene.piece_of_triangle[keep], None]
        )
        hit = first_hit(origin, direction, triangles)
        return int(self.scene.piece_of_triangle[keep[hit]]) if hit >= 0 else -1

    def drawer_on(self, piece: int) -> str:
        """The drawer whose front, pull or box this is; "" for a piece of the bed itself."""
        return self.scene.looks[piece].drawer if self.scene is not None and piece >= 0 else ""

    def known(self, pieces: Iterable[int]) -> frozenset[int]:
        """Those of the pieces that the shown bed has."""
        count = len(self.scene.looks) if self.scene is not None else 0
        return frozenset(piece for piece in pieces if 0 <= piece < count)


def _share(value: float) -> float:
    return min(max(value, 0.0), 1.0)
