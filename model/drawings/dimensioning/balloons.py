"""Marks in balloons around a view, each with a leader to its piece; no two leaders cross."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from typing import NamedTuple

import numpy as np

from model.cutting.record import Box
from model.drawings.letters import words_width
from model.drawings.paper import Item, Point, Ring, Stroke, Text, grown, is_free
from model.units import Mm

HEIGHT: Mm = 2.0  # of capitals
LEAST: Mm = 3.4  # radius
AWAY: Mm = 4.0  # from the view to the balloons
BETWEEN: Mm = 1.6
DOT: Mm = 0.4
_MOST = 6  # rings of places, one around the other


class Marked(NamedTuple):
    """A place on the view and the mark of what lies there."""

    at: Point
    mark: str


def radius_of(marked: Sequence[Marked]) -> Mm:
    """One size of balloon for all marks of a view."""
    longest = max((words_width(each.mark, HEIGHT) for each in marked), default=0.0)
    return max(LEAST, math.hypot(longest / 2, HEIGHT / 2) + 0.7)


def room_for(marked: Sequence[Marked]) -> Mm:
    """How much room balloons take on each side of a view, as long as one ring of them is enough."""
    return AWAY + 2 * radius_of(marked) if marked else 0.0


def balloons(marked: Sequence[Marked], view: Box, taken: Sequence[Box] = ()) -> tuple[Item, ...]:
    """Balloons around a view, clear of what is taken.

    Of all ways to give them places the one with the shortest leaders is chosen. In that none can
    cross: exchanging the places of two that do would be shorter (triangle inequality).
    """
    if not marked:
        return ()
    radius = radius_of(marked)
    places = _places(view, radius, len(marked), taken)
    return tuple(item for each, at in _matched(marked, places) for item in _ink(each, at, radius))


def _matched(marked: Sequence[Marked], places: Sequence[Point]) -> Iterator[tuple[Marked, Point]]:
    from scipy.optimize import linear_sum_assignment

    spots = np.array([each.at for each in marked])
    apart = np.linalg.norm(spots[:, None] - np.array(places)[None], axis=2)
    for row, column in zip(*linear_sum_assignment(apart), strict=True):
        yield marked[row], places[column]


def _places(view: Box, radius: Mm, count: int, taken: Sequence[Box]) -> list[Point]:
    """Free places on a ring around the view; on a wider one where these are too few."""
    for ring in range(_MOST):
        edge = grown(view, AWAY + radius + ring * 2 * radius)
        free = [p for p in _along(edge, 2 * radius + BETWEEN) if is_free(_around(p, radius), taken)]
        if len(free) >= count:
            return free
    raise ValueError(f"{count} balloons do not find room around a view of this size")


def _around(at: Point, radius: Mm) -> Box:
    return grown(Box(*at, *at), radius)


def _along(edge: Box, step: Mm) -> Iterator[Point]:
    """Points evenly along the edge of a box, its corners left out."""
    for x in _evenly(edge.x0, edge.x1, step):
        yield from ((x, edge.y0), (x, edge.y1))
    for y in _evenly(edge.y0, edge.y1, step):
        yield from ((edge.x0, y), (edge.x1, y))


def _evenly(low: Mm, high: Mm, step: Mm) -> list[Mm]:
    gaps = max(2, int((high - low) / step))
    return [low + (high - low) * k / gaps for k in range(1, gaps)]


def _ink(each: Marked, at: Point, radius: Mm) -> Iterator[Item]:
    far = math.dist(each.at, at)
    share = (far - radius) / far
    edge = (each.at[0] + share * (at[0] - each.at[0]), each.at[1] + share * (at[1] - each.at[1]))
    yield Stroke((each.at, edge), "fine", each.mark)
    yield Ring(each.at, DOT, "narrow", about=each.mark)
    yield Ring(at, radius, "narrow", blank=True, about=each.mark)
    yield Text(at, each.mark, HEIGHT, about=each.mark, bold=True)
