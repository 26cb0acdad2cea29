"""What an eye sees of a scene: visible and hidden edges, rounds, and cut faces, in mm of wood.

A view knows no paper and no pens; `model.drawings.views.on_paper` draws it at a scale.
"""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import dataclass

import numpy as np

from model.cutting.record import Box
from model.drawings.views.bodies import Bodies
from model.drawings.views.gaze import Gaze
from model.drawings.views.hiding import hidden as hidden_stretches
from model.drawings.views.outline import parted
from model.drawings.views.rounds import Rims, Rounds, rims
from model.drawings.views.scene import Scene
from model.drawings.views.section import Plane, Section, cut_open, sections
from model.drawings.views.stretches import Stretches, left_of
from model.drawings.views.strokes import HIDDEN, SECTION, VISIBLE, Lines, drawn_once
from model.parts.pieces import Bools, Floats, Ints

_POINT = 1e-6  # mm on the paper: an edge seen end-on


@dataclass(frozen=True, kw_only=True)
class View:
    """Edges as they are drawn: each once, joined to strokes, mm to the right and up.

    `visible` (n, 2, 2) and `hidden` (m, 2, 2) are ends of strokes; `visible_piece`, `hidden_piece`
    are the pieces they belong to, as rows of the scene; `outline` (n,) says of visible ones whether
    they part all there is to see from the nothing around it. Rounds seen face-on are rings:
    `ring_at` (r, 2), `ring_radius` (r,), `ring_piece` (r,), `ring_hidden` (r,). `sections` are the
    cut faces; their outlines are no visible edges besides. `names` (by row of the scene) are what
    drawings call the pieces. `box` holds all of it; of a view that `is_cropped` only what lies in
    it is left.
    """

    gaze: Gaze
    names: tuple[str, ...]
    visible: Floats
    visible_piece: Ints
    outline: Bools
    hidden: Floats
    hidden_piece: Ints
    ring_at: Floats
    ring_radius: Floats
    ring_piece: Ints
    ring_hidden: Bools
    sections: tuple[Section, ...]
    box: Box
    is_cropped: bool = False


def seen(
    scene: Scene, gaze: Gaze, cut: Plane | None = None, hidden: bool | Collection[int] = True
) -> View:
    """A scene from one side, whole or `cut` open by a plane.

    `hidden`: whether hidden edges are told too, or of which pieces (rows of the scene).
    """
    bodies, rounds = scene.bodies, scene.rounds
    faces: tuple[Section, ...] = ()
    if cut is not None:
        bodies, through = cut_open(bodies, cut, scene.forms, scene.matrices)
        rounds = _behind(rounds, cut)
        faces = tuple(sections(through, cut, gaze, scene.forms, scene.matrices, scene.is_sheet))
    edges, piece = _edges(bodies, gaze)
    holes = rims(rounds, gaze, open_only=hidden is False)
    every, owner = np.concatenate([edges, holes.edges]), np.concatenate([piece, holes.piece])
    ring = np.concatenate([np.full(len(edges), -1, np.intp), holes.ring])
    real = _long(gaze.flat(every))
    every, owner, ring = every[real], owner[real], ring[real]
    dark = hidden_stretches(every, gaze, bodies.lo, bodies.hi, bodies.facets)
    whole = _whole_rings(dark, ring, len(holes.centre))
    told = _told(hidden, len(scene))
    in_ring = (ring >= 0) & np.append(whole != PARTLY, False)[ring]
    lines = drawn_once(_lines(every, owner, gaze, dark, ~in_ring, told, faces))
    return _view(scene, gaze, bodies, lines, holes, whole, told, faces)


# ---------------------------------------------------------------- edges


def _edges(bodies: Bodies, gaze: Gaze) -> tuple[Floats, Ints]:
    """Corners of wood, and those lines of rounds behind which the surface turns away."""
    looks = bodies.bend_normals @ gaze.toward > 1e-9
    turns = looks[:, 0] != looks[:, 1]
    return (
        np.concatenate([bodies.edges, bodies.bends[turns]]),
        np.concatenate([bodies.edge_piece, bodies.bend_piece[turns]]),
    )


def _long(ends: Floats) -> Bools:
    """Lines on the paper (n, 2, 2) that are no points, as edges seen end-on are."""
    return np.asarray(np.abs(ends[:, 1] - ends[:, 0]).max(axis=1) > _POINT)


def _behind(holes: Rounds, plane: Plane) -> Rounds:
    """Holes that lie behind a plane from mouth to bottom: those cut open are outlines of faces."""
    bottom = holes.at + holes.toward * holes.depth[:, None]
    kept = np.maximum(plane.before(holes.at), plane.before(bottom)) < _POINT
    return holes.some(kept)


def _told(hidden: bool | Collection[int], count: int) -> Bools:
    """The pieces whose hidden edges are told."""
    if isinstance(hidden, bool):
        return np.full(count, hidden)
    return np.isin(np.arange(count), list(hidden))


def _lines(
    edges: Floats, piece: Ints, gaze: Gaze, dark: Stretches, loose: Bools, told: Bools,
    faces: tuple[Section, ...],
) -> Lines:  # fmt: skip
    light = left_of(len(edges), dark)
    found = [_of(edges, piece, gaze, light, loose, VISIBLE)]
    found.append(_of(edges, piece, gaze, dark, loose & told[piece], HIDDEN))
    found += [_outline(loop, face.piece) for face in faces for loop in (face.outline, *face.holes)]
    return Lines(*(np.concatenate(part) for part in zip(*found, strict=True)))


def _of(edges: Floats, piece: Ints, gaze: Gaze, some: Stretches, kept: Bools, rank: int) -> Lines:
    rows = kept[some.line]
    line, begin, end = some.line[rows], some.begin[rows], some.end[rows]
    share = np.stack([begin, end], axis=1)[..., None]
    ends = edges[line, :1] + share * (edges[line, 1:] - edges[line, :1])
    placed = gaze.placed(ends)
    return Lines(
        placed[..., :2], piece[line], np.full(len(line), rank), placed[..., 2].mean(axis=1)
    )


def _outline(loop: Floats, piece: int) -> Lines:
    ends = np.stack([loop, np.roll(loop, -1, axis=0)], axis=1)
    count = len(loop)
    return Lines(ends, np.full(count, piece), np.full(count, SECTION), np.full(count, np.inf))


# ---------------------------------------------------------------- rings

SEEN, UNSEEN, PARTLY = 0, 1, 2


def _whole_rings(dark: Stretches, ring: Ints, count: int) -> Ints:
    """Whether each ring is SEEN all round, UNSEEN, or PARTLY seen: then it is drawn as lines."""
    own = ring[dark.line] >= 0
    covered = np.bincount(ring[dark.line][own], (dark.end - dark.begin)[own], minlength=count)
    sides = np.bincount(ring[ring >= 0], minlength=count)
    share = covered / np.maximum(sides, 1)
    return np.where(share < 1e-3, SEEN, np.where(share > 1 - 1e-3, UNSEEN, PARTLY))


def _view(
    scene: Scene, gaze: Gaze, bodies: Bodies, lines: Lines, holes: Rims, whole: Ints, told: Bools,
    faces: tuple[Section, ...],
) -> View:  # fmt: skip
    at = gaze.flat(holes.centre)
    kept = _rings_once(at, holes.radius, whole, told[holes.owner])
    visible, unseen = lines.rank == VISIBLE, lines.rank == HIDDEN
    parts = parted(lines.ends[visible], gaze, bodies)
    return View(
        gaze=gaze, names=scene.names,
        visible=parts.ends, visible_piece=lines.piece[visible][parts.stroke], outline=parts.outline,
        hidden=lines.ends[unseen], hidden_piece=lines.piece[unseen],
        ring_at=at[kept], ring_radius=holes.radius[kept], ring_piece=holes.owner[kept],
        ring_hidden=whole[kept] == UNSEEN, sections=faces, box=_box(lines.ends),
    )  # fmt: skip


def _rings_once(at: Floats, radius: Floats, whole: Ints, told: Bools) -> Ints:
    """Rings to draw: of those that lie on one another the visible one."""
    shown = np.flatnonzero((whole == SEEN) | ((whole == UNSEEN) & told))
    keys = np.round(np.column_stack([at, radius])[shown], 2) + 0.0
    order = np.lexsort((whole[shown], *keys.T[::-1]))
    new = np.ones(len(order), bool)
    new[1:] = (np.diff(keys[order], axis=0) != 0).any(axis=1)
    return shown[order][new]


def _box(ends: Floats) -> Box:
    if not len(ends):
        return Box(0.0, 0.0, 0.0, 0.0)
    (x0, y0), (x1, y1) = ends.min(axis=(0, 1)).tolist(), ends.max(axis=(0, 1)).tolist()
    return Box(x0, y0, x1, y1)
