"""The fewest sheets of a small task, by looking at every way to cut it from edge to edge.

For every set of pieces, all smallest rectangles that cuts from edge to edge can part into them: a
rectangle of two sets is two rectangles beside or above each other. Exact, for up to eight pieces.
"""

from __future__ import annotations

from fractions import Fraction
from functools import cache

from model.cutting.record import Piece, Stock, Task

Side = Fraction
Box = tuple[Side, Side]


def fewest_sheets(task: Task) -> int | None:
    """Of the first stock, without bad spans; None where a piece fits no sheet."""
    stock, kerf = task.stock[0], _exact(task.kerf)
    room = _room(stock, kerf)
    pieces = [piece for piece in task.pieces for _ in range(piece.quantity)]
    ways = [_ways(piece, stock, kerf) for piece in pieces]

    @cache
    def boxes(held: int) -> tuple[Box, ...]:
        """Smallest rectangles inside the sheet for the pieces whose bits are set in `held`."""
        if held & (held - 1) == 0:
            return _smallest(ways[held.bit_length() - 1], room)
        found: list[Box] = []
        first = held & -held  # it lies in one part: the other is any set without it
        part = (held - 1) & held
        while part:
            if part & first and (other := held ^ part):
                found += _joined(boxes(part), boxes(other), room)
            part = (part - 1) & held
        return _smallest(found, room)

    @cache
    def fewest(held: int) -> int | None:
        if held == 0:
            return 0
        best: int | None = None
        first, part = held & -held, held
        while part:
            if part & first and boxes(part):
                rest = fewest(held ^ part)
                if rest is not None and (best is None or rest + 1 < best):
                    best = rest + 1
            part = (part - 1) & held
        return best

    return fewest((1 << len(pieces)) - 1)


def _exact(length: float) -> Side:
    """Millimetres as they were meant: 695.325, and not the binary fraction beside it."""
    return Fraction(round(length * 10**7), 10**7)


def _room(stock: Stock, kerf: Side) -> Box:
    trim = [_exact(edge) for edge in stock.trim]
    along = _exact(stock.length) - trim[2] - trim[3] + kerf
    return along, _exact(stock.width) - trim[0] - trim[1] + kerf


def _ways(piece: Piece, stock: Stock, kerf: Side) -> list[Box]:
    length, width = _exact(piece.length) + kerf, _exact(piece.width) + kerf
    ways = {"length": [(length, width)], "width": [(width, length)]}
    return ways.get(piece.grain if stock.has_grain else "", [(length, width), (width, length)])


def _joined(ones: tuple[Box, ...], others: tuple[Box, ...], room: Box) -> list[Box]:
    beside = [(a + c, max(b, d)) for a, b in ones for c, d in others if a + c <= room[0]]
    above = [(max(a, c), b + d) for a, b in ones for c, d in others if b + d <= room[1]]
    return beside + above


def _smallest(found: list[Box], room: Box) -> tuple[Box, ...]:
    """Those inside the room that no other is inside of."""
    kept: list[Box] = []
    for box in sorted(set(found)):
        inside = box[0] <= room[0] and box[1] <= room[1]
        if inside and (not kept or box[1] < kept[-1][1]):
            kept.append(box)
    return tuple(kept)
