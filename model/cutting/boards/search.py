"""The state of a search for boards: columns, the best plan and the best bound so far."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass, field
from fractions import Fraction

import numpy as np

from model.cutting.boards.exact import Exact
from model.cutting.boards.pattern import Lying, Pattern
from model.cutting.boards.pricing import Pricing
from model.cutting.boards.rack import Board
from model.cutting.lengths.bounds import reachable
from model.cutting.lengths.lots import Lot
from model.cutting.lengths.master import FINE, Floats, Ints, Master, Source, fine

Counts = tuple[int, ...]
TRACE = 1e-8
Score = tuple[int, int, int, int, int]


@dataclass(frozen=True)
class Question:
    """What is asked: lots that some board holds, the rack, kerf."""

    sizes: tuple[Lot, ...]
    boards: tuple[Board, ...]
    kerf: int
    demand: Counts


@dataclass
class Search:
    """`patterns` is the best plan, `bound` a cost that none beats; `told` hears of better ones."""

    question: Question
    told: Callable[[Search], None]
    stop: Callable[[], bool]
    patterns: tuple[Pattern, ...] = ()
    bound: int = 0
    any_bound: int = 0  # one that holds for any way of cutting
    score: Score | None = None
    worth: Floats = field(default_factory=lambda: np.zeros(0))
    rent: Floats = field(default_factory=lambda: np.zeros(0))
    relaxed: float = 0.0  # what the linear relaxation costs, in the dearest board
    work: int = 0  # pairs that may still be looked at for a bound (see `exact.Exact.pairs`)
    held: list[Floats] = field(default_factory=list)  # shares of the list that each board can hold

    def __post_init__(self) -> None:
        ask = self.question
        sources = tuple(Source(b.cost, b.quantity, b.own_cost) for b in ask.boards)
        self.master: Master[Pattern] = Master(ask.demand, sources)
        self._pricing: Pricing | None = None
        self._exact: Exact | None = None

    @property
    def pricing(self) -> Pricing:
        """Made when it is first needed: a first plan needs none."""
        if self._pricing is None:
            ask = self.question
            self._pricing = Pricing(ask.sizes, ask.boards, ask.demand, ask.kerf)
        return self._pricing

    @property
    def exact(self) -> Exact:
        if self._exact is None:
            self._exact = Exact(self.pricing, self.question.demand)
        return self._exact

    def relax(self) -> None:
        """What lots and boards are worth by the columns found so far."""
        quantity = [board.quantity for board in self.question.boards]
        priced = self.master.priced(self.question.demand, quantity)
        self.worth, self.rent, self.relaxed = priced.worth, priced.rent, priced.value

    def charge(self, board: int) -> float:
        """What a column must be worth to be of use."""
        return self.master.sources[board].cost / self.master.dearest + float(self.rent[board])

    def price(self, board: int) -> float:
        """What a board costs, in the dearest, with a trace of its own cost: what is on hand is not
        used for nothing."""
        source = self.master.sources[board]
        largest = max(each.own for each in self.master.sources) or 1
        return source.cost / self.master.dearest + TRACE * source.own / largest

    # ------------------------------------------------------------ plans

    def offer(self, patterns: Iterable[Pattern]) -> None:
        """A plan that may be better; strips beyond the demand are dropped."""
        plan = without_extra(tuple(patterns), self.question.demand)
        score = self._score(plan)
        if self.score is None or score < self.score:
            self.patterns, self.score = plan, score
            self.raise_bound(Fraction(self.bound))
            self.told(self)

    @property
    def placed(self) -> Counts:
        """Strips of each lot in the best plan."""
        return _totals(self.patterns, len(self.question.demand))

    @property
    def missing(self) -> Counts:
        """Strips of each lot that the best plan leaves out."""
        return tuple(np.subtract(self.question.demand, self.placed).tolist())

    @property
    def cost(self) -> int:
        return sum(self.question.boards[each.board].cost for each in self.patterns)

    @property
    def is_done(self) -> bool:
        """Proven, or no longer wanted."""
        return (not any(self.missing) and self.cost <= self.bound) or self.stop()

    # ------------------------------------------------------------ bounds

    def first_bound(self) -> None:
        """By area alone: no way of cutting could do with less."""
        ask = self.question
        wanted = self._asked()
        for board in ask.boards:
            rate = board.cost / max(board.room(ask.kerf), 1) / self.master.dearest
            sizes = [(lot.along + ask.kerf) * (lot.across + ask.kerf) for lot in ask.sizes]
            worth = fine(np.array([rate * size for size in sizes]))
            most = [int(rate * FINE * each.room(ask.kerf)) + 1 for each in ask.boards]
            self.raise_bound(self.master.least(worth, most, wanted), is_any=True)

    def learn(self, worth: Ints, most: Sequence[int]) -> None:
        """The bound that follows from what lots are worth, for plans of the kinds we make."""
        if self.pricing.is_exact:
            self.held.append(shares(self, worth, most))
            self.raise_bound(self.master.least(worth, most, self._asked()))

    def raise_bound(self, bound: Fraction, is_any: bool = False) -> None:
        """No plan costs less: nor less than the next sum that costs can make."""
        boards = self.question.boards
        costs, limits = [b.cost for b in boards], [b.quantity for b in boards]
        most = self.cost if self.patterns else sum(costs) * sum(self.question.demand)
        least = reachable(bound, costs, limits, most)
        self.bound = max(self.bound, least)
        if is_any:
            self.any_bound = max(self.any_bound, least)

    def _asked(self) -> Counts:
        """What the bound speaks of: all, or what could be placed once the rack is used up."""
        return self.placed if self.patterns else self.question.demand

    # ------------------------------------------------------------ scores

    def _score(self, patterns: Sequence[Pattern]) -> Score:
        ask = self.question
        missing = np.subtract(ask.demand, _totals(patterns, len(ask.demand)))
        lost = sum(int(m) * lot.area for m, lot in zip(missing, ask.sizes, strict=True))
        cost = sum(ask.boards[each.board].cost for each in patterns)
        own = sum(ask.boards[each.board].own_cost for each in patterns)
        rips = {b.high - b.low for p in patterns for c in p.cuts if c.way == "rip" for b in c.bands}
        return (lost, cost, own, len(rips), len(patterns))


def shares(search: Search, worth: Ints, most: Sequence[int]) -> Floats:
    """Which share of all that the list is worth each board can hold, being worth this at most."""
    wanted = int(np.dot(worth, search.question.demand)) or 1
    return np.array([float(each) for each in most]) / wanted


def _totals(patterns: Iterable[Pattern], lots: int) -> Counts:
    total = [0] * lots
    for pattern in patterns:
        for lot, count in pattern.counts.items():
            total[lot] += count
    return tuple(total)


def without_extra(patterns: tuple[Pattern, ...], demand: Counts) -> tuple[Pattern, ...]:
    """The patterns without strips beyond the demand, and without boards that hold nothing."""
    left = list(demand)
    kept = []
    for pattern in patterns:
        cuts = []
        for cut in pattern.cuts:
            bands = (band._replace(lying=_taken(band.lying, left)) for band in cut.bands)
            cuts.append(cut._replace(bands=tuple(band for band in bands if band.lying)))
        if any(cut.bands for cut in cuts):
            kept.append(pattern._replace(cuts=tuple(cuts)))
    return tuple(sorted(kept))


def _taken(lying: tuple[Lying, ...], left: list[int]) -> tuple[Lying, ...]:
    kept = []
    for each in lying:
        if left[each.lot] > 0:
            left[each.lot] -= 1
            kept.append(each)
    return tuple(kept)
