"""A view on paper: strokes and hatches at a scale, in at most three widths of line.

Outlines of cut faces are wide, visible edges narrow, hatching fine; hidden edges are dashed.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

import numpy as np

from model.drawings.paper import Item, Pen, Point, Ring, Stroke
from model.drawings.views.hatches import Face, hatched, is_thin
from model.drawings.views.section import Section
from model.drawings.views.view import View
from model.parts.pieces import Bools, Floats
from model.units import Mm, Share

LEAST: Mm = 0.15  # of a stroke on paper: what is shorter is a speck of ink
LEAST_RING: Mm = 0.25  # radius
_ROUNDED = 3


def origin_for(view: View, scale: Share, corner: Point) -> Point:
    """Where (0, 0) of a view lies on paper, so that its lower left corner lies at `corner`."""
    return (corner[0] - view.box.x0 * scale, corner[1] - view.box.y0 * scale)


def on_paper(view: View, scale: Share, at: Point, edges: Pen = "narrow") -> Iterator[Item]:
    """A view at a scale (mm on paper to mm of wood) with its (0, 0) at a point of the paper.

    Items are `about` the piece they belong to: `piece/B1-2`. Views of one bed from one side, or
    from sides that share an axis, are in line where their origins are. `edges` is the pen of
    visible ones: `wide` where a small part is drawn large, and nothing is cut.
    """
    yield from hatched([_face(each, view, scale, at) for each in view.sections])
    yield from _strokes(view.hidden, _about(view, view.hidden_piece), scale, at, "hidden")
    yield from _rings(view, scale, at, view.ring_hidden, "hidden")
    yield from _strokes(view.visible, _about(view, view.visible_piece), scale, at, edges)
    yield from _rings(view, scale, at, ~view.ring_hidden, edges)
    for each in view.sections:
        for loop in (each.outline, *each.holes):
            points = _points(loop, scale, at)
            pen: Pen = "narrow" if is_thin(points) else "wide"
            yield Stroke((*points, points[0]), pen, _name(view, each.piece))


def _name(view: View, piece: int) -> str:
    return f"piece/{view.names[piece]}" if view.names[piece] else ""


def _about(view: View, pieces: Sequence[int] | np.ndarray) -> list[str]:
    return [_name(view, int(piece)) for piece in pieces]


def _points(points: Floats, scale: Share, at: Point) -> tuple[Point, ...]:
    moved = np.round(points * scale + np.array(at), _ROUNDED) + 0.0
    return tuple((x, y) for x, y in moved.tolist())


def _strokes(ends: Floats, about: list[str], scale: Share, at: Point, pen: Pen) -> Iterator[Stroke]:
    long = np.linalg.norm(ends[:, 1] - ends[:, 0], axis=1) * scale >= LEAST
    moved = np.round(ends * scale + np.array(at), _ROUNDED) + 0.0
    for ((x0, y0), (x1, y1)), name, is_long in zip(
        moved.tolist(), about, long.tolist(), strict=True
    ):
        if is_long:
            yield Stroke(((x0, y0), (x1, y1)), pen, name)


def _rings(view: View, scale: Share, at: Point, some: Bools, pen: Pen) -> Iterator[Ring]:
    centres = _points(view.ring_at[some], scale, at)
    radii = np.round(view.ring_radius[some] * scale, _ROUNDED).tolist()
    for centre, radius, name in zip(
        centres, radii, _about(view, view.ring_piece[some]), strict=True
    ):
        if radius >= LEAST_RING:
            yield Ring(centre, radius, pen, about=name)


def _face(section: Section, view: View, scale: Share, at: Point) -> Face:
    x, y = section.grain
    return Face(
        _points(section.outline, scale, at),
        tuple(_points(hole, scale, at) for hole in section.holes),
        section.shows, math.degrees(math.atan2(y, x)) % 180.0, _name(view, section.piece),
    )  # fmt: skip
