"""The holes of a flat part that a drill from above or from below makes."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from typing import NamedTuple

import numpy as np

from model.drawings.paper import Point
from model.part import Face, Hole
from model.parts.pieces import Bools, Floats
from model.units import Mm

_STRAIGHT = 1 - 1e-9  # cosine between a hole and the drill
_HAIR: Mm = 1e-4


class Bore(NamedTuple):
    """A straight hole from a face, so deep below it; through the part where `depth` is None."""

    at: Point
    diameter: Mm
    face: Face
    depth: Mm | None


class Bored:
    """A part's holes and its cells of wood: grid lines on each axis, mm, and where wood is."""

    def __init__(self, holes: Sequence[Hole], lines: Sequence[Floats], wood: Bools) -> None:
        self._holes, self._lines, self._wood = holes, lines, wood

    def bore(self, hole: Hole) -> Bore | None:
        """A hole as it is drilled; None where no drill from above or below comes to it."""
        if not _is_straight(hole):
            return None
        low, high = _span(hole)
        wood = list(self._wood_at(hole))
        is_up = not any(end > high + _HAIR for _, end in wood)
        is_down = not any(start < low - _HAIR for start, _ in wood)
        at = (hole.at[0], hole.at[1])
        if is_up and is_down:
            return Bore(at, hole.diameter, Face.FACE if hole.toward[2] < 0 else Face.BACK, None)
        if is_up:
            return Bore(at, hole.diameter, Face.FACE, float(self._lines[2][-1]) - low)
        return Bore(at, hole.diameter, Face.BACK, high) if is_down else None

    def _wood_at(self, hole: Hole) -> Iterator[tuple[Mm, Mm]]:
        """Stretches of wood along a hole's axis, less the wider holes that it lies in."""
        i, j = (
            min(max(int(np.searchsorted(lines, at, "right")) - 1, 0), len(lines) - 2)
            for lines, at in zip(self._lines[:2], hole.at[:2], strict=True)
        )
        heights = self._lines[2]
        wider = [_span(other) for other in self._holes if _lies_in(hole, other)]
        for k in np.flatnonzero(self._wood[i, j]).tolist():
            yield from _less((float(heights[k]), float(heights[k + 1])), wider)


def _is_straight(hole: Hole) -> bool:
    return abs(hole.toward[2]) > _STRAIGHT


def _span(hole: Hole) -> tuple[Mm, Mm]:
    """Where it begins and ends, from the back."""
    ends = sorted((hole.at[2], hole.at[2] + hole.depth * hole.toward[2]))
    return ends[0], ends[1]


def _lies_in(hole: Hole, other: Hole) -> bool:
    """Whether a hole runs within a wider one, as below a counterbore."""
    apart = math.dist(hole.at[:2], other.at[:2])
    return (
        hole is not other
        and _is_straight(other)
        and apart + hole.diameter / 2 <= other.diameter / 2 + _HAIR
    )


def _less(wood: tuple[Mm, Mm], spans: list[tuple[Mm, Mm]]) -> Iterator[tuple[Mm, Mm]]:
    """What is left of a stretch."""
    low, high = wood
    for start, end in sorted(spans):
        if start > low:
            yield low, min(start, high)
        low = max(low, end)
    if low < high:
        yield low, high
