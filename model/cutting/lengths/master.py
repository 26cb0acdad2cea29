"""Which patterns are used how often: the master problem of column generation.

A column is a way of cutting one piece of stock: strips of each lot, and its cost. Every lot must be
covered (more than its demand does no harm: what is too many is not cut), no stock used more often
than there is.
Source: Gilmore, Gomory, A linear programming approach to the cutting-stock problem, Operations
Research 9, 1961; the bound with limited stock is the Lagrangian one (from memory).
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from fractions import Fraction
from typing import Generic, NamedTuple, TypeVar

import numpy as np
from numpy.typing import NDArray
from scipy.optimize import Bounds, LinearConstraint, linprog, milp
from scipy.sparse import csr_array

Floats = NDArray[np.float64]
Ints = NDArray[np.int64]
What = TypeVar("What")

DEAR = 50.0  # what a strip that finds no stock costs, in the dearest piece of stock
FAR = 1e6  # no strip is worth more: sums of it still are whole numbers of 64 bits
OWN = 1e-5  # what the second cost counts beside the first
FINE = 1 << 30  # prices of lots are rounded to this part of the dearest piece of stock


class Source(NamedTuple):
    """A kind of stock: what one costs, and how many there are (None: as many as needed).

    `own` decides, by very little, between plans of the same cost; no bound counts it.
    """

    cost: int
    quantity: int | None
    own: int = 0


@dataclass(frozen=True)
class Column(Generic[What]):
    """One way of cutting one piece of stock; `what` is for whoever made it."""

    source: int
    counts: tuple[int, ...]
    what: What


class Priced(NamedTuple):
    """The answer of the linear relaxation: what a strip of each lot is worth (at least 0), how
    often each column is used, and what of each lot is not covered. `rent` is what a piece of each
    source is worth beyond its cost, because there are no more of it. Costs count in the dearest
    piece of stock.
    """

    worth: Floats
    used: Floats
    missing: Floats
    value: float
    rent: Floats


class Whole(NamedTuple):
    """How often each column is used, and what no plan of these columns beats (in the dearest piece
    of stock; as a solver says it, in floating point).
    """

    used: tuple[int, ...]
    least: float


@dataclass
class Master(Generic[What]):
    """The columns found so far. `columns` only grows, and holds nothing twice."""

    demand: tuple[int, ...]
    sources: tuple[Source, ...]
    columns: list[Column[What]] = field(default_factory=list)
    _known: set[tuple[int, tuple[int, ...]]] = field(default_factory=set)

    def __post_init__(self) -> None:
        self.dearest = max((source.cost for source in self.sources), default=0) or 1

    def add(self, column: Column[What]) -> bool:
        """Whether the column is new."""
        counts = tuple(map(min, column.counts, self.demand))
        if not any(counts) or (column.source, counts) in self._known:
            return False
        self._known.add((column.source, counts))
        self.columns.append(Column(column.source, counts, column.what))
        return True

    def priced(self, demand: Sequence[int], quantity: Sequence[int | None]) -> Priced:
        """The linear relaxation for what is still wanted and still there."""
        rows, amounts, limited = self._rows(demand, quantity)
        count = len(self.columns)
        costs = np.concatenate((self._costs(), np.full(len(demand), DEAR)))
        answer = linprog(costs, A_ub=rows, b_ub=amounts, method="highs")
        if answer.x is None:
            raise ArithmeticError(
                f"The linear relaxation of a cutting plan failed: {answer.message}"
            )
        # A row reads -counts <= -demand: more demand makes the plan dearer, so its marginal is
        # negative and the worth is its opposite. A row of limited stock reads uses <= quantity:
        # more of it makes the plan cheaper, so its marginal is negative too, and rent its opposite.
        # A column must be worth its cost and that rent.
        prices = np.maximum(-np.asarray(answer.ineqlin.marginals), 0.0)
        rent: Floats = np.zeros(len(quantity))
        rent[limited] = prices[len(demand) :]
        return Priced(
            prices[: len(demand)], answer.x[:count], answer.x[count:], float(answer.fun), rent
        )

    def chosen(self, node_limit: int, gap: float = 0.0, own: float = OWN) -> Whole | None:
        """The best whole plan of the columns; None where none was found.

        `own` is what the second cost counts beside the first: 0 where `least` is wanted.
        """
        rows, amounts, _ = self._rows(self.demand, [each.quantity for each in self.sources])
        costs = np.concatenate((self._costs(own), np.full(len(self.demand), DEAR)))
        answer = milp(
            costs,
            constraints=LinearConstraint(rows, -np.inf, amounts),
            integrality=np.ones(len(costs)),
            bounds=Bounds(0, np.inf),
            options={"node_limit": node_limit, "mip_rel_gap": gap},
        )
        if answer.x is None:
            return None
        used = tuple(round(each) for each in answer.x[: len(self.columns)])
        return Whole(used, float(answer.mip_dual_bound))

    def least(self, worth: Ints, best: Sequence[int], demand: Sequence[int]) -> Fraction:
        """A cost that no plan for the demand beats, given what lots are worth.

        `worth` are those of `fine`, and `best[k]` the most that one piece of source k can be worth
        by them. Exact: whole numbers and fractions only.
        """
        shrink = Fraction(1)
        costs = [Fraction(each.cost * FINE, self.dearest) for each in self.sources]
        for source, cost, most in zip(self.sources, costs, best, strict=True):
            if source.quantity is None and most > cost:
                shrink = min(shrink, cost / most)
        total = shrink * sum(int(w) * d for w, d in zip(worth, demand, strict=True))
        for source, cost, most in zip(self.sources, costs, best, strict=True):
            if source.quantity is not None:
                total += source.quantity * min(Fraction(0), cost - shrink * most)
        return total * self.dearest / FINE

    def _costs(self, own: float = OWN) -> Floats:
        largest = max(source.own for source in self.sources) or 1
        each = [s.cost / self.dearest + own * s.own / largest for s in self.sources]
        return np.array([each[column.source] for column in self.columns], dtype=np.float64)

    def _rows(
        self, demand: Sequence[int], quantity: Sequence[int | None]
    ) -> tuple[csr_array, Floats, list[int]]:
        counts = np.array([each.counts for each in self.columns], dtype=np.float64)
        counts = counts.reshape(len(self.columns), len(demand)).T
        limited = [k for k, each in enumerate(quantity) if each is not None]
        row_of = {source: row for row, source in enumerate(limited)}
        rows = np.zeros((len(demand) + len(limited), len(self.columns) + len(demand)))
        rows[: len(demand)] = np.hstack((-counts, -np.eye(len(demand))))
        for number, column in enumerate(self.columns):
            if column.source in row_of:
                rows[len(demand) + row_of[column.source], number] = 1.0
        amounts = [-float(each) for each in demand] + [float(quantity[k] or 0) for k in limited]
        return csr_array(rows), np.array(amounts), limited


def fine(worth: Floats) -> Ints:
    """What lots are worth, in whole numbers, for a bound without floating-point error."""
    whole: Ints = np.floor(np.minimum(worth, FAR) * FINE).astype(np.int64)
    return whole
