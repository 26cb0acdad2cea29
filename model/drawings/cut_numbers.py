"""Numbers in rings on the lines of the cuts, so set that they never cover each other.

A cut that begins at an edge of the board carries its number just outside it; others carry it on
their line, near its beginning; where lines crowd, the number stands off and is led to its line.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import NamedTuple

from model.cutting.record import Box
from model.drawings.letters import words_width
from model.drawings.paper import Item, Point, Ring, Stroke, Text, is_free
from model.units import Mm

FIGURES: Mm = 1.8
AIR: Mm = 0.45  # between figures and ring, and between rings
STEPS = 24  # places that are tried along a line
FARTHEST = 9  # how far a number may stand off its line, in rings


class Line(NamedTuple):
    """A cut on paper: from its lower or left end to the other, and its number."""

    start: Point
    end: Point
    number: int


class Number(NamedTuple):
    """A ring, and the place on the line that it is led to where it stands off."""

    at: Point
    radius: Mm
    number: int
    foot: Point | None = None

    @property
    def box(self) -> Box:
        x, y = self.at
        r = self.radius + AIR / 2
        return Box(x - r, y - r, x + r, y + r)

    def items(self, about: str) -> Iterator[Item]:
        """The ring, and the figures in it."""
        if self.foot is not None:
            yield Stroke((self.foot, self.at), "narrow", about)
        yield Ring(self.at, self.radius, "narrow", True, about)
        yield Text(self.at, str(self.number), FIGURES, about=about)


def numbered(
    lines: Sequence[Line], board: Box, words: Sequence[Box] = (), may_stand_off: bool = True
) -> tuple[Number, ...]:
    """A ring for each line, in the same order, clear of words; without room on its line a number
    that may not stand off is left out.
    """
    taken = list(words)
    found = []
    for line in lines:
        ways = [_outside(line, board), _along(line)]
        tried = (each for way in (*ways, _off(line))[: 3 if may_stand_off else 2] for each in way)
        number = next((each for each in tried if is_free(each.box, taken)), None)
        if number is not None:
            taken.append(number.box)
            found.append(number)
    return tuple(found)


def _radius(line: Line) -> Mm:
    return max(words_width(str(line.number), FIGURES) / 2 + AIR, FIGURES / 2 + 2 * AIR)


def _outside(line: Line, board: Box) -> Iterator[Number]:
    """Beyond an end that lies on the edge of the board: next to it, and one ring farther out."""
    r = _radius(line)
    (x0, y0), (x1, y1) = line.start, line.end
    for away in (r + 0.3, 3 * r + 0.3 + AIR):
        if y0 == y1 and x0 <= board.x0:
            yield Number((x0 - away, y0), r, line.number, line.start)
        if y0 == y1 and x1 >= board.x1:
            yield Number((x1 + away, y0), r, line.number, line.end)
        if x0 == x1 and y0 <= board.y0:
            yield Number((x0, y0 - away), r, line.number, line.start)
        if x0 == x1 and y1 >= board.y1:
            yield Number((x0, y1 + away), r, line.number, line.end)


def _along(line: Line) -> Iterator[Number]:
    """From its beginning on; a line no longer than the ring carries it in its middle."""
    r = _radius(line)
    (x0, y0), (x1, y1) = line.start, line.end
    long = max(x1 - x0, y1 - y0)
    first = min(r + 0.6, long / 2)
    for step in range(STEPS + 1):
        share = (first + step / STEPS * (long - 2 * first)) / long if long else 0.5
        yield Number((x0 + share * (x1 - x0), y0 + share * (y1 - y0)), r, line.number)


def _off(line: Line) -> Iterator[Number]:
    """Farther and farther from its middle, up, down and to both sides."""
    r = _radius(line)
    x, y = (line.start[0] + line.end[0]) / 2, (line.start[1] + line.end[1]) / 2
    for away in range(2, FARTHEST + 1):
        for across, up in ((0, 1), (1, 1), (-1, 1), (1, 0), (-1, 0), (0, -1), (1, -1), (-1, -1)):
            at = (x + across * away * r, y + up * away * r)
            yield Number(at, r, line.number, (x, y))
