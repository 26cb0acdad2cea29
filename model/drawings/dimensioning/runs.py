"""What is to be measured along one side of a view, as points on paper and sizes of wood."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import Literal, NamedTuple

from model.drawings.dimensioning.told import Told
from model.drawings.paper import Point
from model.units import Mm

Side = Literal["below", "above", "left", "right"]


class Run(NamedTuple):
    """A chain of spans that meet end to end; a single span is a chain of one.

    `points`: one more than `sizes`, in rising order along the side; lines lead there. `level` keeps
    what is whole (1) farther from the view than its parts (0), however short it is.
    """

    points: tuple[Point, ...]
    sizes: tuple[Mm, ...]
    words: tuple[str, ...]
    level: int = 0

    def along(self, side: Side) -> tuple[Mm, ...]:
        """Where its points stand along the side."""
        axis = axis_of(side)
        return tuple(point[axis] for point in self.points)


def axis_of(side: Side) -> int:
    """0 where the rows of a side run level, 1 where they stand upright."""
    return 0 if side in ("below", "above") else 1


def chain(points: Sequence[Point], sizes: Sequence[Mm], told: Told, level: int = 0) -> Run:
    """Spans in a row; what is told of them adds up."""
    return Run(tuple(points), tuple(sizes), told.row(sizes), level)


def span(start: Point, end: Point, size: Mm, told: Told, level: int = 0) -> Run:
    """One size."""
    return Run((start, end), (size,), (told.size(size),), level)


def overall(run: Run, told: Told) -> Run:
    """The sum of a chain, to stand beyond it."""
    return span(run.points[0], run.points[-1], sum(run.sizes), told, level=1)


def distinct(runs: Iterable[Run], side: Side) -> tuple[Run, ...]:
    """The runs without those that measure again what another one does."""
    found: dict[tuple[tuple[int, ...], tuple[str, ...]], Run] = {}
    for run in runs:
        key = (tuple(round(at * 100) for at in run.along(side)), run.words)
        found.setdefault(key, run)
    return tuple(found.values())


def equal_steps(places: Sequence[Mm]) -> list[tuple[int, int]]:
    """Places in rising order as (first, last) of spans to tell: equal ones that follow are one."""
    steps: list[tuple[int, int]] = []
    start = 0
    while start < len(places) - 1:
        pitch, end = places[start + 1] - places[start], start + 1
        while end < len(places) - 1 and abs(places[end + 1] - places[end] - pitch) < 1e-3:
            end += 1
        steps.append((start, end))
        start = end
    return steps


def steps_words(count: int, size: Mm, words: str, told: Told) -> str:
    """Words for equal steps, of which the sum, `size`, is told by `words`: `13 × 150 = 1950`;
    where the step cannot be told truly, `13 equal = 1999.5, each ~153.8`.
    """
    if count == 1:
        return words
    each = told.size(size / count)
    if "~" in each or "~" in words:
        return f"{count} equal = {words}, each {each}"
    return f"{count} × {each} = {words}"
