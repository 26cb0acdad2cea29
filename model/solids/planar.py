"""The flat faces of an exact solid: coplanar triangles made one polygon each, with its holes."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

import numpy as np

from model.parts.pieces import Bools, Floats, Ints

if TYPE_CHECKING:
    from manifold3d import Manifold

_SAME_WAY = 1e-9  # 1 - cosine: two faces this alike lie in one plane if they touch
_SAME_PLACE = 1e-5  # mm


class Planar(NamedTuple):
    """A closed surface of flat faces. `corners` (n, 3), mm.

    Of face f: `normals[f]` outward, `offsets[f]` (the plane is normal . x = offset), `loops[f]` the
    corners around it, counter-clockwise seen from outside, then those around each of its holes,
    clockwise.
    """

    corners: Floats
    normals: Floats
    offsets: Floats
    loops: tuple[tuple[Ints, ...], ...]


def planar(solid: Manifold) -> Planar:
    """The flat faces of a solid. Corners that lie within a straight edge are left out."""
    mesh = solid.to_mesh64()
    corners = np.asarray(mesh.vert_properties, float)[:, :3]
    triangles = np.asarray(mesh.tri_verts, np.intp)
    twin = _twins(triangles)
    ends = np.asarray(mesh.run_index, np.intp)[1:] // 3
    of_run = np.searchsorted(ends, np.arange(len(triangles)), side="right")
    face = _faces(corners, triangles, twin, np.stack([of_run, np.asarray(mesh.face_id)], 1))
    rings = _rings(triangles, face, twin)
    count = int(face.max()) + 1
    normals, offsets = _planes(corners, triangles, face, count)
    loops: list[list[Ints]] = [[] for _ in range(count)]
    bends = _bends(triangles, face, twin, len(corners))
    for first, ring in rings:
        loops[face[first // 3]].append(ring[bends[ring]])
    ordered = tuple(
        tuple(own) if len(own) == 1 else _outer_first(own, corners, normals[f])
        for f, own in enumerate(loops)
    )
    return Planar(corners, normals, offsets, ordered)


def _twins(triangles: Ints) -> Ints:
    """For each side of a triangle (3 t) the same side of its neighbour."""
    start, end = triangles.ravel(), triangles[:, (1, 2, 0)].ravel()
    wide = int(triangles.max()) + 1
    forward, back = np.argsort(start * wide + end), np.argsort(end * wide + start)
    twin = np.empty(len(start), np.intp)
    twin[forward] = back
    return twin


def _faces(corners: Floats, triangles: Ints, twin: Ints, given: Ints) -> Ints:
    """The face that each triangle (t,) belongs to, from 0 in the order of triangles.

    `given` (t, 2) is the solid and its face that the kernel says each came from: a sliver alone
    would tell no plane.
    """
    source = np.unique(given, axis=0, return_inverse=True)[1].ravel()
    normals, offsets = _planes(corners, triangles, source, int(source.max()) + 1)
    one, other = source[np.arange(len(twin)) // 3], source[twin // 3]
    alike = one == other
    alike |= (1 - (normals[one] * normals[other]).sum(axis=1) < _SAME_WAY) & (
        np.abs(offsets[one] - offsets[other]) < _SAME_PLACE
    )
    side = np.flatnonzero(alike)
    label = np.arange(len(triangles))
    while True:
        low = label.copy()
        np.minimum.at(low, side // 3, label[twin[side] // 3])
        low = low[low]
        if np.array_equal(low, label):
            return np.unique(label, return_inverse=True)[1]
        label = low


def _planes(corners: Floats, triangles: Ints, face: Ints, count: int) -> tuple[Floats, Floats]:
    """Normal (f, 3) and offset (f,) of each face, by the areas of its triangles."""
    at = corners[triangles]
    areas = np.cross(at[:, 1] - at[:, 0], at[:, 2] - at[:, 0])
    summed = np.stack([np.bincount(face, areas[:, k], count) for k in range(3)], 1).astype(float)
    normals = summed / np.linalg.norm(summed, axis=1, keepdims=True)
    size = np.linalg.norm(areas, axis=1)
    along = (at.mean(axis=1) * normals[face]).sum(axis=1)
    return normals, np.bincount(face, along * size, count) / np.bincount(face, size, count)


def _rings(triangles: Ints, face: Ints, twin: Ints) -> list[tuple[int, Ints]]:
    """Every loop of corners around a face or a hole in it, and the first side of it."""
    side = np.arange(3 * len(triangles))
    onward = side - side % 3 + (side + 1) % 3
    is_border = face[side // 3] != face[twin // 3]
    follows = onward.copy()
    while True:  # turn about the corner through the triangles of the face
        inside = np.flatnonzero(is_border & ~is_border[follows])
        if not len(inside):
            break
        follows[inside] = onward[twin[follows[inside]]]
    start, after = triangles.ravel().tolist(), follows.tolist()
    waiting = is_border.copy()
    found = []
    for first in np.flatnonzero(is_border).tolist():
        ring, at = [], first
        while waiting[at]:
            waiting[at] = False
            ring.append(start[at])
            at = after[at]
        if ring:
            found.append((first, np.array(ring)))
    return found


def _bends(triangles: Ints, face: Ints, twin: Ints, count: int) -> Bools:
    """Corners (n,) where more than two faces meet: at the others an edge just goes on."""
    side = np.arange(3 * len(triangles))
    is_border = face[side // 3] != face[twin // 3]
    leaving = np.bincount(triangles.ravel()[is_border], minlength=count)
    return leaving > 2


def _outer_first(rings: list[Ints], corners: Floats, normal: Floats) -> tuple[Ints, ...]:
    """The loops of a face, its outer one first: no other goes around as much."""
    return tuple(sorted(rings, key=lambda ring: -_area(corners[ring], normal)))


def _area(ring: Floats, normal: Floats) -> float:
    """Twice the area that a loop goes around, below 0 where it is clockwise about the normal."""
    return float((np.cross(ring, np.roll(ring, -1, axis=0)).sum(axis=0) * normal).sum())
