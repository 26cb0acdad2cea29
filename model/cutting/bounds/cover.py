"""From weights to cost: if each sheet holds so much at most, what do the sheets cost at least?"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from model.cutting.bounds.question import Question, Sheet

MOST_STEPS = 2000


@dataclass(frozen=True, kw_only=True)
class Weighing:
    """A proof in numbers: all pieces weigh `total`; no layout of sheet j holds more than
    `holds[j]`. Both are whole, so that nothing is left to rounding.
    """

    total: int
    holds: tuple[int, ...]


def weigh(asked: Question, weights: Sequence[int], holds: Sequence[int]) -> Weighing:
    """Weights per piece of each size; a sheet never holds more than all pieces that fit it."""
    all_of = [weight * size.demand for weight, size in zip(weights, asked.sizes, strict=True)]
    fitting = (
        sum(each for each, here in zip(all_of, fits, strict=True) if here) for fits in asked.fits
    )
    return Weighing(total=sum(all_of), holds=tuple(map(min, holds, fitting)))


def least_cost(sheets: Sequence[Sheet], weighing: Weighing) -> int | None:
    """The least cost of sheets that hold the total together; None when all of them hold less.

    A knapsack cover, solved by depth first; past `MOST_STEPS` steps the fractional cover, rounded
    up, stands in for what is not looked at.
    """
    rest = weighing.total
    bought: list[_Kind] = []
    for sheet, holds in zip(sheets, weighing.holds, strict=True):
        if holds <= 0:
            continue
        if sheet.cost > 0:
            bought.append(_Kind(sheet.cost, holds, sheet.quantity))
        elif sheet.quantity is None:
            return 0
        else:
            rest -= holds * sheet.quantity
    if rest <= 0:
        return 0
    bought.sort(key=lambda each: (Fraction(each.cost, each.holds), -each.holds))
    return _Cover(tuple(bought)).least(rest)


@dataclass(frozen=True)
class _Kind:
    cost: int
    holds: int
    quantity: int | None

    def needed(self, rest: int) -> int:
        """How many of these hold the rest, or all that there are."""
        enough = -(-rest // self.holds)
        return enough if self.quantity is None else min(enough, self.quantity)


class _Cover:
    """Kinds of sheets, the cheapest for what they hold first."""

    def __init__(self, kinds: tuple[_Kind, ...]) -> None:
        self.kinds = kinds
        self.steps = 0
        self.best: int | None = None

    def least(self, rest: int) -> int | None:
        self._look(0, rest, 0)
        return self.best

    def _look(self, at: int, rest: int, spent: int) -> None:
        """Try every number of the kind at `at`, the most first."""
        self.steps += 1
        if rest <= 0:
            self._found(spent)
            return
        floor = self._fraction(at, rest)
        if floor is None or (self.best is not None and spent + floor >= self.best):
            return
        if self.steps > MOST_STEPS:
            self._found(spent + floor)
            return
        kind = self.kinds[at]
        for number in range(kind.needed(rest), -1, -1):
            self._look(at + 1, rest - number * kind.holds, spent + number * kind.cost)

    def _found(self, cost: int) -> None:
        self.best = cost if self.best is None else min(self.best, cost)

    def _fraction(self, at: int, rest: int) -> int | None:
        """The rest covered by parts of sheets, cheapest first; costs are whole: rounded up."""
        cost = Fraction(0)
        for kind in self.kinds[at:]:
            all_hold = None if kind.quantity is None else kind.quantity * kind.holds
            if all_hold is None or all_hold >= rest:
                return -((-cost - Fraction(rest * kind.cost, kind.holds)) // 1)
            cost += kind.cost * (kind.quantity or 0)
            rest -= all_hold
        return None
