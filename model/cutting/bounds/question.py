"""What a bound is asked about: sizes wanted and sheets to be had, in whole numbers only.

Lengths are whole steps with the kerf folded in (piece + kerf, sheet - trims + kerf), so that pieces
that touch in these numbers lie a kerf apart on the sheet. Costs are whole numbers as well: 1 for
each sheet where sheets are counted, or parts of a price.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property
from typing import Literal, NamedTuple

from model.cutting.whole import Whole

Way = tuple[int, int]  # along and across the sheet

ALONG: Literal[0] = 0
ACROSS: Literal[1] = 1
Axis = Literal[0, 1]


class Size(NamedTuple):
    """`demand` pieces that may lie in any of `ways`."""

    ways: tuple[Way, ...]
    demand: int

    @property
    def area(self) -> int:
        along, across = self.ways[0]
        return along * across


class Sheet(NamedTuple):
    """`quantity` sheets to be had at `cost` each; None is as many as needed."""

    length: int
    width: int
    quantity: int | None
    cost: int

    @property
    def area(self) -> int:
        return self.length * self.width

    def takes(self, way: Way) -> bool:
        return way[0] <= self.length and way[1] <= self.width


@dataclass(frozen=True, kw_only=True)
class Question:
    """Each size has at least one way, and each way fits at least one sheet."""

    sizes: tuple[Size, ...]
    sheets: tuple[Sheet, ...]

    @cached_property
    def fits(self) -> tuple[tuple[bool, ...], ...]:
        """Whether a size fits a sheet, by sheet and size."""
        return tuple(
            tuple(any(map(sheet.takes, size.ways)) for size in self.sizes) for sheet in self.sheets
        )


def question(whole: Whole) -> Question:
    """The question of a task: only ways that fit a sheet, only sizes that have one.

    Bad spans are not looked at, and what may be turned on one sheet may be turned on all: both
    make the question easier, so that a bound on it holds for the task.
    """
    sheets = tuple(
        Sheet(each.length, each.width, each.quantity, each.cost)
        for each in whole.sheets
        if each.quantity is None or each.quantity > 0
    )
    sizes = (
        Size(
            tuple(dict.fromkeys(way for at in whole.sheets for way in whole.ways(each, at))),
            each.demand,
        )
        for each in whole.sizes
    )
    return Question(sizes=tuple(each for each in sizes if each.ways and each.demand), sheets=sheets)
