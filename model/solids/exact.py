"""Parts as exact solids, with every round cut and taper, by solid booleans.

Slower than `model.solids.proof` and independent of it: for exports, for drawings of holes, and to
prove the proof. The geometry kernel is loaded when first used, for it is slow to load.
"""

from __future__ import annotations

import atexit
import math
from functools import lru_cache
from typing import TYPE_CHECKING, NamedTuple

import numpy as np

from model.part import Cut, Hole, Part, Point
from model.parts.pieces import Floats, Ints, Parts, Pieces
from model.solids.clash import Overlap
from model.solids.near import near
from model.units import Mm3

if TYPE_CHECKING:
    from manifold3d import Manifold

_SIDES = 48  # of a drawn round: its section is 0.3 % short of a circle's
_OVERSHOOT = 0.1  # mm that a drill starts above the face, so that no skin is left
_SPECK: Mm3 = 1e-3  # what rounding leaves of two faces that touch


class _Work(NamedTuple):
    """All that the solid of a part hangs on."""

    size: Point
    cuts: tuple[Cut, ...]
    holes: tuple[Hole, ...]
    taper: float
    taper_length: float
    is_round: bool


def solid(part: Part) -> Manifold:
    """A part in its own axes, mm, with all its cuts, holes and taper; kept by value."""
    taper = (float(part.taper), float(part.taper_length)) if part.taper else (0.0, 0.0)
    return _made(_Work(part.size, part.cuts, part.holes, *taper, part.is_round))


def solid_mesh(part: Part) -> tuple[Floats, Ints]:
    """The exact surface of a part: vertices (n, 3), mm, and triangles (t, 3), watertight."""
    mesh = solid(part).to_mesh64()
    vertices = np.asarray(mesh.vert_properties, float)[:, :3]
    return vertices, np.asarray(mesh.tri_verts, np.intp)


def exact_overlaps(parts: Parts, pieces: Pieces) -> tuple[Overlap, ...]:
    """Pairs of pieces that share space, by booleans of their exact solids."""
    found = []
    close = near(pieces)
    for one, other in zip(close.one.tolist(), close.other.tolist(), strict=True):
        volume = shared_volume(pieces, one, other)
        if volume > _SPECK:
            found.append(
                Overlap(
                    one=one,
                    other=other,
                    names=(pieces.labels[one], pieces.labels[other]),
                    rules=pieces.made_by(one, other),
                    volume=volume,
                )
            )
    return tuple(found)


def shared_volume(pieces: Pieces, one: int, other: int) -> Mm3:
    """The space that two pieces share, mm3."""
    return float((placed(pieces, one) ^ placed(pieces, other)).volume())


def placed(pieces: Pieces, piece: int) -> Manifold:
    """The exact solid of one piece in bed axes."""
    return solid(pieces.form(piece)).transform(pieces.matrices[piece, :3])


@lru_cache(maxsize=1024)
def _made(work: _Work) -> Manifold:
    from manifold3d import Manifold, OpType

    # A cutter without volume is no solid, and spoils whatever it is taken from.
    real = (cut for cut in work.cuts if all(a < b for a, b in zip(cut.low, cut.high, strict=True)))
    cutters = [_cutter(cut.low, cut.high) for cut in real]
    drills = [_drill(hole) for hole in work.holes]
    return Manifold.batch_boolean([_stock(work), *cutters, *drills], OpType.Subtract)


# The kernel complains about every solid that is left when the program ends.
atexit.register(_made.cache_clear)


def _stock(work: _Work) -> Manifold:
    from manifold3d import Manifold

    length, width, thickness = (round(side, 6) for side in work.size)
    if work.is_round:
        # Its corners keep inside the flats of a hole of the same size, however both are turned.
        inner = width / 2 * math.cos(math.pi / _SIDES)
        bar = Manifold.cylinder(length, inner, circular_segments=_SIDES)
        return bar.rotate((0, 90, 0)).translate((0, width / 2, width / 2))
    if not work.taper:
        return Manifold.cube((length, width, thickness))
    inset, bend = work.taper, min(work.taper_length, length)
    corners = [
        *((0.0, y, z) for y in (inset, width - inset) for z in (inset, thickness - inset)),
        *((x, y, z) for x in (bend, length) for y in (0.0, width) for z in (0.0, thickness)),
    ]
    return Manifold.hull_points(np.array(corners))


def _cutter(low: tuple[float, ...], high: tuple[float, ...]) -> Manifold:
    from manifold3d import Manifold

    a, b = np.round(low, 6), np.round(high, 6)
    return Manifold.cube(tuple(b - a)).translate(tuple(a))


def _drill(hole: Hole) -> Manifold:
    """The round cut, begun a little above its mouth; a slanted one so far that no lip stays."""
    from manifold3d import Manifold

    way = np.array(hole.toward, float)
    way /= np.linalg.norm(way)
    radius = float(hole.diameter) / 2
    square = abs(float(way[hole.face.axis]))
    lip = radius * math.sqrt(max(0.0, 1 - square**2)) / max(square, 0.1)
    back = lip + _OVERSHOOT
    drill = Manifold.cylinder(float(hole.depth) + back, radius, circular_segments=_SIDES)
    return drill.translate((0, 0, -back)).transform(_standing(way, np.array(hole.at, float)))


def _standing(way: Floats, at: Floats) -> Floats:
    """(3, 4): turns the z axis towards `way` and puts the origin at `at`."""
    side = np.zeros(3)
    side[np.abs(way).argmin()] = 1.0
    one = np.cross(side, way)
    one /= np.linalg.norm(one)
    return np.column_stack([one, np.cross(way, one), way, at])
