"""Plain blocks of wood to look at, and ways to measure what a view shows of them."""

from __future__ import annotations

from typing import Any

import numpy as np

from model.drawings.views.scene import Scene
from model.part import Cut, Face, Hole, Part, Point
from model.parts.pieces import Floats

Block = tuple[Point, Point]


def block(size: Point, **more: Any) -> Part:
    """A part of that length, width and thickness."""
    given: dict[str, Any] = {
        "assembly": "deck", "lies": "uvz", "at": (0.0, 0.0, 0.0), "material": "pine", **more,
    }  # fmt: skip
    return Part(name="block", length=size[0], width=size[1], thickness=size[2], **given)


def scene_of(*parts: tuple[Part, Point], exact: bool = False) -> Scene:
    """Parts whose lower corners stand at points, none of them turned."""
    matrices = np.repeat(np.eye(4)[None], len(parts), axis=0)
    matrices[:, :3, 3] = [at for _, at in parts]
    return Scene(
        forms=tuple(part for part, _ in parts), matrices=matrices,
        names=tuple(f"A{k}-1" for k in range(1, len(parts) + 1)),
        pieces=np.arange(len(parts)), is_sheet=(False,) * len(parts), exact=exact,
    )  # fmt: skip


def blocks(*corners: Block, exact: bool = False) -> Scene:
    """Blocks from a lower to an upper corner."""
    made = []
    for low, high in corners:
        length, width, thickness = (b - a for a, b in zip(low, high, strict=True))
        made.append((block((length, width, thickness)), low))
    return scene_of(*made, exact=exact)


def cut(low: Point, high: Point) -> Cut:
    return Cut("groove", Face.FACE, low, high)


def bore(at: Point, toward: Point, diameter: float, depth: float, face: Face = Face.FACE) -> Hole:
    return Hole("bore", face, at, toward, diameter, depth)


def total(ends: Floats) -> float:
    """The length of all strokes together, mm."""
    return float(np.linalg.norm(ends[:, 1] - ends[:, 0], axis=1).sum())
