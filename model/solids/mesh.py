"""What a view draws: flat triangles and feature edges of every piece, in bed axes.

One surface a shape, kept by the shape's value; one set of triangles a part, kept on the part. Round
cuts are left to `model.solids.exact`: they are too small to be worth a slider's time.
"""

from __future__ import annotations

import math
from functools import lru_cache
from typing import NamedTuple, cast

import numpy as np
import numpy.typing as npt

from model.parts.pieces import Bools, Corners, Floats, Ints, Parts, Pieces
from model.parts.record import Part, Point
from model.solids.shape import cells, creases, surface

Float32s = npt.NDArray[np.float32]

_COARSE, _FINE = 12, 24  # sides of a drawn bar, thin and thick
_THICK = 15.0  # mm: bars this thick are drawn with more sides


class Shape(NamedTuple):
    """The surface of one part in its own axes, mm: watertight, outward.

    `vertices` (n, 3), `triangles` (t, 3) of them, `normals` (t, 3); `edges` (m, 2, 3), lines where
    the surface turns a corner.
    """

    vertices: Floats
    triangles: Ints
    normals: Floats
    edges: Floats


class Mesh(NamedTuple):
    """All pieces in bed axes, mm: `vertices` (n, 3, 3), three corners a triangle, `normals` (n, 3)
    and `piece` (n), the piece each triangle belongs to; `edges` (m, 2, 3) and `edge_piece` (m).
    """

    vertices: Float32s
    normals: Float32s
    piece: Ints
    edges: Float32s
    edge_piece: Ints


class _Drawn(NamedTuple):
    """One part's triangles and edges at all its places."""

    vertices: Float32s
    normals: Float32s
    edges: Float32s
    triangles_each: int
    edges_each: int


def bed_mesh(pieces: Pieces, parts: Parts | None = None) -> Mesh:
    """The mesh of a whole bed. Parts that were drawn before are not worked out again."""
    first = np.flatnonzero(pieces.place == 0).tolist()
    drawn, triangles, edges = [], [], []
    for start in first:
        part = pieces.parts[pieces.part[start]]
        each = _drawn(part, pieces, start)
        drawn.append(each)
        triangles += [each.triangles_each] * len(part.places)
        edges += [each.edges_each] * len(part.places)
    rows = np.arange(len(pieces))
    return Mesh(
        np.concatenate([each.vertices for each in drawn] or [np.zeros((0, 3, 3), np.float32)]),
        np.concatenate([each.normals for each in drawn] or [np.zeros((0, 3), np.float32)]),
        np.repeat(rows, np.array(triangles, np.intp)),
        np.concatenate([each.edges for each in drawn] or [np.zeros((0, 2, 3), np.float32)]),
        np.repeat(rows, np.array(edges, np.intp)),
    )


def _drawn(part: Part, pieces: Pieces, start: int) -> _Drawn:
    found = part.__dict__.get("_drawn")
    if found is None:
        matrices = pieces.matrices[start : start + len(part.places)]
        found = part.__dict__["_drawn"] = _draw(shape(pieces.form(start)), matrices)
    return cast(_Drawn, found)


def _draw(shape: Shape, matrices: Floats) -> _Drawn:
    """One shape at every place of a part; its pieces differ by a shift only."""
    turn, shifts = matrices[0, :3, :3].T, matrices[:, None, :3, 3]
    corners = (shape.vertices @ turn)[shape.triangles.ravel()]
    ends = shape.edges.reshape(-1, 3) @ turn
    normals = (shape.normals @ turn).astype(np.float32)
    return _Drawn(
        (corners + shifts).astype(np.float32).reshape(-1, 3, 3),
        np.tile(normals, (len(matrices), 1)),
        (ends + shifts).astype(np.float32).reshape(-1, 2, 3),
        len(shape.triangles),
        len(shape.edges),
    )


# ---------------------------------------------------------------- one shape


def shape(part: Part) -> Shape:
    """The surface of a part in its own axes, without its round cuts."""
    if part.is_round:
        return _bar(float(part.length), float(part.width))
    taper = (float(part.taper), float(part.taper_length)) if part.taper else (0.0, 0.0)
    return _boxed(part.size, tuple((cut.low, cut.high) for cut in part.cuts), *taper)


@lru_cache(maxsize=4096)
def _boxed(size: Point, cuts: Corners, taper: float, taper_length: float) -> Shape:
    if not cuts and not taper:
        unit = _unit_box()
        far = np.array(size)
        return Shape(unit.vertices * far, unit.triangles, unit.normals, unit.edges * far)
    lines, wood = cells(size, cuts)
    if not taper:
        return _shape_of(lines, wood)
    lines, wood, bend = _with_line(lines, wood, min(taper_length, size[0]))
    flat = _shape_of(lines, wood, bend if bend < len(wood) else None)
    vertices = _tapered(flat.vertices, size, taper, taper_length)
    edges = _tapered(flat.edges.reshape(-1, 3), size, taper, taper_length).reshape(-1, 2, 3)
    return Shape(vertices, flat.triangles, _normals(vertices, flat.triangles), edges)


@lru_cache(maxsize=1)
def _unit_box() -> Shape:
    return _shape_of([np.array([0.0, 1.0])] * 3, np.ones((1, 1, 1), bool))


def _shape_of(lines: list[Floats], wood: Bools, bend: int | None = None) -> Shape:
    grid, quads = surface(wood)
    vertices = np.stack([line[grid[:, axis]] for axis, line in enumerate(lines)], axis=1)
    triangles = quads[:, (0, 1, 2, 0, 2, 3)].reshape(-1, 3)
    at = creases(wood, bend)
    edges = np.stack([line[at[:, :, axis]] for axis, line in enumerate(lines)], axis=2)
    return Shape(vertices, triangles, _normals(vertices, triangles), edges)


def _normals(vertices: Floats, triangles: Ints) -> Floats:
    a, b, c = vertices[triangles].swapaxes(0, 1)
    (ux, uy, uz), (vx, vy, vz) = (b - a).T, (c - a).T
    normal = np.stack([uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx], axis=1)
    length = np.sqrt(np.einsum("ij,ij->i", normal, normal))
    return np.asarray(normal / length[:, None])


def _with_line(lines: list[Floats], wood: Bools, at: float) -> tuple[list[Floats], Bools, int]:
    """The same cells with a grid line across the length, and its index."""
    along = lines[0]
    k = int(np.searchsorted(along, at))
    if along[k] != at:
        wood = np.insert(wood, k - 1, wood[k - 1], axis=0)
        along = np.insert(along, k, at)
    return [along, *lines[1:]], wood, k


def _tapered(points: Floats, size: Point, taper: float, taper_length: float) -> Floats:
    """Draw points in towards the axis, all the way from the taper's start to the near end.

    Every section keeps its proportions, so that flat faces stay flat; a cut within the taper is
    drawn a little narrower than it is made.
    """
    out = points.copy()
    share = np.clip(1.0 - points[:, 0] / taper_length, 0.0, None)
    for axis in (1, 2):
        half = size[axis] / 2
        out[:, axis] = half + (points[:, axis] - half) * (1.0 - share * taper / half)
    return out


@lru_cache(maxsize=256)
def _bar(length: float, diameter: float) -> Shape:
    """A round bar as a prism whose corners lie on the round."""
    sides = _FINE if diameter >= _THICK else _COARSE
    angle = np.arange(sides) * (2 * math.pi / sides)
    ring = diameter / 2 * (1 + np.stack([np.cos(angle), np.sin(angle)], axis=1))
    near = np.column_stack([np.zeros(sides), ring])
    far = np.column_stack([np.full(sides, length), ring])
    k = np.arange(sides)
    after = (k + 1) % sides
    walls = np.stack([k, after + sides, k + sides, k, after, after + sides], 1).reshape(-1, 3)
    inner = np.arange(1, sides - 1)
    caps = np.stack([np.zeros_like(inner), inner + 1, inner], axis=1)
    triangles = np.concatenate([walls, caps, caps[:, ::-1] + sides])
    vertices = np.concatenate([near, far])
    rims = np.stack([np.concatenate([k, k + sides]), np.concatenate([after, after + sides])], 1)
    return Shape(vertices, triangles, _normals(vertices, triangles), vertices[rims])
