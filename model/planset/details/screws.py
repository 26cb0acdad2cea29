"""How a screw is drawn from its side: head, shank and point, white before what it holds."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

import numpy as np

from model.building.screw_list import FLAT, WASHER
from model.cutting.record import Box
from model.drawings.clip import holds
from model.drawings.paper import Fill, Item, Stroke
from model.drawings.views.gaze import Gaze
from model.parts.pieces import Floats
from model.planset.details.fasteners import PAST, Bar, point
from model.units import Mm, Share

POINTED = 1.5  # length of a point in diameters
HEAD = 2.0  # width of a head in diameters
HIGH = 0.6  # height of a head that is not sunk, in diameters
WASHER_WIDE, WASHER_HIGH = 3.0, 0.25  # in diameters
BLUNT = ("pull screw",)  # machine screws


class _Side(NamedTuple):
    """A screw on the paper: where it starts, the unit vectors along it and aside, its diameter."""

    start: Floats
    way: Floats
    aside: Floats
    diameter: Mm

    def at(self, along: Mm, aside: Mm) -> Floats:
        """A place so far along, and aside, in diameters."""
        moved: Floats = (
            self.start + self.way * along * self.diameter + self.aside * aside * self.diameter
        )
        return moved


def drawn(bar: Bar, gaze: Gaze, scale: Share, view: Box) -> Iterator[Item]:
    """A screw with its centre line, mm on paper with the view's (0, 0) at the paper's; nothing
    where one of its ends is not in the view.
    """
    start, end = gaze.flat(bar.start) * scale, gaze.flat(bar.end) * scale
    far = float(np.linalg.norm(end - start))
    if far < 0.5 or not (holds(view, point(start)) and holds(view, point(end))):
        return
    way = (end - start) / far
    side = _Side(start, way, np.array([-way[1], way[0]]), bar.diameter * scale)
    for loop in _loops(bar, side, far / side.diameter):
        closed = tuple(point(each) for each in loop)
        yield Fill(closed, 0.0)
        yield Stroke((*closed, closed[0]), "narrow")
    yield Stroke((point(start - way * PAST), point(end + way * PAST)), "centre")


def _loops(bar: Bar, side: _Side, long: float) -> Iterator[list[Floats]]:
    """Outlines of shank and head, and of a washer; `long` in diameters."""
    half = HEAD / 2
    if bar.head == FLAT:
        yield _shank(bar, side, long, [(0.0, half), (min(half, long / 4), 0.5)])
        return
    yield _shank(bar, side, long, [(0.0, 0.5)])
    foot = WASHER_HIGH if bar.head == WASHER else 0.0
    if foot:
        yield _block(side, 0.0, foot, WASHER_WIDE / 2)
    yield _block(side, foot, foot + HIGH, half)


def _shank(
    bar: Bar, side: _Side, long: float, head: list[tuple[float, float]]
) -> list[Floats]:  # fmt: skip
    """Along one side from the head, and back along the other."""
    tip = long - min(POINTED, long / 2)
    end = [(long, 0.5)] if bar.kind in BLUNT else [(tip, 0.5), (long, 0.0)]
    places = [*head, *end]
    there = [side.at(along, aside) for along, aside in places]
    return [*there, *(side.at(along, -aside) for along, aside in reversed(places))]


def _block(side: _Side, low: float, high: float, half: float) -> list[Floats]:
    """What stands on the face that a screw starts in, from a height to another."""
    corners = ((low, -half), (low, half), (high, half), (high, -half))
    return [side.at(-up, aside) for up, aside in corners]
