"""Short lines end to end as one stroke, so that a round is a curve on paper and not two dozen."""

from __future__ import annotations

import math
from collections import defaultdict
from collections.abc import Mapping, Sequence
from itertools import product

from model.drawings.paper import Point
from model.units import Mm

_BEND = 0.8  # cosine, about 37°: a sharper turn is a corner, where strokes end
_NEXT: Mm = 0.02  # on paper: ends nearer than this are one, for no pen is so fine

_AROUND = tuple(product((0, -1, 1), repeat=2))

Line = tuple[Point, Point]


def chained(lines: Sequence[Line]) -> list[tuple[Point, ...]]:
    """Lines joined where one goes on in one other, without a corner: through (k >= 2) points each.

    In the order of the first line of each; a closed one ends where it begins.
    """
    return _Chains(lines).all()


class _Chains:
    """Lines by the places where they end; those that are used up leave `left`."""

    def __init__(self, lines: Sequence[Line]) -> None:
        number = _numbered([point for line in lines for point in line])
        self.lines = lines
        self.at = list(zip(number[::2], number[1::2], strict=True))
        self.left = dict.fromkeys(range(len(lines)))
        self.ends: dict[int, list[int]] = defaultdict(list)
        for k, (one, other) in enumerate(self.at):
            self.ends[one].append(k)
            self.ends[other].append(k)

    def all(self) -> list[tuple[Point, ...]]:
        found = []
        while self.left:
            first = next(iter(self.left))
            del self.left[first]
            ahead, behind = self._followed(first, 1), self._followed(first, 0)
            found.append((*reversed(behind[1:]), *ahead[1:]))
        return found

    def _followed(self, line: int, end: int) -> list[Point]:
        """The points of a line, and of all that goes on from one end of it."""
        points = [self.lines[line][1 - end], self.lines[line][end]]
        here = self.at[line][end]
        while True:
            near = [(k, 0 if self.at[k][1] == here else 1) for k in self.ends[here]]
            near = [(k, far) for k, far in near if k in self.left]
            goes_on = [each for each in near if self._bend(points, each) > _BEND]
            if len(goes_on) != 1:
                return points
            line, end = goes_on[0]
            del self.left[line]
            points.append(self.lines[line][end])
            here = self.at[line][end]

    def _bend(self, points: list[Point], line: tuple[int, int]) -> float:
        """Cosine of the turn from the last of some points into a line, towards its far end."""
        (x0, y0), (x1, y1) = points[-2:]
        x2, y2 = self.lines[line[0]][line[1]]
        long = math.hypot(x1 - x0, y1 - y0) * math.hypot(x2 - x1, y2 - y1)
        return ((x1 - x0) * (x2 - x1) + (y1 - y0) * (y2 - y1)) / long if long else -1.0


def _numbered(points: Sequence[Point]) -> list[int]:
    """A number for each point, alike for those that are one: found by cells of a grid."""
    cells: dict[tuple[int, int], list[tuple[Point, int]]] = {}
    known: dict[Point, int] = {}  # most ends meet exactly
    for point in points:
        if point not in known:
            i, j = math.floor(point[0] / _NEXT), math.floor(point[1] / _NEXT)
            near = _near(point, i, j, cells)
            known[point] = len(known) if near is None else near
            if near is None:
                cells.setdefault((i, j), []).append((point, known[point]))
    return [known[point] for point in points]


def _near(
    point: Point, i: int, j: int, cells: Mapping[tuple[int, int], list[tuple[Point, int]]]
) -> int | None:
    """The number of a point that is one with this one, in the cells around."""
    for cell in ((i + a, j + b) for a, b in _AROUND):
        if cell in cells:
            for at, number in cells[cell]:
                if math.dist(at, point) < _NEXT:
                    return number
    return None


def extent(points: Sequence[Point]) -> Mm:
    """The longer side of the box around points."""
    xs, ys = [x for x, _ in points], [y for _, y in points]
    return max(max(xs) - min(xs), max(ys) - min(ys))
