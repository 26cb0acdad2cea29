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

    The mattress, where there is one, is the last body: index `len(looks)`. `travel`: how far each
    drawer comes out, as a vector on the bed.
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
    has_mattress: bool

    @property
    def mattress(self) -> int:
        """The index of the mattress's body, -1 without one."""
        return len(self.looks) if self.has_mattress else -1

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
    low, high = bed.pieces.bounds
    soft = mattress_box(bed)
    body = cushion(*soft)
    index = len(bed.pieces)
    return Scene(
        triangles=np.concatenate((_float(mesh.vertices).reshape(-1, 3, 3), body.triangles)),
        normals=np.concatenate((_flat(mesh.normals), body.normals)),
        piece_of_triangle=_extended(mesh.piece, index, len(body.triangles)),
        edges=np.concatenate((_float(mesh.edges), body.edges)),
        piece_of_edge=_extended(mesh.edge_piece, index, len(body.edges)),
        looks=looks_of(bed),
        low=np.vstack((low, soft[0])),
        high=np.vstack((high, soft[1])),
        travel=travels_of(bed),
        has_mattress=True,
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


def mattress_box(bed: Bed) -> tuple[npt.NDArray[np.float64], npt.NDArray[np.float64]]:
    """The two corners of the mattress as it lies in its well."""
    half, foot, deck = bed["mattress_across"] / 2, bed["mattress_foot_y"], bed["deck_top"]
    head, top = foot + bed["mattress_along"], deck + bed["mattress_high"]
    return np.array((-half, foot, deck)), np.array((half, head, top))


def _float(array: Any) -> Floats:
    return np.asarray(array, np.float32)


def _flat(normals: Any) -> Floats:
    """One normal per corner, however they come: per triangle (n, 3) or per corner (n, 3, 3)."""
    normals = _float(normals)
    return normals if normals.ndim == 3 else np.repeat(normals[:, None], 3, axis=1)


def _extended(pieces: Any, index: int, more: int) -> Ints:
    return np.concatenate((np.asarray(pieces, np.intp), np.full(more, index, np.intp)))
