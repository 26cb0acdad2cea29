"""Round holes of pieces as lines: their mouths, walls and bottoms, as the eye sees them."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

import numpy as np

from model.drawings.views.gaze import Gaze
from model.part import Part
from model.parts.pieces import Bools, Floats, Ints
from model.units import Mm

_SIDES = 24  # of a drawn round
_ALONG = 1e-9  # cosine


class Rounds(NamedTuple):
    """Holes in the axes of a scene: `at` (h, 3), centres of their mouths; `toward` (h, 3), the way
    in; `face` (h, 3), the way out of the face; `radius`, `depth` (h,); `piece`, a row of the scene.
    """

    at: Floats
    toward: Floats
    face: Floats
    radius: Floats
    depth: Floats
    piece: Ints

    def some(self, rows: Bools) -> Rounds:
        """Those of some rows."""
        return Rounds(
            self.at[rows], self.toward[rows], self.face[rows],
            self.radius[rows], self.depth[rows], self.piece[rows],
        )  # fmt: skip


class Rims(NamedTuple):
    """Lines of holes: `edges` (e, 2, 3) of `piece` (e,). Those of a round seen face-on share a
    `ring` (e,), else it is -1; `centre` (r, 3), `radius` (r,) and `owner` (r,) are the rings'.
    """

    edges: Floats
    piece: Ints
    ring: Ints
    centre: Floats
    radius: Floats
    owner: Ints


def rounds(forms: Sequence[Part], matrices: Floats, least: Mm) -> Rounds:
    """Holes at least this wide of parts as they are cut, at their places (n, 4, 4)."""
    found = [
        (k, hole) for k, form in enumerate(forms) for hole in form.holes if hole.diameter >= least
    ]
    piece = np.array([k for k, _ in found], np.intp)
    at = np.array([hole.at for _, hole in found]).reshape(-1, 3)
    toward = np.array([hole.toward for _, hole in found]).reshape(-1, 3)
    face = np.zeros((len(found), 3))
    face[np.arange(len(found)), [hole.face.axis for _, hole in found]] = [
        1.0 if hole.face.is_high else -1.0 for _, hole in found
    ]
    turn = matrices[piece, :3, :3]
    toward = toward / np.maximum(np.linalg.norm(toward, axis=1, keepdims=True), _ALONG)
    return Rounds(
        np.einsum("nij,nj->ni", turn, at) + matrices[piece, :3, 3],
        np.einsum("nij,nj->ni", turn, toward), np.einsum("nij,nj->ni", turn, face),
        np.array([float(hole.diameter) / 2 for _, hole in found]),
        np.array([float(hole.depth) for _, hole in found]), piece,
    )  # fmt: skip


def rims(holes: Rounds, gaze: Gaze, open_only: bool) -> Rims:
    """What there is to see of holes; of `open_only` ones the mouths that look at the eye alone."""
    if open_only:
        holes = holes.some(holes.face @ gaze.toward > _ALONG)
    slope = np.abs(holes.toward @ gaze.toward)
    face_on = holes.some(slope > 1 - _ALONG)
    is_side_on = (slope < _ALONG) & (np.abs(holes.face @ gaze.toward) < _ALONG)
    side_on = holes.some(is_side_on)
    others = holes.some((slope <= 1 - _ALONG) & ~is_side_on)
    rings, centre = _rings(face_on, gaze)
    parts = [(rings, face_on), (_mouths(others), others)]
    if not open_only:
        parts += [(_bottoms(others), others), (_walls(others, gaze), others)]
        parts += [(_outlines(side_on, gaze), side_on)]
    edges = [lines.reshape(-1, 2, 3) for lines, _ in parts]
    ring = np.full(sum(map(len, edges)), -1, np.intp)
    ring[: len(edges[0])] = np.repeat(np.arange(len(centre)), _SIDES)
    owner = np.concatenate([np.repeat(own.piece, lines.shape[1]) for lines, own in parts])
    return Rims(np.concatenate(edges), owner, ring, centre, face_on.radius, face_on.piece)


def _rings(holes: Rounds, gaze: Gaze) -> tuple[Floats, Floats]:
    """Rounds at that end of each hole which is nearer to the eye: (h, sides, 2, 3), centres."""
    leaves = holes.toward @ gaze.toward > 0
    centre = holes.at + holes.toward * np.where(leaves, holes.depth, 0.0)[:, None]
    circle = _circle(centre, gaze.axes[0][None], gaze.axes[1][None], holes.radius)
    return circle, centre


def _mouths(holes: Rounds) -> Floats:
    """Where walls meet the face: an ellipse for slanted holes."""
    one, other = _square_to(holes.toward)
    return _onto_face(holes, _circle(holes.at, one, other, holes.radius))


def _bottoms(holes: Rounds) -> Floats:
    one, other = _square_to(holes.toward)
    return _circle(holes.at + holes.toward * holes.depth[:, None], one, other, holes.radius)


def _walls(holes: Rounds, gaze: Gaze) -> Floats:
    """The two lines along a hole between which the eye sees its wall: (h, 2, 2, 3)."""
    side = np.cross(holes.toward, gaze.toward)
    side *= (holes.radius / np.maximum(np.linalg.norm(side, axis=1), _ALONG))[:, None]
    begin = np.stack([holes.at + side, holes.at - side], axis=1)[:, :, None]
    mouth = _onto_face(holes, begin)
    bottom = begin + (holes.toward * holes.depth[:, None])[:, None, None]
    return np.concatenate([mouth, bottom], axis=2)


def _outlines(holes: Rounds, gaze: Gaze) -> Floats:
    """Of holes seen from their side: walls, and mouth and bottom as one line each."""
    walls = _walls(holes, gaze)
    return np.concatenate([walls, walls.swapaxes(1, 2)], axis=1)


def _onto_face(holes: Rounds, points: Floats) -> Floats:
    """Points (h, k, m, 3) of walls, moved along each hole into the plane of its face."""
    off = np.einsum("hkmi,hi->hkm", points - holes.at[:, None, None], holes.face)
    slope = np.einsum("hi,hi->h", holes.toward, holes.face)
    slope = np.where(np.abs(slope) < _ALONG, 1.0, slope)
    return np.asarray(
        points - (off / slope[:, None, None])[..., None] * holes.toward[:, None, None]
    )


def _circle(centre: Floats, one: Floats, other: Floats, radius: Floats) -> Floats:
    """Lines (h, sides, 2, 3) of rounds that two unit vectors (h, 3) span."""
    angle = np.arange(_SIDES + 1) * (2 * np.pi / _SIDES)
    right, up = np.cos(angle)[None, :, None], np.sin(angle)[None, :, None]
    spoke = right * one[:, None] + up * other[:, None]
    points = centre[:, None] + radius[:, None, None] * spoke
    return np.stack([points[:, :-1], points[:, 1:]], axis=2)


def _square_to(way: Floats) -> tuple[Floats, Floats]:
    """Two unit vectors (h, 3) square to each way and to each other."""
    away = np.eye(3)[np.abs(way).argmin(axis=1)] if len(way) else way
    one = np.cross(way, away)
    one /= np.maximum(np.linalg.norm(one, axis=1, keepdims=True), _ALONG)
    return one, np.cross(way, one)
