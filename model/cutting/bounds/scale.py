"""Scales: what each length (or width) weighs, so that no row of a sheet holds more than so much.

A weight for each length under which no row along a sheet holds more than A, and one for each width
under which no row across it holds more than B: then the products of both weights add up to no
more than A * B on that sheet, for any layout (Fekete, Schepers, A general framework for bounds for
higher-dimensional orthogonal packing problems, Mathematical Methods of Operations Research
60:311-329, 2004; from memory). A piece that may be turned counts the least of its ways.
"""

from __future__ import annotations

from dataclasses import dataclass

from model.cutting.bounds.cover import Weighing, weigh
from model.cutting.bounds.fill import Fill, best_fill
from model.cutting.bounds.question import Axis, Question


@dataclass(frozen=True, kw_only=True)
class Scale:
    """`weights` by length in whole steps; a row of sheet j holds `holds[j]` at most."""

    weights: dict[int, int]
    holds: tuple[int, ...]


class Rows:
    """All rows of pieces along the sheets, or across them."""

    def __init__(self, asked: Question, axis: Axis) -> None:
        ways = {way for size in asked.sizes for way in size.ways}
        self.sizes = tuple(sorted({way[axis] for way in ways}))
        self.rooms = tuple(sheet[axis] for sheet in asked.sheets)
        self.demands = tuple(_demands(asked, axis, at, self.sizes) for at in range(len(self.rooms)))

    def fills(self, values: list[int]) -> list[Fill]:
        """The most value in a row of each sheet; like sheets are filled once."""
        seen: dict[tuple[int, tuple[int, ...]], Fill] = {}
        for key in zip(self.rooms, self.demands, strict=True):
            if key not in seen:
                seen[key] = best_fill(self.sizes, key[1], values, key[0])
        return [seen[key] for key in zip(self.rooms, self.demands, strict=True)]

    def scale(self, values: list[int]) -> Scale:
        holds = tuple(fill.value for fill in self.fills(values))
        return Scale(weights=dict(zip(self.sizes, values, strict=True)), holds=holds)

    def plain(self) -> Scale:
        """Each length weighs itself: a row holds what sums of lengths can reach."""
        return self.scale(list(self.sizes))


def _demands(asked: Question, axis: Axis, at: int, lengths: tuple[int, ...]) -> tuple[int, ...]:
    """How many pieces can lie in one row of the sheet `at`, by length."""
    sheet = asked.sheets[at]
    counts = dict.fromkeys(lengths, 0)
    for size in asked.sizes:
        for length in {way[axis] for way in size.ways if sheet.takes(way)}:
            counts[length] += size.demand
    return tuple(counts.values())


def product(asked: Question, along: Scale, across: Scale) -> Weighing:
    """Every piece weighs the product of what its length and its width weigh."""
    weights = [
        min(along.weights[length] * across.weights[width] for length, width in size.ways)
        for size in asked.sizes
    ]
    holds = [a * b for a, b in zip(along.holds, across.holds, strict=True)]
    return weigh(asked, weights, holds)
