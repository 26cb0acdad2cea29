"""A view on paper: strokes and hatches at a scale, in at most three widths of line.

Outlines are wide, of cut faces or else of all there is to see; other visible edges are narrow,
hatching is fine, hidden edges are dashed.
"""

from __future__ import annotations

import math
from collections import defaultdict
from collections.abc import Iterable, Iterator
from itertools import pairwise

import numpy as np

from model.drawings.paper import PEN_WIDTHS, Item, Pen, Point, Ring, Stroke
from model.drawings.views.chains import Line, chained, extent
from model.drawings.views.crowding import Inked, uncrowded
from model.drawings.views.hatches import Face, hatched, is_thin
from model.drawings.views.section import Section
from model.drawings.views.view import View
from model.parts.pieces import Bools, Floats
from model.units import Mm, Share

LEAST: Mm = 0.15  # of a stroke on paper: what is shorter is a speck of ink
LEAST_RING: Mm = 0.25  # radius
_ROUNDED = 6  # decimals: coarser, a file at true size would tell a bed on paper to 0.01 mm


def origin_for(view: View, scale: Share, corner: Point) -> Point:
    """Where (0, 0) of a view lies on paper, so that its lower left corner lies at `corner`."""
    return (corner[0] - view.box.x0 * scale, corner[1] - view.box.y0 * scale)


def on_paper(
    view: View, scale: Share, at: Point, outline: Pen = "wide", edges: Pen = "narrow"
) -> Iterator[Item]:
    """A view at a scale (mm on paper to mm of wood) with its (0, 0) at a point of the paper.

    Items are `about` the piece they belong to: `piece/B1-2`. Views of one bed from one side, or
    from sides that share an axis, are in line where their origins are. `outline` is the pen of cut
    faces, and of the outline of it all where nothing is cut; `edges` that of other visible edges.
    """
    around = edges if view.sections else outline
    yield from hatched([_face(each, view, scale, at) for each in view.sections])
    pens: list[Pen] = [around if is_outer else edges for is_outer in view.outline.tolist()]
    pens += ["hidden"] * len(view.hidden)
    ends = np.concatenate([view.visible, view.hidden])
    owner = np.concatenate([view.visible_piece, view.hidden_piece]).tolist()
    lines = [
        Inked(begin, end, PEN_WIDTHS[pen], 1 + _ORDER.index(pen))
        for (begin, end), pen in zip(_moved(ends, scale, at), pens, strict=True)
    ]
    loops = list(_loops(view, scale, at, outline))
    cut = [
        Inked(begin, end, PEN_WIDTHS[loop.pen], 0)
        for loop in loops for begin, end in pairwise(loop.points)
    ]  # fmt: skip
    left = uncrowded([*cut, *lines])[len(cut) :]
    by_pen: dict[tuple[int, int], list[Line]] = defaultdict(list)
    for parts, piece, pen in zip(left, owner, pens, strict=True):
        by_pen[-_ORDER.index(pen), piece] += parts
    for (order, piece), parts in sorted(by_pen.items()):
        yield from _strokes(parts, _ORDER[-order], _name(view, piece))
    yield from _rings(view, scale, at, view.ring_hidden, "hidden")
    yield from _rings(view, scale, at, ~view.ring_hidden, edges)
    yield from loops


_ORDER: tuple[Pen, ...] = ("wide", "narrow", "fine", "centre", "hidden")


def _strokes(lines: list[Line], pen: Pen, about: str) -> Iterator[Stroke]:
    for points in chained(lines):
        least = 2 * LEAST_RING if math.dist(points[0], points[-1]) < LEAST else LEAST
        if extent(points) >= least:
            yield Stroke(_rounded(points), pen, about)


def _loops(view: View, scale: Share, at: Point, outline: Pen) -> Iterator[Stroke]:
    """The outlines of cut faces."""
    for each in view.sections:
        for loop in (each.outline, *each.holes):
            pen: Pen = "narrow" if is_thin(_points(loop, scale, at)) else outline
            for part in _broken(np.concatenate([loop, loop[:1]]), view):
                yield Stroke(_points(part, scale, at), pen, _name(view, each.piece))


def _broken(loop: Floats, view: View) -> Iterator[Floats]:
    """A closed loop without what runs along the sides of a cropped view."""
    if not view.is_cropped:
        yield loop
        return
    on_side = np.stack([loop[:, 0] == view.box.x0, loop[:, 0] == view.box.x1,
                        loop[:, 1] == view.box.y0, loop[:, 1] == view.box.y1])  # fmt: skip
    breaks = np.flatnonzero((on_side[:, 1:] & on_side[:, :-1]).any(axis=0)) + 1
    yield from (part for part in np.split(loop, breaks) if len(part) > 1)


def _name(view: View, piece: int) -> str:
    return f"piece/{view.names[piece]}" if view.names[piece] else ""


def _moved(ends: Floats, scale: Share, at: Point) -> list[Line]:
    moved = (ends * scale + np.array(at)).reshape(-1, 4).tolist()
    return [((x0, y0), (x1, y1)) for x0, y0, x1, y1 in moved]


def _points(points: Floats, scale: Share, at: Point) -> tuple[Point, ...]:
    return _rounded((x, y) for x, y in (points * scale + np.array(at)).tolist())


def _rounded(points: Iterable[Point]) -> tuple[Point, ...]:
    return tuple((round(x, _ROUNDED) + 0.0, round(y, _ROUNDED) + 0.0) for x, y in points)


def _rings(view: View, scale: Share, at: Point, some: Bools, pen: Pen) -> Iterator[Ring]:
    centres = _points(view.ring_at[some], scale, at)
    radii = (view.ring_radius[some] * scale).tolist()
    for centre, radius, piece in zip(centres, radii, view.ring_piece[some].tolist(), strict=True):
        if radius >= LEAST_RING:
            yield Ring(centre, round(radius, _ROUNDED), pen, about=_name(view, piece))


def _face(section: Section, view: View, scale: Share, at: Point) -> Face:
    x, y = section.grain
    return Face(
        _points(section.outline, scale, at),
        tuple(_points(hole, scale, at) for hole in section.holes),
        section.shows, math.degrees(math.atan2(y, x)) % 180.0, _name(view, section.piece),
    )  # fmt: skip
