"""Random-width lumber: how much to ask for, from racks drawn at random.

A yard sells it by area and thickness, and hands over what lies on the pile. So racks as they might
come are drawn board by board, and for each the least number of its first boards that holds the list
is sought: how often a quantity suffices can then be counted.

Whether boards hold the list is answered by the linear relaxation of the plans
(`model.cutting.boards.enough`), which is a little hopeful: see `RackOdds`.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from itertools import accumulate
from math import ceil, sqrt
from statistics import NormalDist
from typing import NamedTuple

from model.cutting.boards.enough import Enough
from model.cutting.boards.rack import rack
from model.cutting.boards.reasons import holds, reasons
from model.cutting.lengths.lots import Lot, at_least, lots, mm
from model.cutting.pile import (
    FOOT,
    Recipe,
    board_feet,
    board_lengths,
    longest_clear,
    longest_in,
    sample_rack,
)
from model.cutting.record import Effort, LeftOut, Stock, Task
from model.units import Count, Mm, Mm2, Share

__all__ = [
    "FOOT",
    "Needed",
    "RackOdds",
    "Recipe",
    "board_feet",
    "longest_clear",
    "rack_odds",
    "sample_rack",
    "wilson",
]

TIMES = (1.4, 12.0)  # how far a rack is drawn, beside what is expected (or the largest board)


class Needed(NamedTuple):
    """Boards of at least this length and width that any rack must have, for these marks."""

    length: Mm
    width: Mm
    boards: Count
    marks: tuple[str, ...]


@dataclass(frozen=True, kw_only=True)
class RackOdds:
    """How much lumber held the list in so many racks drawn at random.

    `enough` is the area (mm2) of the boards that each rack took until it held the list, least
    first; a rack that never did counts as endless. `net` is the area of the parts as they are sawn,
    `least` what no rack of the recipe can do with less than. The relaxation that judges a rack is a
    little hopeful: of the racks for which whole plans were sought, some needed one board more.
    """

    recipe: Recipe
    net: Mm2
    least: Mm2
    needed: tuple[Needed, ...] = ()
    enough: tuple[Mm2, ...] = ()
    left_out: tuple[LeftOut, ...] = ()

    @property
    def racks(self) -> Count:
        return len(self.enough)

    def area(self, share: Share) -> Mm2 | None:
        """What to ask for so that this share of the racks holds the list; None if none does."""
        if not self.enough:
            return None
        found = self.enough[max(0, ceil(share * self.racks - 1e-9) - 1)]
        return found if found < float("inf") else None

    def board_feet(self, share: Share) -> float | None:
        """The same in board feet of the class."""
        area = self.area(share)
        return None if area is None else board_feet(area, self.recipe.thickness)

    def fitting(self, area: Mm2) -> Count:
        """How many of the racks hold the list with this area or less."""
        return sum(each <= area * (1 + 1e-12) for each in self.enough)

    def interval(self, area: Mm2, confidence: Share = 0.9) -> tuple[Share, Share]:
        """Between which shares the true one lies, by what was counted."""
        return wilson(self.fitting(area), self.racks, confidence)


def wilson(fitting: int, tried: int, confidence: Share) -> tuple[Share, Share]:
    """The score interval of a share that was counted.

    Source: Wilson, Probable inference, the law of succession, and statistical inference, Journal of
    the American Statistical Association 22, 1927.
    """
    if not tried:
        return (0.0, 1.0)
    z = NormalDist().inv_cdf(0.5 + confidence / 2)
    share, more = fitting / tried, z * z / tried
    middle = (share + more / 2) / (1 + more)
    half = z * sqrt(share * (1 - share) / tried + more / (4 * tried)) / (1 + more)
    return (max(0.0, middle - half), min(1.0, middle + half))


def rack_odds(
    task: Task,
    recipe: Recipe,
    effort: Effort = Effort(),  # noqa: B008  (a frozen record)
    better: Callable[[RackOdds], None] = lambda _: None,
    stop: Callable[[], bool] = lambda: False,
) -> RackOdds:
    """How much of a lumber to ask for; told to `better` after each rack that was tried.

    The task's own stock plays no part. Same task, recipe and effort: same answer.
    """
    wanted, left_out = _that_fit(task, recipe)
    net = sum(lot.area * lot.demand for lot in wanted) / 1e12
    odds = RackOdds(
        recipe=recipe,
        net=net,
        least=net / recipe.clear_share,
        needed=_needed(wanted, recipe, task.kerf),
        left_out=left_out,
    )
    better(odds)
    for number in range(effort.racks if wanted else 0):
        if stop():
            break
        found = _enough(task, recipe, wanted, odds, seed=number + 1)
        odds = replace(odds, enough=tuple(sorted((*odds.enough, found))))
        better(odds)
    return odds


def _that_fit(task: Task, recipe: Recipe) -> tuple[tuple[Lot, ...], tuple[LeftOut, ...]]:
    """The lots that the largest clear board of the recipe holds, and a sentence for the others."""
    sizes = lots(task)
    largest = Stock(key="largest", length=longest_clear(recipe), width=recipe.widest)
    boards = rack(replace(task, stock=(largest,)), 0)
    blank = boards[0].forms[0][0]
    missing = [0 if holds(blank, lot) else lot.demand for lot in sizes]
    kept = tuple(lot for lot, count in zip(sizes, missing, strict=True) if not count)
    return kept, reasons(boards, sizes, missing)


def _needed(wanted: Sequence[Lot], recipe: Recipe, kerf: Mm) -> tuple[Needed, ...]:
    """By length of board: the parts that none shorter yields, and how many boards they take.

    Of these parts no two lie end to end in a board, so that they share its width alone.
    """
    found: dict[Mm, list[Lot]] = {}
    for lot in wanted:
        length = next(
            each for each in board_lengths(recipe) if longest_in(recipe, each) >= mm(lot.along)
        )
        alone = 2 * lot.along > at_least(longest_clear(recipe))
        if alone and (length > recipe.shortest or mm(lot.across) > recipe.usual):
            found.setdefault(length, []).append(lot)
    return tuple(
        _boards(found[length], length, recipe, kerf) for length in sorted(found, reverse=True)
    )


def _boards(group: Sequence[Lot], length: Mm, recipe: Recipe, kerf: Mm) -> Needed:
    widths = sum((mm(lot.across) + kerf) * lot.demand for lot in group)
    marks = dict.fromkeys(mark for lot in group for strip in lot.strips for mark in strip.marks)
    return Needed(
        length=length,
        width=max(recipe.narrowest, *(mm(lot.across) for lot in group)),
        boards=ceil(widths / (recipe.widest + kerf) - 1e-9),
        marks=tuple(marks),
    )


def _enough(task: Task, recipe: Recipe, wanted: tuple[Lot, ...], odds: RackOdds, seed: int) -> Mm2:
    """The area of the first boards of a rack that hold the list."""
    guess = odds.area(0.5) or 1.2 * odds.least
    for times in TIMES:
        largest = times * max(guess, recipe.longest * recipe.widest)
        stock = sample_rack(recipe, largest, seed)
        areas = list(accumulate(each.length * each.width for each in stock))
        boards = rack(replace(task, stock=stock), min(lot.across for lot in wanted))
        start = sum(area < guess for area in areas) + 1
        enough = Enough(wanted, boards, at_least(task.kerf))
        count = _least_count(enough, start, len(boards))
        if count:
            return areas[count - 1]
    return float("inf")


def _least_count(enough: Enough, start: int, most: int) -> int | None:
    """The least number of first boards that holds the list, looked for from `start` on."""
    low, step = enough.least, 1  # `low` never holds, `high` does once that is known
    high = min(most, max(start, low + 1))
    while not enough.holds(high):
        if high == most:
            return None
        low, high, step = high, min(most, high + step), 2 * step
    step = 1
    while high - low > 1:
        middle = max(low + 1, high - step)
        if enough.holds(middle):
            high, step = middle, 2 * step
        else:
            low, step = middle, 1
    return high
