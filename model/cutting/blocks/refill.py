"""All pieces into given sheets, by filling some of them anew, again and again."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from random import Random

from model.cutting.blocks.fullest import Filler
from model.cutting.blocks.record import Pattern
from model.cutting.bounds.question import Question

SCALE = 10**6  # the worth of a whole sheet
LEAN = 0.3  # how much more large pieces may be worth for their area than small ones
NOISE = 0.1
MOST_EMPTIED = 3


def refilled(
    asked: Question,
    kinds: Sequence[int],
    rounds: int,
    width: int,
    stop: Callable[[], bool] = lambda: False,
) -> tuple[Pattern, ...] | None:
    """Patterns for sheets of these kinds that hold all pieces; None if none were found.

    The sheets are filled one after the other with what covers most of them; then, `rounds` times,
    one to three of them are emptied and filled anew from their own pieces and those left over, each
    size worth a little more or less than its area. What leaves less over stays. The draws are
    always the same.
    """
    search = _Refill(asked, kinds, width)
    for _ in range(rounds):
        if not any(search.left) or stop():
            break
        search.turn()
    return None if any(search.left) else tuple(each for each in search.filled if each)


class _Refill:
    def __init__(self, asked: Question, kinds: Sequence[int], width: int) -> None:
        self.areas = [size.area for size in asked.sizes]
        self.room = max(sheet.area for sheet in asked.sheets)
        self.fillers = {kind: Filler(asked, kind) for kind in sorted(set(kinds))}
        self.kinds = kinds
        self.width = width
        self.random = Random(1)
        self.left = [size.demand for size in asked.sizes]
        self.filled: list[Pattern | None] = [None] * len(kinds)
        for at in range(len(kinds)):
            self.filled[at], self.left = self._fill(at, self.left, self._values(0.0, 0.0))

    def turn(self) -> None:
        """Empty a few sheets and fill them anew; undone if more is left over."""
        number = 1 + int(self.random.random() * MOST_EMPTIED)
        places = self.random.sample(range(len(self.kinds)), min(len(self.kinds), number))
        lot = list(self.left)
        for at in places:
            lot = _plus(lot, self.filled[at])
        values = self._values(LEAN, NOISE)
        new: list[Pattern | None] = []
        for at in places:
            pattern, lot = self._fill(at, lot, values)
            new.append(pattern)
        if self._area(lot) <= self._area(self.left):
            self.left = lot
            for at, pattern in zip(places, new, strict=True):
                self.filled[at] = pattern

    def _values(self, lean: float, noise: float) -> list[int]:
        power = 1 + lean * self.random.random()
        return [
            round(SCALE * (area / self.room) ** power * (1 + noise * self.random.random()))
            for area in self.areas
        ]

    def _fill(self, at: int, lot: list[int], values: list[int]) -> tuple[Pattern | None, list[int]]:
        found = self.fillers[self.kinds[at]].best_filled(values, self.width, lot)
        if found is None:
            return None, lot
        left = [a - b for a, b in zip(lot, found.pattern.counts, strict=True)]
        return found.pattern, left

    def _area(self, lot: list[int]) -> int:
        return sum(area * number for area, number in zip(self.areas, lot, strict=True))


def _plus(lot: list[int], pattern: Pattern | None) -> list[int]:
    if pattern is None:
        return lot
    return [a + b for a, b in zip(lot, pattern.counts, strict=True)]
