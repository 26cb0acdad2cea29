"""What the view shows of a bed: triangles, edges, and what each piece is called and moves with."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property
from typing import TYPE_CHECKING, Any, NamedTuple

import numpy as np
import numpy.typing as npt

from app.view.mattress import cushion

if TYPE_CHECKING:
    from model.bed import Bed

Floats = npt.NDArray[np.float32]
Ints = npt.NDArray[np.intp]
MATTRESS = "mattress"  # the assembly that is drawn as a soft body
OUTWARD = {"left": (-1.0, 0.0, 0.0), "right": (1.0, 0.0, 0.0), "foot": (0.0, -1.0, 0.0)}


class Look(NamedTuple):
    """One piece as the view knows it. `drawer` is "" for a piece of the bed itself."""

    label: str
    assembly: str
    drawer: str
    material: str
    is_hardware: bool


@dataclass(frozen=True, kw_only=True, eq=False)
class Scene:
    """Triangles and normals (n, 3, 3), edges (m, 2, 3), mm, each with the index of its piece.

    `low` and `high`: the box round each piece. `travel`: how far each drawer comes out, as a vector
    on the bed.
    """

    triangles: Floats
    normals: Floats
    piece_of_triangle: Ints
    edges: Floats
    piece_of_edge: Ints
    looks: tuple[Look, ...]
    low: npt.NDArray[np.float64]
    high: npt.NDArray[np.float64]
    travel: Mapping[str, tuple[float, float, float]]
    is_mattress: npt.NDArray[np.bool_]

    @cached_property
    def bounds(self) -> tuple[npt.NDArray[np.float64], npt.NDArray[np.float64]]:
        """Corners of the box round the whole bed, mattress included."""
        return self.low.min(0), self.high.max(0)

    @cached_property
    def pieces_of_drawer(self) -> Mapping[str, tuple[int, ...]]:
        """The pieces that move with each drawer."""
        found: dict[str, list[int]] = {}
        for index, look in enumerate(self.looks):
            if look.drawer:
                found.setdefault(look.drawer, []).append(index)
        return {name: tuple(pieces) for name, pieces in found.items()}


def scene_of(bed: Bed, mesh: Any = None) -> Scene:
    """The scene of a bed; its mesh is made here unless it is at hand."""
    if mesh is None:
        from model.solids.mesh import bed_mesh

        mesh = bed_mesh(bed.pieces, bed.parts)
    looks, (low, high) = looks_of(bed), bed.pieces.bounds
    hard = np.array([look.assembly != MATTRESS for look in looks])
    soft = [(k, cushion(low[k], high[k])) for k in np.flatnonzero(~hard).tolist()]
    faces, lines = hard[mesh.piece], hard[mesh.edge_piece]
    return Scene(
        triangles=_joined(mesh.vertices[faces], *(body.triangles for _, body in soft)),
        normals=_joined(_flat(mesh.normals[faces]), *(body.normals for _, body in soft)),
        piece_of_triangle=_extended(mesh.piece[faces], [(k, len(b.triangles)) for k, b in soft]),
        edges=_joined(mesh.edges[lines], *(body.edges for _, body in soft)),
        piece_of_edge=_extended(mesh.edge_piece[lines], [(k, len(b.edges)) for k, b in soft]),
        looks=looks,
        is_mattress=~hard,
        low=low,
        high=high,
        travel=travels_of(bed),
    )


def looks_of(bed: Bed) -> tuple[Look, ...]:
    """What each piece of the bed is, in the order of its pieces."""
    pieces = bed.pieces
    parts = [pieces.parts[k] for k in pieces.part.tolist()]
    drawers = [pieces.groups[k] for k in pieces.group.tolist()]
    return tuple(
        Look(part.name, part.assembly, drawer, part.material, bool(part.hardware))
        for part, drawer in zip(parts, drawers, strict=True)
    )


def travels_of(bed: Bed) -> dict[str, tuple[float, float, float]]:
    """Each drawer comes out of its own side of the bed."""
    found = {}
    for drawer in filter(None, bed.pieces.groups):
        row = drawer.rpartition("-")[0]
        x, y, z = OUTWARD[row]
        far = float(bed[f"{row}.travel"])
        found[drawer] = (x * far, y * far, z * far)
    return found


def _joined(*arrays: Any) -> Floats:
    return np.concatenate(arrays).astype(np.float32, copy=False)


def _flat(normals: Any) -> Any:
    """One normal per corner, from one per triangle: (n, 3, 3)."""
    return np.repeat(normals[:, None], 3, axis=1)


def _extended(pieces: Any, more: list[tuple[int, int]]) -> Ints:
    return np.concatenate(
        (pieces, *(np.full(count, piece) for piece, count in more)), dtype=np.intp
    )
