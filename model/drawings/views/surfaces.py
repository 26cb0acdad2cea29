"""Parts that no boxes fill (tapered, round, drilled) as triangles and lines, in their own axes."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, NamedTuple, Self, cast

import numpy as np

from model.part import Part
from model.parts.pieces import Floats, Ints
from model.solids.exact import solid
from model.solids.mesh import shape
from model.units import Degrees

if TYPE_CHECKING:
    from manifold3d import Manifold

_BAR: Degrees = 35.0  # a drawn bar has 12 sides and more: less than this between two of them
_ROUND: Degrees = 20.0  # of exact solids, whose rounds have 48 sides


class Surface(NamedTuple):
    """`edges` (e, 2, 3), where it turns a corner; `facets` (t, 3, 3), triangles, outward; `bends`
    (c, 2, 3), lines of its rounds, and the normals on both sides of each, `bend_normals` (c, 2, 3).
    """

    edges: Floats
    facets: Floats
    bends: Floats
    bend_normals: Floats

    @classmethod
    def of_edges(cls, edges: Floats) -> Self:
        """Lines without a surface: what fills them is known otherwise."""
        return cls(edges, np.zeros((0, 3, 3)), np.zeros((0, 2, 3)), np.zeros((0, 2, 3)))


def surface_of(part: Part, exact: bool) -> Surface:
    """The surface of a part; with its round holes where it is `exact`. Kept on the part."""
    kind = "_exact_surface" if exact else "_plain_surface"
    found = part.__dict__.get(kind)
    if found is None:
        found = part.__dict__[kind] = _exact(part) if exact else _plain(part)
    return cast(Surface, found)


def _plain(part: Part) -> Surface:
    drawn = shape(part)
    if part.is_round:
        return surface(drawn.vertices, drawn.triangles, _BAR)
    return Surface.of_edges(drawn.edges)._replace(facets=drawn.vertices[drawn.triangles])


def _exact(part: Part) -> Surface:
    found = surface_of_solid(solid(part))
    if not part.taper:
        return found
    drawn = shape(part).edges  # the bend of a taper is too slight to be told from a round
    on_ring = np.abs(drawn[:, :, 0] - part.taper_length).max(axis=1) < 1e-6
    return found._replace(edges=np.concatenate([found.edges, drawn[on_ring]]))


def surface_of_solid(body: Manifold) -> Surface:
    """The surface of an exact solid."""
    mesh = body.to_mesh64()
    vertices = np.asarray(mesh.vert_properties, float)[:, :3]
    return surface(vertices, np.asarray(mesh.tri_verts, np.intp), _ROUND)


def surface(vertices: Floats, triangles: Ints, sharp: Degrees) -> Surface:
    """Of a watertight mesh: faces that meet at more than `sharp` degrees make an edge."""
    corners = vertices[triangles]
    normals = np.cross(corners[:, 1] - corners[:, 0], corners[:, 2] - corners[:, 0])
    normals /= np.maximum(np.linalg.norm(normals, axis=1, keepdims=True), 1e-300)
    ends, one, other = _shared(triangles)
    cosine = np.einsum("ij,ij->i", normals[one], normals[other])
    is_edge = cosine < math.cos(math.radians(sharp))
    is_bend = ~is_edge & (cosine < 1 - 1e-9)
    bends = ends[is_bend]
    return Surface(
        vertices[ends[is_edge]], corners, vertices[bends],
        np.stack([normals[one[is_bend]], normals[other[is_bend]]], axis=1),
    )  # fmt: skip


def _shared(triangles: Ints) -> tuple[Ints, Ints, Ints]:
    """Sides that two triangles share: both corners (s, 2), and the triangles."""
    sides = np.sort(triangles[:, (0, 1, 1, 2, 2, 0)].reshape(-1, 2), axis=1)
    owner = np.repeat(np.arange(len(triangles)), 3)
    order = np.lexsort((sides[:, 1], sides[:, 0]))
    sides, owner = sides[order], owner[order]
    return sides[::2], owner[::2], owner[1::2]
