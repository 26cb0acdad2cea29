"""The same stock cut in a way that suits the shop better: fewer settings, larger offcuts.

Whole plans are packed anew, and a few sheets of the best plan so far; what scores better is kept.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from random import Random
from typing import NamedTuple

from model.cutting.sheets.depot import Depot, Filled
from model.cutting.sheets.judge import Cut, Judge, Score, changes, distinct
from model.cutting.sheets.manners import at_random, tidy
from model.cutting.sheets.packing import Bin, Manner

SEED = 20_000_011
MOST_AT_ONCE = 3  # sheets packed anew in one move
MOVES_BETWEEN_TOLD = 100
Stop = Callable[[], bool]


class Tidied(NamedTuple):
    """Sheets cut up, the least costly first, then the best for the shop."""

    cuts: list[Cut]
    cost: int
    score: Score


class Tidier:
    def __init__(self, depot: Depot, judge: Judge) -> None:
        self.depot = depot
        self.judge = judge
        self.random = Random(SEED)
        self.bins = [Bin(at, blank.rooms, blank.sheet) for at, blank in enumerate(depot.blanks)]

    def start(self, sheets: Sequence[Filled]) -> Tidied:
        """The sheets as the search left them."""
        return self._tidied([self.judge.cut(each.blank, each.trees) for each in sheets])

    def better(self, best: Tidied, moves: int, stop: Stop) -> Iterator[Tidied]:
        """Plans that are each better than the one before; not every one on the way is told."""
        told = best
        for move in range(moves):
            if stop():
                break
            best = self._moved(best, self._places(best, move)) or best
            if move % MOVES_BETWEEN_TOLD == 0 and best is not told:
                told = best
                yield best
        if best is not told:
            yield best

    def _places(self, best: Tidied, move: int) -> list[int]:
        """The sheets to pack anew: all in one of three moves, else some."""
        count = len(best.cuts)
        some = count if move % 3 == 0 else min(count, 1 + int(self.random.random() * MOST_AT_ONCE))
        return self.random.sample(range(count), some)

    def _moved(self, best: Tidied, places: list[int]) -> Tidied | None:
        depot = self.depot
        demand = [0] * len(depot.demand)
        for at in places:
            held = depot.holds(best.cuts[at].trees)
            demand = [a + b for a, b in zip(demand, held, strict=True)]
        bins = [self.bins[best.cuts[at].blank] for at in places]
        packed = depot.pack(depot.lot(demand, bins), self._manner())
        if not packed.is_whole:
            return None
        cuts = [each for at, each in enumerate(best.cuts) if at not in places]
        cuts += [self.judge.cut(each.blank, each.trees) for each in depot.filled(packed, bins)]
        return self._if_better(cuts, best)

    def _manner(self) -> Manner:
        sizes = self.depot.whole.sizes
        make = tidy if self.random.random() < 0.6 else at_random
        return make(sizes, self.random)

    def _if_better(self, cuts: list[Cut], best: Tidied) -> Tidied | None:
        """Settings are counted in full only where the floor of them could be good enough."""
        cost = self._cost(cuts)
        if (cost, self.judge.score(cuts, distinct(cuts))) >= (best.cost, best.score):
            return None
        new = self._tidied(cuts)
        return new if (new.cost, new.score) < (best.cost, best.score) else None

    def _tidied(self, cuts: list[Cut]) -> Tidied:
        return Tidied(cuts, self._cost(cuts), self.judge.score(cuts, changes(cuts)))

    def _cost(self, cuts: Sequence[Cut]) -> int:
        sheets = self.depot.whole.sheets
        return sum(sheets[self.depot.blanks[each.blank].sheet].cost for each in cuts)
