"""The state of a search for sticks: columns, the best plan and the best bound so far."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass, field
from fractions import Fraction

import numpy as np
from numpy.typing import NDArray

from model.cutting.lengths.bounds import least_sticks, reachable
from model.cutting.lengths.lots import Lot
from model.cutting.lengths.master import Column, Floats, Master, Source, fine
from model.cutting.lengths.sticks import Counts, Kind, Stick
from model.cutting.lengths.sums import Sums, Values

Cutting = tuple[Counts, ...]  # strips of each lot in each segment
Score = tuple[int, int, int, int]


@dataclass(frozen=True)
class Question:
    """What is asked: lots that some stick holds, kinds of stock, kerf."""

    sizes: tuple[Lot, ...]
    kinds: tuple[Kind, ...]
    kerf: int
    demand: Counts

    @property
    def weights(self) -> tuple[int, ...]:
        """Each strip with the kerf that parts it from the next."""
        return tuple(lot.along + self.kerf for lot in self.sizes)


@dataclass
class Search:
    """`sticks` is the best plan, `bound` a cost that none beats; `told` hears of better ones."""

    question: Question
    told: Callable[[Search], None]
    stop: Callable[[], bool]
    sticks: tuple[Stick, ...] = ()
    bound: int = 0
    score: Score | None = None
    worth: Floats = field(default_factory=lambda: np.zeros(0))
    relaxed: float = 0.0  # what the linear relaxation costs, in the dearest stick

    def __post_init__(self) -> None:
        ask = self.question
        self.rooms = tuple(kind.rooms(ask.kerf) for kind in ask.kinds)
        largest = max((room for rooms in self.rooms for room in rooms), default=0)
        self.sums = Sums(ask.weights, ask.demand, largest)
        self.entries = tuple(self.sums.at(rooms) for rooms in self.rooms)
        sources = tuple(Source(k.cost, k.quantity, k.own_cost) for k in ask.kinds)
        self.master: Master[Cutting] = Master(ask.demand, sources)

    # ------------------------------------------------------------ plans

    def offer(self, sticks: Iterable[Stick]) -> None:
        """A plan that may be better; strips beyond the demand are dropped."""
        plan = _without_extra(tuple(sticks), self.question.demand)
        score = self._score(plan)
        if self.score is None or score < self.score:
            self.sticks, self.score = plan, score
            self.raise_bound(Fraction(self.bound))
            self.told(self)

    @property
    def missing(self) -> Counts:
        """Strips of each lot that the best plan leaves out."""
        return tuple(
            np.subtract(self.question.demand, _totals(self.sticks, self.question)).tolist()
        )

    @property
    def cost(self) -> int:
        return sum(self.question.kinds[each.kind].cost for each in self.sticks)

    @property
    def ease(self) -> float:
        """How far above the relaxation the bound lies, as a share: no search need come closer."""
        bound = self.bound / self.master.dearest
        return max(0.0, (bound - self.relaxed) / bound) + 1e-9 if bound else 0.0

    @property
    def is_done(self) -> bool:
        """Proven, or no longer wanted."""
        return (not any(self.missing) and self.cost <= self.bound) or self.stop()

    # ------------------------------------------------------------ bounds

    def first_bound(self) -> None:
        """What can be said before anything is solved."""
        kinds = self.question.kinds
        if len(kinds) == 1 and len(self.rooms[0]) == 1:
            few = least_sticks(self.question.weights, self.question.demand, self.rooms[0][0])
            self.raise_bound(Fraction(few * kinds[0].cost))
        for kind, rooms in zip(kinds, self.rooms, strict=True):
            rate = kind.cost / max(sum(rooms), 1) / self.master.dearest
            worth = np.array([rate * weight for weight in self.question.weights])
            whole = fine(worth)
            most = [int(rate * (1 << 30) * sum(each)) + 1 for each in self.rooms]
            self.raise_bound(self.master.least(whole, most, self.question.demand))

    def learn(self, worth: Floats) -> None:
        """The bound that follows from what lots are worth."""
        if self.sums.is_exact:
            self.raise_bound(self.master.least(fine(worth), self.most(fine(worth)), self._asked()))

    def most(self, worth: Values) -> list[int]:
        """The most that a piece of each kind can be worth."""
        values = self.sums.fill(worth, self.question.demand).values
        return [int(values[entries].sum()) for entries in self.entries]

    def _asked(self) -> Counts:
        """What the bound speaks of: all, or what could be placed once the stock is used up."""
        return _totals(self.sticks, self.question) if self.sticks else self.question.demand

    def raise_bound(self, bound: Fraction) -> None:
        """No plan costs less: nor less than the next sum that costs can make."""
        kinds = self.question.kinds
        costs, limits = [k.cost for k in kinds], [k.quantity for k in kinds]
        most = self.cost if self.sticks else sum(costs) * sum(self.question.demand)
        self.bound = max(self.bound, reachable(bound, costs, limits, most))

    # ------------------------------------------------------------ columns

    def best_cuttings(self, worth: Floats, limits: Sequence[int]) -> list[Column[Cutting]]:
        """The worthiest way to cut each kind, with at most `limits` of each lot."""
        whole = self.sums.fill(worth, limits)
        found = []
        for kind, entries in enumerate(self.entries):
            filled, cutting, left = whole, [], np.array(limits)
            for number, entry in enumerate(entries.tolist()):
                if number:  # the first segment has taken its share
                    filled = self.sums.fill(worth, left.tolist())
                counts = self.sums.counts(filled, entry)
                cutting.append(tuple(counts))
                left = left - counts
            total = tuple(map(sum, zip(*cutting, strict=True)))
            found.append(Column(kind, total, tuple(cutting)))
        return found

    def _score(self, sticks: Sequence[Stick]) -> Score:
        ask = self.question
        missing = np.subtract(ask.demand, _totals(sticks, ask))
        lost = sum(int(m) * w for m, w in zip(missing, ask.weights, strict=True))
        cost = sum(ask.kinds[each.kind].cost for each in sticks)
        own = sum(ask.kinds[each.kind].own_cost for each in sticks)
        return (lost, cost, own, -max((self._left(each) for each in sticks), default=0))

    def _left(self, stick: Stick) -> int:
        weights = self.question.weights
        rooms = self.rooms[stick.kind]
        return max(
            room - sum(w * c for w, c in zip(weights, counts, strict=True))
            for room, counts in zip(rooms, stick.counts, strict=True)
        )


def _totals(sticks: Iterable[Stick], question: Question) -> Counts:
    total = np.zeros(len(question.sizes), dtype=np.int64)
    for stick in sticks:
        total += np.sum(np.array(stick.counts, dtype=np.int64), axis=0)
    return tuple(total.tolist())


def _without_extra(sticks: tuple[Stick, ...], demand: Counts) -> tuple[Stick, ...]:
    left: NDArray[np.int64] = np.array(demand)
    kept = []
    for stick in sticks:
        counts = []
        for segment in stick.counts:
            taken = np.minimum(np.array(segment), left)
            left = left - taken
            counts.append(tuple(taken.tolist()))
        if any(map(any, counts)):
            kept.append(Stick(stick.kind, tuple(counts)))
    return tuple(sorted(kept, key=lambda each: (each.kind, [[-c for c in s] for s in each.counts])))
