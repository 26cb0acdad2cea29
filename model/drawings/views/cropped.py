"""A part of a view, for details drawn large: what lies within a box of the paper."""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from model.cutting.record import Box
from model.drawings.views.section import Section
from model.drawings.views.view import View
from model.parts.pieces import Bools, Floats

_LEAST = 1e-6  # mm: what is shorter, or mm2: what is smaller, is left out


def cropped(view: View, box: Box) -> View:
    """What of a view lies within a box (mm of wood), cut off at its sides.

    A ring is kept where its centre lies inside. Cut faces end at the sides of the box, and have no
    outline there.
    """
    visible, shown = _clipped(view.visible, box)
    hidden, dark = _clipped(view.hidden, box)
    inside = _inside(view.ring_at, box)
    faces = (_face(each, box) for each in view.sections)
    return replace(
        view, visible=visible, visible_piece=view.visible_piece[shown],
        outline=view.outline[shown], hidden=hidden, hidden_piece=view.hidden_piece[dark],
        ring_at=view.ring_at[inside], ring_radius=view.ring_radius[inside],
        ring_piece=view.ring_piece[inside], ring_hidden=view.ring_hidden[inside],
        sections=tuple(face for face in faces if face is not None), box=box, is_cropped=True,
    )  # fmt: skip


def _inside(points: Floats, box: Box) -> Bools:
    x, y = points.T
    return np.asarray((x >= box.x0) & (x <= box.x1) & (y >= box.y0) & (y <= box.y1))


def _clipped(ends: Floats, box: Box) -> tuple[Floats, Bools]:
    """Strokes (m, 2, 2) within the box, and which they are."""
    begin, step = ends[:, 0], ends[:, 1] - ends[:, 0]
    first, last = np.zeros(len(ends)), np.ones(len(ends))
    for axis, low, high in ((0, box.x0, box.x1), (1, box.y0, box.y1)):
        with np.errstate(divide="ignore", invalid="ignore"):
            one, other = ((side - begin[:, axis]) / step[:, axis] for side in (low, high))
        first, last = np.fmax(first, np.fmin(one, other)), np.fmin(last, np.fmax(one, other))
    kept = (last - first) * np.linalg.norm(step, axis=1) > _LEAST
    share = np.stack([first, last], axis=1)[kept, :, None]
    return begin[kept, None] + share * step[kept, None], np.asarray(kept)


def _face(face: Section, box: Box) -> Section | None:
    outline = _within(face.outline, box)
    if outline is None:
        return None
    holes = (_within(hole, box) for hole in face.holes)
    return replace(face, outline=outline, holes=tuple(h for h in holes if h is not None))


def _within(loop: Floats, box: Box) -> Floats | None:
    """A polygon cut off at the sides of a box, one after the other; None where nothing is left.

    Parts that only the outside joined stay joined by lines on the sides of the box, which enclose
    nothing. Source: Sutherland and Hodgman, 1974, from memory.
    """
    for axis, side, sign in ((0, box.x0, 1), (0, box.x1, -1), (1, box.y0, 1), (1, box.y1, -1)):
        off = sign * (loop[:, axis] - side)
        points = []
        for k, (here, there) in enumerate(zip(loop, np.roll(loop, -1, axis=0), strict=True)):
            a, b = off[k], off[(k + 1) % len(loop)]
            if a >= 0:
                points.append(here)
            if (a > 0 > b) or (a < 0 < b):
                points.append(here + (there - here) * (a / (a - b)))
                points[-1][axis] = side
        if len(points) < 3:
            return None
        loop = np.array(points)
    x, y = loop.T
    area = abs(float(x @ np.roll(y, -1) - y @ np.roll(x, -1))) / 2
    return loop if area > _LEAST else None
