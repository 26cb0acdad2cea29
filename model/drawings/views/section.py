"""Wood cut open by a plane: what lies before it is taken away, and the cut faces are shown."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal

import numpy as np

from model.drawings.views.bodies import Bodies, of_surfaces
from model.drawings.views.gaze import Gaze
from model.drawings.views.surfaces import Surface, surface_of_solid
from model.part import Part, Point
from model.parts.pieces import Bools, Floats, Ints
from model.solids.exact import solid
from model.units import Mm

if TYPE_CHECKING:
    from manifold3d import CrossSection, Manifold

Cutaway = Literal["end grain", "long grain", "sheet", "bought"]
_THIN: Mm = 1e-4  # a face in the plane is cut this far behind it, where there is wood or none
_SQUARE = 1 - 1e-9
_END_GRAIN = 0.7  # cosine, about 45°: fibres that run this straight at the plane show their ends


@dataclass(frozen=True, kw_only=True)
class Plane:
    """A plane through a point; `normal` points to what is taken away. Axes are the scene's."""

    point: Point
    normal: Point

    def before(self, points: Floats) -> Floats:
        """How far points (..., 3) lie before it, mm."""
        normal = np.array(self.normal, float) / np.linalg.norm(self.normal)
        return np.asarray((points - np.array(self.point, float)) @ normal)


def plane_across(gaze: Gaze, through: Point) -> Plane:
    """The plane square to a gaze that takes away what lies between it and the eye."""
    x, y, z = gaze.toward.tolist()
    return Plane(point=through, normal=(x, y, z))


@dataclass(frozen=True, kw_only=True)
class Section:
    """One cut face of a piece, on the paper: `outline` (n, 2) and `holes`, mm of wood.

    `shows` is what its hatching tells; `grain` (2,) is the way of the fibres on the paper, which
    counts where it shows long grain.
    """

    piece: int
    outline: Floats
    holes: tuple[Floats, ...]
    shows: Cutaway
    grain: tuple[float, float]


def cut_open(
    whole: Bodies, plane: Plane, forms: Sequence[Part], matrices: Floats
) -> tuple[Bodies, Ints]:
    """What is left behind a plane, and the pieces (k,) that it cuts.

    Bolts and dowels that lie in the plane are left whole. Source: ISO 128-3, parts that are not
    cut lengthwise, from memory.
    """
    count = len(forms)
    nearest = np.full(count, -np.inf)
    farthest = np.full(count, np.inf)
    for points, piece in _points(whole):
        off = plane.before(points)
        np.maximum.at(nearest, piece, off)
        np.minimum.at(farthest, piece, off)
    gone = farthest > -_THIN
    through = ~gone & (nearest > _THIN) & ~_lie_in(plane, forms, matrices)
    by_hand = through & ~_can_be_clipped(whole, plane, count)
    kept = _clipped(_without(whole, gone | by_hand), plane, through)
    sawn = np.flatnonzero(by_hand)
    left = [_behind(placed(forms[k], matrices[k]), plane) for k in sawn.tolist()]
    same = np.broadcast_to(np.eye(4), (count, 4, 4))
    extra = of_surfaces([_without_rim(each, plane) for each in left], sawn, same)
    both = (np.concatenate(pair) for pair in zip(kept, extra, strict=True))
    return Bodies(*both), np.flatnonzero(through)


def sections(
    through: Ints, plane: Plane, gaze: Gaze, forms: Sequence[Part], matrices: Floats,
    is_sheet: Sequence[bool],
) -> Iterator[Section]:  # fmt: skip
    """The cut faces of pieces, in their order, as a gaze sees them."""
    frame = _frame(plane, gaze)
    origin = np.array(plane.point, float)
    to_plane = np.column_stack([frame, -(frame @ origin)])
    for k in through.tolist():
        body = placed(forms[k], matrices[k]).transform(to_plane)
        shows, grain = _shown(forms[k], matrices[k], frame, gaze, is_sheet[k])
        for face in body.slice(-_THIN).simplify(1e-6).decompose():
            loops = [_seen(loop, frame, origin, gaze) for loop in _loops(face)]
            yield Section(
                piece=k, outline=loops[0], holes=tuple(loops[1:]), shows=shows, grain=grain
            )


def placed(form: Part, matrix: Floats) -> Manifold:
    """The exact solid of a part at its place."""
    return solid(form).transform(matrix[:3])


# ---------------------------------------------------------------- what is left


def _points(whole: Bodies) -> Iterator[tuple[Floats, Ints]]:
    for corner in range(8):
        pick = np.array([corner & 1, corner & 2, corner & 4], bool)
        yield np.where(pick, whole.hi, whole.lo), whole.box_piece
    for corner in range(3):
        yield whole.facets[:, corner], whole.facet_piece


def _can_be_clipped(whole: Bodies, plane: Plane, count: int) -> Bools:
    """Boxes that the plane cuts square stay boxes; all else is cut as a solid."""
    square = np.abs(plane.normal).max() > _SQUARE * np.linalg.norm(plane.normal)
    boxed = np.zeros(count, bool)
    boxed[whole.box_piece] = square
    return boxed


def _without(whole: Bodies, gone: Bools) -> Bodies:
    edge, box = ~gone[whole.edge_piece], ~gone[whole.box_piece]
    facet, bend = ~gone[whole.facet_piece], ~gone[whole.bend_piece]
    return Bodies(
        whole.edges[edge], whole.edge_piece[edge],
        whole.lo[box], whole.hi[box], whole.box_piece[box],
        whole.facets[facet], whole.facet_piece[facet],
        whole.bends[bend], whole.bend_normals[bend], whole.bend_piece[bend],
    )  # fmt: skip


def _lie_in(plane: Plane, forms: Sequence[Part], matrices: Floats) -> Bools:
    """Round bars along the plane."""
    is_round = np.array([form.is_round for form in forms], bool)
    slope = np.abs(matrices[:, :3, 0] @ np.array(plane.normal, float))
    return np.asarray(is_round & (slope < (1 - _SQUARE) * np.linalg.norm(plane.normal)))


def _clipped(whole: Bodies, plane: Plane, through: Bools) -> Bodies:
    """Edges and boxes of pieces that the plane cuts square, as far as they lie behind it."""
    axis = int(np.abs(plane.normal).argmax())
    lo, hi, at = whole.lo.copy(), whole.hi.copy(), float(plane.point[axis])
    sawn = through[whole.box_piece]
    if plane.normal[axis] > 0:
        hi[sawn, axis] = np.minimum(hi[sawn, axis], at)
    else:
        lo[sawn, axis] = np.maximum(lo[sawn, axis], at)
    box = (lo < hi).all(axis=1)
    off = np.where(through[whole.edge_piece, None], plane.before(whole.edges), -1.0)
    edge = off.min(axis=1) < -_THIN
    return whole._replace(
        edges=_ends_behind(whole.edges[edge], off[edge]), edge_piece=whole.edge_piece[edge],
        lo=lo[box], hi=hi[box], box_piece=whole.box_piece[box],
    )  # fmt: skip


def _ends_behind(edges: Floats, off: Floats) -> Floats:
    """Edges (e, 2, 3) without what lies before the plane; `off` (e, 2) is how far each end does."""
    out = off > 0
    share = np.divide(off, off - off[:, ::-1], out=np.zeros_like(off), where=out)
    return np.asarray(edges + share[..., None] * (edges[:, ::-1] - edges))


def _behind(body: Manifold, plane: Plane) -> Surface:
    normal = -np.array(plane.normal, float) / np.linalg.norm(plane.normal)
    return surface_of_solid(body.trim_by_plane(normal, float(normal @ np.array(plane.point))))


def _without_rim(left: Surface, plane: Plane) -> Surface:
    """Edges in the plane are outlines of cut faces, and told there."""
    inside = np.abs(plane.before(left.edges)).max(axis=1) > _THIN
    return left._replace(edges=left.edges[inside])


# ---------------------------------------------------------------- cut faces


def _frame(plane: Plane, gaze: Gaze) -> Floats:
    """(3, 3): two axes in the plane and its normal, which must point to the eye."""
    normal = np.array(plane.normal, float) / np.linalg.norm(plane.normal)
    if normal @ gaze.toward < 1e-6:
        raise ValueError("a cut face is seen from its own side: its normal must point to the eye")
    right = gaze.axes[0] - (gaze.axes[0] @ normal) * normal
    right /= np.linalg.norm(right)
    return np.stack([right, np.cross(normal, right), normal])


def _loops(face: CrossSection) -> list[Floats]:
    """The outline of one cut face, then its holes."""
    loops = [np.asarray(loop, float) for loop in face.to_polygons()]
    return sorted(loops, key=_area, reverse=True)


def _area(loop: Floats) -> float:
    x, y = loop.T
    return float(x @ np.roll(y, -1) - y @ np.roll(x, -1)) / 2


def _seen(loop: Floats, frame: Floats, origin: Floats, gaze: Gaze) -> Floats:
    return gaze.flat(loop @ frame[:2] + origin)


def _shown(
    form: Part, matrix: Floats, frame: Floats, gaze: Gaze, is_sheet: bool
) -> tuple[Cutaway, tuple[float, float]]:
    fibres = matrix[:3, :3] @ np.array(
        [0.0, 1.0, 0.0] if form.grain == "width" else [1.0, 0.0, 0.0]
    )
    along = fibres - (fibres @ frame[2]) * frame[2]
    x, y = gaze.flat(along).tolist()
    if form.hardware:
        return "bought", (x, y)
    if is_sheet:
        return "sheet", (x, y)
    return ("end grain" if abs(fibres @ frame[2]) > _END_GRAIN else "long grain"), (x, y)
