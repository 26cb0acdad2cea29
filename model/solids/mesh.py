"""What a view draws: flat triangles and feature edges of every piece, in bed axes.

One surface a shape, kept by the shape's value; one set of triangles a part, kept on the part. Round
cuts are left to `model.solids.exact`: they are too small to be worth a slider's time.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from functools import lru_cache
from typing import NamedTuple, cast

import numpy as np
import numpy.typing as npt

from model.part import Part, Point
from model.parts.pieces import Bools, Floats, Ints, Parts, Pieces, as_cut
from model.parts.wood import Corners, cells
from model.solids.shape import creases, stacked, surface

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


class _Key(NamedTuple):
    """All that the surface of a part hangs on."""

    size: Point
    cuts: Corners
    taper: float
    taper_length: float
    is_round: bool


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
    made = [pieces.parts[part] for part in pieces.part[first].tolist()]
    new = [
        (part, at) for part, at in zip(made, first, strict=True) if "_drawn" not in part.__dict__
    ]
    for (part, at), shape in zip(new, shapes([as_cut(part) for part, _ in new]), strict=True):
        part.__dict__["_drawn"] = _draw(shape, pieces.matrices[at : at + len(part.places)])
    drawn = [cast(_Drawn, part.__dict__["_drawn"]) for part in made]
    triangles = np.array([each.triangles_each for each in drawn], np.intp)
    edges = np.array([each.edges_each for each in drawn], np.intp)
    of_piece, rows = np.cumsum(pieces.place == 0) - 1, np.arange(len(pieces))
    return Mesh(
        np.concatenate([each.vertices for each in drawn] or [np.zeros((0, 3, 3), np.float32)]),
        np.concatenate([each.normals for each in drawn] or [np.zeros((0, 3), np.float32)]),
        np.repeat(rows, triangles[of_piece]),
        np.concatenate([each.edges for each in drawn] or [np.zeros((0, 2, 3), np.float32)]),
        np.repeat(rows, edges[of_piece]),
    )


def _draw(shape: Shape, matrices: Floats) -> _Drawn:
    """One shape at every place of a part; its pieces differ by a shift only."""
    turn, shifts = matrices[0, :3, :3].T, matrices[:, None, :3, 3]
    corners = (shape.vertices @ turn)[shape.triangles.ravel()]
    ends = shape.edges.reshape(-1, 3) @ turn
    normals = shape.normals @ turn
    places = len(matrices)
    return _Drawn(
        np.add(corners, shifts, dtype=np.float32, casting="same_kind").reshape(-1, 3, 3),
        np.broadcast_to(normals, (places, *normals.shape)).reshape(-1, 3).astype(np.float32),
        np.add(ends, shifts, dtype=np.float32, casting="same_kind").reshape(-1, 2, 3),
        len(shape.triangles),
        len(shape.edges),
    )


# ---------------------------------------------------------------- shapes

_kept: dict[_Key, Shape] = {}
_KEPT = 4096  # shapes; a slider that runs for a while makes many
_LARGE = 600  # cells: a shape with more is not stacked with others, which would grow as large


def shape(part: Part) -> Shape:
    """The surface of a part in its own axes, without its round cuts."""
    return shapes([part])[0]


def shapes(parts: Sequence[Part]) -> list[Shape]:
    """The surfaces of parts; new ones in one go, for numpy is slow on many small arrays."""
    keys = [_key(part) for part in parts]
    new = [key for key in dict.fromkeys(keys) if key not in _kept]
    if len(_kept) + len(new) > _KEPT:
        _kept.clear()
        new = list(dict.fromkeys(keys))
    _kept.update((key, _bar(key.size)) for key in new if key.is_round)
    boxed = [key for key in new if not key.is_round]
    plain = [key for key in boxed if not key.cuts and not key.taper]
    _kept.update((key, _box(key.size)) for key in plain)
    small: list[tuple[_Key, _Grid]] = []
    large: list[tuple[_Key, _Grid]] = []
    for key in boxed:
        if key not in _kept:
            grid = _grid(key)
            (small if grid.wood.size <= _LARGE else large).append((key, grid))
    for batch in ([small] if small else []) + [[each] for each in large]:
        made = _shaped([grid for _, grid in batch])
        _kept.update((key, each) for (key, _), each in zip(batch, made, strict=True))
    return [_kept[key] for key in keys]


def _key(part: Part) -> _Key:
    cuts = tuple((cut.low, cut.high) for cut in part.cuts)
    taper = (float(part.taper), float(part.taper_length)) if part.taper else (0.0, 0.0)
    return _Key(part.size, cuts, *taper, part.is_round)


class _Grid(NamedTuple):
    """Cells of a shape with their grid lines; those of a tapered one are broken where it begins."""

    lines: list[Floats]
    wood: Bools
    key: _Key
    bend: int


def _grid(key: _Key) -> _Grid:
    lines, wood = cells(key.size, key.cuts)
    if not key.taper:
        return _Grid(lines, wood, key, 0)
    along, at = lines[0], min(key.taper_length, key.size[0])
    bend = int(np.searchsorted(along, at))
    if along[bend] != at:
        wood = np.insert(wood, bend - 1, wood[bend - 1], axis=0)
        along = np.insert(along, bend, at)
    return _Grid([along, *lines[1:]], wood, key, bend if bend < len(wood) else 0)


def _shaped(grids: list[_Grid]) -> list[Shape]:
    """Surfaces of several grids, worked out in one go."""
    stack = stacked([grid.wood for grid in grids])
    at, quads = surface(stack)
    ends = creases(stack, {k: grid.bend for k, grid in enumerate(grids) if grid.bend})
    ends = ends[np.argsort(ends[:, 0, 0], kind="stable")]
    many = np.arange(len(grids) + 1)
    corner_from = np.searchsorted(at[:, 0], many).tolist()
    quad_from = np.searchsorted(at[quads[:, 0], 0], many).tolist()
    edge_from = np.searchsorted(ends[:, 0, 0], many).tolist()
    vertices = _placed(grids, stack.shape, at)
    edges = _placed(grids, stack.shape, ends.reshape(-1, 4)).reshape(-1, 2, 3)
    triangles = quads[:, (0, 1, 2, 0, 2, 3)].reshape(-1, 3)
    normals = _normals(vertices, triangles)
    made = []
    for k in range(len(grids)):
        corners, faces = (
            slice(*corner_from[k : k + 2]),
            slice(2 * quad_from[k], 2 * quad_from[k + 1]),
        )
        own = triangles[faces] - corner_from[k]
        lines = edges[edge_from[k] : edge_from[k + 1]]
        made.append(Shape(vertices[corners], own, normals[faces], lines))
    return made


def _placed(grids: list[_Grid], shape: tuple[int, ...], at: Ints) -> Floats:
    """Points (n, 3), mm, for shape and grid lines (n, 4), with tapered ends drawn in."""
    points = np.empty((len(at), 3))
    for axis in range(3):
        known = np.zeros((len(grids), shape[axis + 1]))
        for k, grid in enumerate(grids):
            line = grid.lines[axis]
            known[k, : len(line)] = line
        points[:, axis] = known[at[:, 0], at[:, axis + 1]]
    for k, grid in enumerate(grids):
        if grid.key.taper:
            own = at[:, 0] == k
            points[own] = _tapered(points[own], grid.key)
    return points


def _tapered(points: Floats, key: _Key) -> Floats:
    """Draw points in towards the axis, all the way from the taper's start to the near end.

    Every section keeps its proportions, so that flat faces stay flat; a cut within the taper is
    drawn a little narrower than it is made.
    """
    out = points.copy()
    share = np.clip(1.0 - points[:, 0] / key.taper_length, 0.0, None)
    for axis in (1, 2):
        half = key.size[axis] / 2
        out[:, axis] = half + (points[:, axis] - half) * (1.0 - share * key.taper / half)
    return out


def _normals(vertices: Floats, triangles: Ints) -> Floats:
    a, b, c = vertices[triangles].swapaxes(0, 1)
    (ux, uy, uz), (vx, vy, vz) = (b - a).T, (c - a).T
    normal = np.stack((uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx), axis=1)
    length = np.sqrt(np.einsum("ij,ij->i", normal, normal))
    return np.asarray(normal / length[:, None])


@lru_cache(maxsize=1)
def _unit_box() -> Shape:
    one = [np.array([0.0, 1.0])] * 3
    key = _Key((1.0, 1.0, 1.0), (), 0.0, 0.0, False)
    return _shaped([_Grid(one, np.ones((1, 1, 1), bool), key, 0)])[0]


def _box(size: Point) -> Shape:
    """Stock without cuts."""
    unit, far = _unit_box(), np.round(size, 6)
    return Shape(unit.vertices * far, unit.triangles, unit.normals, unit.edges * far)


def _bar(size: Point) -> Shape:
    """A round bar as a prism whose corners lie on the round."""
    length, diameter, _ = size
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
