"""The pieces of the frame as bodies that bend: cut across at their stations, moved as these move.

The mesh of a straight piece has corners at its ends only. Cut at every station it can follow the
curve, and what is known at the stations is known, between two of them in a straight line, all over
the piece: just as a chart of the stations shows it.
"""

from __future__ import annotations

from typing import NamedTuple

import numpy as np

from model.parts.pieces import Floats, Ints
from model.solids.mesh import Float32s, Mesh
from model.structure.record import Carried

_HAIR = 1e-3  # mm: what lies this near to a station is at it
_ROOM = 1e6  # mm: no line of stations reaches the next one's


class At(NamedTuple):
    """Where points lie between stations: `row` of the one before, and the `share` of the way on.

    Beyond the outermost stations the share leaves 0 to 1, and what is known goes on as it did.
    """

    row: Ints
    share: Floats

    def along(self, values: Floats) -> Floats:
        """What is known at the stations (s, ...), at these points; as the last one knew beyond."""
        return self._between(values, np.clip(self.share, 0.0, 1.0))

    def straight_on(self, values: Floats) -> Floats:
        """As `along`, but going on beyond the outermost stations, as the end of a slat does."""
        return self._between(values, self.share)

    def _between(self, values: Floats, share: Floats) -> Floats:
        after = np.minimum(self.row + 1, max(len(values) - 1, 0))
        far = share.reshape(share.shape + (1,) * (values.ndim - 1))
        return np.asarray(values[self.row] * (1 - far) + values[after] * far)


class Body(NamedTuple):
    """All pieces of the frame, cut at their stations: `triangles` (n, 3, 3) and `edges`
    (m, 2, 3), mm, bed axes, undeformed; `normals` (n, 3); the `piece` of each triangle (n,) and
    `edge_piece` (m,); where every corner and end lies between the stations: `corner` (n, 3),
    `end` (m, 2).
    """

    triangles: Float32s
    normals: Float32s
    piece: Ints
    corner: At
    edges: Float32s
    edge_piece: Ints
    end: At

    def bent(self, moved: Floats, times: float) -> tuple[Float32s, Float32s]:
        """Triangles and edges where the stations have `moved` (s, 3), drawn so many `times`."""
        far = times * moved
        return (
            (self.triangles + self.corner.straight_on(far)).astype(np.float32),
            (self.edges + self.end.straight_on(far)).astype(np.float32),
        )


def body(mesh: Mesh, carried: Carried) -> Body:
    """The mesh of a bed's frame, ready to be bent. Pieces that carry nothing are left out, and so
    are those that no station is known of.
    """
    lines = _Lines.of(carried)
    faces, line_of_face = _of_frame(mesh.piece, carried)
    edges, line_of_edge = _of_frame(mesh.edge_piece, carried)
    triangles, face, corner = _cut_across(mesh.vertices[faces], line_of_face, lines)
    segments, edge, end = _cut_across(mesh.edges[edges], line_of_edge, lines)
    return Body(
        triangles, mesh.normals[faces[face]], mesh.piece[faces[face]], corner,
        segments, mesh.edge_piece[edges[edge]], end,
    )  # fmt: skip


def _of_frame(piece: Ints, carried: Carried) -> tuple[Ints, Ints]:
    """Which triangles or edges belong to the frame, and to which of its pieces."""
    if not len(carried.pieces):
        return np.zeros(0, np.intp), np.zeros(0, np.intp)
    place = np.searchsorted(carried.pieces, piece).clip(max=len(carried.pieces) - 1)
    is_known = np.diff(carried.first)[place] > 0
    mine = np.flatnonzero((carried.pieces[place] == piece) & is_known)
    return mine, place[mine].astype(np.intp)


class _Lines(NamedTuple):
    """The line of stations of each frame piece (p): the bed axis it runs along, and which way.

    `far` (s,) mm: how far each station lies along its line, rising; `lifted` (s,) the same, each
    line above those before it, so that all of them rise as one. `lift` (p,) what was added.
    """

    axis: Ints
    sign: Floats
    first: Ints
    far: Floats
    lifted: Floats
    lift: Floats

    @classmethod
    def of(cls, carried: Carried) -> _Lines:
        first, rows = carried.first, np.arange(len(carried.pieces))
        last = max(len(carried.at) - 1, 0)
        near, end = first[:-1].clip(max=last), (first[1:] - 1).clip(min=0)
        ends = carried.point[end] - carried.point[near]
        axis = np.abs(ends).argmax(axis=1)
        sign = np.where(ends[rows, axis] < 0, -1.0, 1.0)
        line = np.repeat(rows, np.diff(first))
        far = carried.point[np.arange(len(line)), axis[line]] * sign[line]
        lift = np.asarray(rows * _ROOM, float)
        return cls(axis, sign, first, far, far + lift[line], lift)

    def measured(self, shapes: Float32s, line: Ints) -> Floats:
        """Corners (n, c, 4): x, y, z, and how far they lie along their lines (n,), mm."""
        far = np.take_along_axis(shapes, self.axis[line][:, None, None], axis=2)
        return np.concatenate((shapes, far * self.sign[line][:, None, None]), axis=2, dtype=float)

    def place(self, far: Floats, line: Ints, upper: Ints) -> At:
        """Where corners (n, c) lie, in the stretch of their line that ends at station `upper`."""
        first, last = self.first[line], self.first[line + 1] - 1
        row = np.clip(upper - 1, first, np.maximum(last - 1, first))[:, None]
        width = self.far[np.minimum(row + 1, last[:, None])] - self.far[row]
        share = np.divide(far - self.far[row], width, out=np.zeros(far.shape), where=width > _HAIR)
        return At(np.broadcast_to(row, far.shape), share)


def _cut_across(shapes: Float32s, line: Ints, lines: _Lines) -> tuple[Float32s, Ints, At]:
    """Triangles (n, 3, 3) or segments (n, 2, 3), cut wherever a station of their piece lies.

    Gives the cut ones, the row that each came from, and where their corners lie. Every shape is
    laid out once for each stretch between two stations that it reaches, then trimmed to it.
    """
    if not len(shapes):
        nowhere = np.zeros(shapes.shape[:2])
        return shapes, np.zeros(0, np.intp), At(nowhere.astype(np.intp), nowhere)
    corners = lines.measured(shapes, line)
    far = corners[..., 3] + lines.lift[line, None]
    low, high = far.T.min(axis=0), far.T.max(axis=0)  # across the few: numpy is slow along them
    before = np.searchsorted(lines.lifted, low + _HAIR, "right")
    after = np.maximum(np.searchsorted(lines.lifted, high - _HAIR, "left"), before)
    count = after - before + 1
    row = np.repeat(np.arange(len(shapes), dtype=np.intp), count)
    upper = np.arange(len(row)) - np.repeat(np.cumsum(count) - count - before, count)
    lower_cut = np.where(upper > before[row], upper - 1, -1)
    corners, kept = _trimmed(corners[row], lower_cut, lines, 1.0)
    row, upper = row[kept], upper[kept]
    corners, kept = _trimmed(corners, np.where(upper < after[row], upper, -1), lines, -1.0)
    row, upper = row[kept], upper[kept]
    return corners[..., :3].astype(np.float32), row, lines.place(corners[..., 3], line[row], upper)


def _trimmed(corners: Floats, cut: Ints, lines: _Lines, side: float) -> tuple[Floats, Ints]:
    """What lies beyond the station `cut` (n,), or before it (`side` -1); -1 trims nothing.

    Gives the shapes that are left, and the row that each came from.
    """
    height = side * (corners[..., 3] - lines.far[cut][:, None])
    height[cut < 0] = 1.0
    over, under = height > _HAIR, (height.T < -_HAIR).any(axis=0)
    many = np.asarray(over.T.sum(axis=0))
    parts, rows = [corners[~under]], [np.flatnonzero(~under)]
    for count in range(1, corners.shape[1]):
        row = np.flatnonzero(under & (many == count))
        # The corner that is alone on its side comes first; the way round stays.
        alone = over[row] if count == 1 else ~over[row]
        turn = (alone.argmax(axis=1)[:, None] + np.arange(corners.shape[1])) % corners.shape[1]
        left = _beyond(corners[row[:, None], turn], height[row[:, None], turn], count)
        parts += left
        rows += [row] * len(left)
    return np.concatenate(parts), np.concatenate(rows)


def _beyond(corners: Floats, height: Floats, over: int) -> list[Floats]:
    """What is left of segments or triangles with some corners over the cut: the first one alone, or
    all but the first.
    """
    crossing = [
        _between(corners[:, 0], corners[:, k], height[:, 0], height[:, k])
        for k in range(1, corners.shape[1])
    ]
    if over == 1:
        return [np.stack((corners[:, 0], *crossing), axis=1)]
    (p, q), (_, b, c) = crossing, corners.swapaxes(0, 1)
    return [np.stack((p, b, c), axis=1), np.stack((p, c, q), axis=1)]


def _between(a: Floats, b: Floats, ha: Floats, hb: Floats) -> Floats:
    """Where the way from a to b, with heights on either side of the cut, crosses it."""
    share = np.clip(ha / (ha - hb), 0.0, 1.0)[:, None]
    return np.asarray(a + (b - a) * share)
