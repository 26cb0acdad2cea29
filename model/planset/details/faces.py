"""The straight edges of faces that a picture cuts, and a place within each face."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import NamedTuple

import numpy as np

from model.cutting.record import Box
from model.drawings.clip import holds
from model.drawings.paper import Point
from model.drawings.views.section import Section
from model.drawings.views.view import View
from model.parts.pieces import Floats
from model.planset.details.shots import Work
from model.units import Mm

LEAST: Mm = 2.0  # of a straight face that is measured
SAME: Mm = 0.02


class Edge(NamedTuple):
    """A straight edge of a cut face along one axis of the paper: it stands `at` the other one's
    place, between two ends; wood lies towards `wood` (1 or -1).
    """

    axis: int
    at: Mm
    low: Mm
    high: Mm
    wood: int

    @property
    def ends(self) -> tuple[Point, Point]:
        """Its two ends on the paper."""
        if self.axis == 0:
            return (self.at, self.low), (self.at, self.high)
        return (self.low, self.at), (self.high, self.at)


def edges(view: View, row: int, work: Work | None) -> Iterator[Edge]:
    """The straight edges of a piece's cut faces; with `work` those that count at this joint."""
    for section in view.sections:
        if section.piece == row:
            for loop in (section.outline, *section.holes):
                for start, end in zip(loop, np.roll(loop, -1, axis=0), strict=True):
                    for edge in _edge(start.tolist(), end.tolist(), view.box):
                        if work is None or _counts(edge, work):
                            yield edge


def _counts(edge: Edge, work: Work) -> bool:
    """Whether it is a face of the stock, or one of a cut of this joint; no wall of a round hole."""
    if any(all(holds(hole, end) for end in edge.ends) for hole in work.holes):
        return False
    stock = work.stock
    if min(abs(edge.at - stock[edge.axis]), abs(edge.at - stock[edge.axis + 2])) < SAME:
        return True
    return any(all(holds(cut, end) for end in edge.ends) for cut in work.cuts)


def _edge(start: list[float], end: list[float], box: Box) -> Iterator[Edge]:
    for axis in (0, 1):
        at = start[axis]
        if abs(at - end[axis]) > 1e-6 or abs(start[1 - axis] - end[1 - axis]) < LEAST:
            continue
        if min(abs(at - box[axis]), abs(at - box[axis + 2])) < 1e-6:
            continue  # the side of the window
        low, high = sorted((start[1 - axis], end[1 - axis]))
        rises = end[1 - axis] > start[1 - axis]
        # Outlines run with the wood to their left.
        yield Edge(axis, at, low, high, (-1 if rises else 1) * (1 if axis == 0 else -1))


def inside(section: Section) -> Point:
    """A place well within a cut face, for a leader."""
    loop = section.outline
    (x0, y0), (x1, y1) = loop.min(axis=0), loop.max(axis=0)
    best, where = -1.0, (float(x0 + x1) / 2, float(y0 + y1) / 2)
    for share in (0.5, 0.35, 0.65, 0.2, 0.8):
        y = float(y0 + share * (y1 - y0))
        crossings = sorted(_crossings((loop, *section.holes), y))
        for a, b in zip(crossings[::2], crossings[1::2], strict=False):
            if b - a > best + 1.0:
                best, where = b - a, ((a + b) / 2, y)
    return where


def _crossings(loops: Iterable[Floats], y: Mm) -> Iterator[Mm]:
    for loop in loops:
        corners = loop.tolist()
        for (ax, ay), (bx, by) in zip(corners, [*corners[1:], *corners[:1]], strict=True):
            if (ay <= y) != (by <= y):
                yield ax + (y - ay) / (by - ay) * (bx - ax)
