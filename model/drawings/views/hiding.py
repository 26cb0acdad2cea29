"""Which stretches of edges lie behind wood: exact, by clipping edges at convex bodies.

Seen along parallel lines, what lies behind a convex body is convex as well: the body's outline, and
behind its faces that look at the eye. So an edge goes behind it on one stretch, found by clipping
the edge at these planes (Cyrus and Beck, 1978, from memory).

An edge is a corner of wood, and often lies just on the outline of another piece. So each is looked
at a hair to its left and a hair to its right: it is hidden only where both are.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

import numpy as np

from model.drawings.views.gaze import Gaze
from model.drawings.views.stretches import Stretches, left_of, together
from model.parts.pieces import Bools, Floats, Ints
from model.units import Mm

HAIR: Mm = 0.002  # aside of an edge
BEHIND: Mm = 0.05  # nearer than this to a face an edge lies on it; slopes up to 25 : 1 stay in this
_FAR: Mm = 1e6  # behind all there is
_FLAT = 1e-9  # cosine: a face this near to the lines of sight is seen edge-on
_PAIRS = 4_000_000  # edges times bodies that are compared at a time, to stay in little memory


class Slabs(NamedTuple):
    """Linear measures of edges, and between which values of them each body hides.

    `begin`, `step` (k, e): each measure at an edge's begin, and how much it grows to its end.
    `aside` (k, e): how much it grows over a hair to the left. `low`, `high` (k, b): of each body.
    """

    begin: Floats
    step: Floats
    aside: Floats
    low: Floats
    high: Floats


def hidden(edges: Floats, gaze: Gaze, lo: Floats, hi: Floats, facets: Floats) -> Stretches:
    """The hidden stretches of edges (e, 2, 3): all that is not hidden is seen.

    `lo`, `hi` (b, 3): boxes along the axes. `facets` (t, 3, 3): triangles of closed surfaces,
    counter-clockwise from outside. An edge seen end-on is a point: ask for none.
    """
    left, right = _free(edges, gaze, lo, hi, facets)
    return left_of(len(edges), together(left, right))


def bare(
    edges: Floats, gaze: Gaze, lo: Floats, hi: Floats, facets: Floats
) -> tuple[Stretches, Stretches]:
    """Where edges (e, 2, 3) have nothing to their left, neither before them nor behind; and to
    their right.
    """
    return _free(edges - _FAR * gaze.toward, gaze, lo, hi, facets)


def _free(
    edges: Floats, gaze: Gaze, lo: Floats, hi: Floats, facets: Floats
) -> tuple[Stretches, Stretches]:
    """What nothing hides a hair to the left of edges, and a hair to their right."""
    boxes = _behind_boxes(edges, gaze, lo, hi)
    surfaces = _behind_facets(edges, gaze, facets)
    left, right = (
        left_of(len(edges), together(one, other))
        for one, other in zip(boxes, surfaces, strict=True)
    )
    return left, right


# ---------------------------------------------------------------- boxes


def _behind_boxes(edges: Floats, gaze: Gaze, lo: Floats, hi: Floats) -> tuple[Stretches, Stretches]:
    slabs = _box_slabs(edges, gaze, lo, hi)
    pairs = list(_near(slabs))
    edge = np.concatenate([one for one, _ in pairs])
    body = np.concatenate([other for _, other in pairs])
    return _clipped(slabs, edge, body, 1.0), _clipped(slabs, edge, body, -1.0)


def _box_slabs(edges: Floats, gaze: Gaze, lo: Floats, hi: Floats) -> Slabs:
    """A box hides what its outline holds, as far as it lies behind the faces that look at the eye.

    Outlines are held between lines along each of the three axes.
    """
    toward = gaze.toward
    across = np.cross(toward, np.eye(3))
    across = across[np.linalg.norm(across, axis=1) > _FLAT]
    middle, half = (lo + hi) / 2, (hi - lo) / 2
    at, reach = across @ middle.T, np.abs(across) @ half.T
    facing = np.flatnonzero(np.abs(toward) > _FLAT)
    sight = np.eye(3)[facing] / toward[facing, None]  # mm along the line of sight
    face = np.where(toward > 0, hi, lo)[:, facing].T / toward[facing, None]
    return _slabs(
        edges, gaze, np.concatenate([across, sight]),
        np.concatenate([at - reach, np.full_like(face, -np.inf)]),
        np.concatenate([at + reach, face - BEHIND]),
    )  # fmt: skip


def _slabs(edges: Floats, gaze: Gaze, measures: Floats, low: Floats, high: Floats) -> Slabs:
    begin = measures @ edges[:, 0].T
    step = measures @ edges[:, 1].T - begin
    return Slabs(begin, step, measures @ aside(edges, gaze).T, low, high)


def aside(edges: Floats, gaze: Gaze) -> Floats:
    """A hair to the left of each edge, square to the line of sight: (e, 3), mm."""
    along = gaze.flat(edges[:, 1] - edges[:, 0])
    along /= np.linalg.norm(along, axis=1, keepdims=True)
    return np.asarray(HAIR * (along[:, :1] * gaze.axes[1] - along[:, 1:] * gaze.axes[0]))


def _near(slabs: Slabs) -> Iterator[tuple[Ints, Ints]]:
    """Pairs of an edge and a body that share some of each measure."""
    hair = np.abs(slabs.aside)
    least = np.minimum(slabs.begin, slabs.begin + slabs.step) - hair
    most = np.maximum(slabs.begin, slabs.begin + slabs.step) + hair
    bodies = slabs.low.shape[1]
    rows = max(1, _PAIRS // max(bodies, 1))
    yield np.zeros(0, np.intp), np.zeros(0, np.intp)
    for first in range(0, least.shape[1], rows):
        some = slice(first, first + rows)
        meets = _meet(least[0, some, None], most[0, some, None], slabs.low[0], slabs.high[0])
        meets &= _meet(least[1, some, None], most[1, some, None], slabs.low[1], slabs.high[1])
        at = np.flatnonzero(meets)  # few: the other measures are compared for these alone
        edge, body = at // bodies + first, at % bodies
        for k in range(2, len(least)):
            low, high = slabs.low[k, body], slabs.high[k, body]
            kept = _meet(least[k, edge], most[k, edge], low, high)
            edge, body = edge[kept], body[kept]
        yield edge, body


def _meet(least: Floats, most: Floats, low: Floats, high: Floats) -> Bools:
    return np.asarray((least < high) & (most > low))


def _clipped(slabs: Slabs, edge: Ints, body: Ints, side: float) -> Stretches:
    """The stretch of each edge, a hair to one side of it, that each body hides."""
    begin, end = np.zeros(len(edge)), np.ones(len(edge))
    for k in range(len(slabs.begin)):
        at = (slabs.begin[k] + side * slabs.aside[k])[edge]
        _clip(begin, end, at, slabs.step[k][edge], slabs.low[k][body], slabs.high[k][body])
    return _kept(edge, begin, end)


def _clip(begin: Floats, end: Floats, at: Floats, step: Floats, low: Floats, high: Floats) -> None:
    """Narrow stretches, in place, to where a measure lies between two values."""
    with np.errstate(divide="ignore", invalid="ignore"):
        one, other = (low - at) / step, (high - at) / step
    np.maximum(begin, np.fmin(one, other), out=begin)
    np.minimum(end, np.fmax(one, other), out=end)


def _kept(edge: Ints, begin: Floats, end: Floats) -> Stretches:
    real = begin < end
    return Stretches(edge[real], begin[real], end[real])


# ---------------------------------------------------------------- triangles


def _behind_facets(edges: Floats, gaze: Gaze, facets: Floats) -> tuple[Stretches, Stretches]:
    """Of a closed surface only what looks at the eye hides: behind it all is hidden anyway."""
    corners = gaze.placed(facets)
    normal = np.cross(corners[:, 1] - corners[:, 0], corners[:, 2] - corners[:, 0])
    size = np.linalg.norm(normal, axis=1)
    looks = normal[:, 2] > _FLAT * np.maximum(size, _FLAT)
    corners, normal = corners[looks], normal[looks]
    ends, left = gaze.placed(edges), gaze.placed(aside(edges, gaze))
    edge, facet = _near_facets(ends, corners)
    begin, step = ends[edge, 0], ends[edge, 1] - ends[edge, 0]
    found = []
    for side in (1.0, -1.0):
        at = begin + side * left[edge]
        found.append(_clipped_at_facets(edge, at, step, corners[facet], normal[facet]))
    return found[0], found[1]


def _near_facets(ends: Floats, corners: Floats) -> tuple[Ints, Ints]:
    """Pairs whose boxes on the paper meet, where the triangle reaches nearer to the eye."""
    if not len(corners):
        return np.zeros(0, np.intp), np.zeros(0, np.intp)
    least, most = ends.min(axis=1).T, ends.max(axis=1).T
    low, high = corners.min(axis=1).T, corners.max(axis=1).T
    slabs = Slabs(
        begin=least, step=most - least, aside=np.full_like(least, HAIR),
        low=np.stack([low[0], low[1], np.full(len(corners), -np.inf)]),
        high=np.stack([high[0], high[1], high[2]]),
    )  # fmt: skip
    pairs = list(_near(slabs))
    return np.concatenate([one for one, _ in pairs]), np.concatenate([two for _, two in pairs])


def _clipped_at_facets(
    edge: Ints, at: Floats, step: Floats, corners: Floats, normal: Floats
) -> Stretches:
    begin, end = np.zeros(len(edge)), np.ones(len(edge))
    none = np.zeros(len(edge))
    for k in range(3):
        corner, side = corners[:, k, :2], corners[:, (k + 1) % 3, :2] - corners[:, k, :2]
        off = at[:, :2] - corner
        inside = side[:, 0] * off[:, 1] - side[:, 1] * off[:, 0]
        grows = side[:, 0] * step[:, 1] - side[:, 1] * step[:, 0]
        _clip(begin, end, inside, grows, none, np.full(len(edge), np.inf))
    height = np.einsum("ij,ij->i", normal, corners[:, 0] - at) / normal[:, 2]
    falls = -np.einsum("ij,ij->i", normal, step) / normal[:, 2]
    _clip(begin, end, height, falls, none + BEHIND, np.full(len(edge), np.inf))
    return _kept(edge, begin, end)
