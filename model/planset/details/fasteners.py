"""Screws, and the axes of holes, near a joint."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

import numpy as np

from model.building.joined import Joined
from model.building.screw_list import FLAT, head_of
from model.cutting.record import Box
from model.drawings.clip import clipped
from model.drawings.paper import Item, Point, Stroke
from model.drawings.views.view import View
from model.parts.pieces import Floats
from model.units import Mm, Share

NEAR: Mm = 3.0
PAST: Mm = 2.5  # of a centre line beyond its ends, on paper


@dataclass(frozen=True, kw_only=True)
class Bar:
    """A screw (or the axis of a hole) of a piece: from its head or mouth to its point, bed axes."""

    piece: int
    kind: str
    start: Floats
    end: Floats
    diameter: Mm
    is_screw: bool
    head: str = FLAT  # `flat` is sunk, `pan` stands on what it holds, `washer` on a washer there

    @property
    def length(self) -> Mm:
        """From head to point."""
        return float(np.linalg.norm(self.end - self.start))

    @property
    def way(self) -> Floats:
        """The unit vector in which it goes in."""
        return (self.end - self.start) / max(self.length, 1e-9)

    @property
    def is_pocket(self) -> bool:
        """Whether it slants from a face to an end."""
        return self.kind == "pocket pilot"

    def is_square_to(self, axis: int) -> bool:
        """Whether it lies in planes square to an axis."""
        return bool(abs(self.end[axis] - self.start[axis]) < 1e-6)

    def crosses(self, axis: int, at: Mm) -> bool:
        """Whether it goes slanting or square through this plane."""
        low, high = sorted((float(self.start[axis]), float(self.end[axis])))
        return not self.is_square_to(axis) and low < at < high

    def lies_at(self, axis: int, at: Mm) -> bool:
        """Whether it lies in this plane."""
        return self.is_square_to(axis) and bool(abs(self.start[axis] - at) < self.diameter / 2)


def bars(
    all_of: Joined, pieces: Iterable[int], helpers: Iterable[int], box: tuple[Floats, Floats]
) -> Iterator[Bar]:
    """Screws and holes of two pieces that run near a box (its corners) or near what is bought to
    hold them; and the screws of that.
    """
    starts, ends = all_of.pieces.bounds
    boxes = [box, *((starts[each], ends[each]) for each in helpers)]
    for piece in pieces:
        for bar in _of(all_of, piece):
            if any(_crosses(bar, low, high) for low, high in boxes):
                yield bar
    for piece in helpers:
        yield from (bar for bar in _of(all_of, piece) if bar.is_screw)


def _of(all_of: Joined, piece: int) -> Iterator[Bar]:
    form, matrix = all_of.part(piece), all_of.pieces.matrices[piece]
    every = [(s.kind, s.at, s.toward, s.length, s.diameter, True) for s in form.screws]
    every += [(h.kind, h.at, h.toward, h.depth, h.diameter, False) for h in form.holes]
    for kind, at, toward, length, diameter, is_screw in every:
        start = matrix[:3, :3] @ np.array(at) + matrix[:3, 3]
        end = start + matrix[:3, :3] @ np.array(toward) * length
        head = head_of(form, kind, at, diameter)
        yield Bar(
            piece=piece, kind=kind, start=start, end=end, diameter=diameter, is_screw=is_screw,
            head=head,
        )  # fmt: skip


def _crosses(bar: Bar, low: Floats, high: Floats) -> bool:
    lo, hi = np.minimum(bar.start, bar.end), np.maximum(bar.start, bar.end)
    return bool((lo < high + NEAR).all() and (hi > low - NEAR).all())


def centre_line(view: View, start: Floats, end: Floats, scale: Share) -> Iterator[Item]:
    """The axis of something round between two points (3,), as far as the window shows it."""
    box = Box(*(side * scale for side in view.box))
    ends = [view.gaze.flat(each) * scale for each in (start, end)]
    far = float(np.linalg.norm(ends[1] - ends[0]))
    if far > 0.5:
        way = (ends[1] - ends[0]) / far * PAST
        line = Stroke((point(ends[0] - way), point(ends[1] + way)), "centre")
        yield from clipped([line], box)


def point(at: Floats) -> Point:
    x, y = at.tolist()
    return (round(x, 3), round(y, 3))
