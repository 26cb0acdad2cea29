"""Many ways to fill one sheet, weighed by what each size is worth, and the cheapest choice of them.

The worth of a size is its price in the linear programme over all ways found so far (how much the
cheapest mixture would gain from one piece less). Sheets packed greedily by that worth find ways
that the mixture lacks; after some rounds whole numbers of them are chosen.
Source of the scheme: Gilmore and Gomory, A linear programming approach to the cutting-stock
problem, Operations Research 9 (1961), with packings in place of the exact search for a way.
"""

from __future__ import annotations

from collections.abc import Sequence
from random import Random
from typing import NamedTuple

import numpy as np
from scipy.optimize import linprog

from model.cutting.blocks.master import choose
from model.cutting.bounds.question import question
from model.cutting.sheets.depot import Depot, Filled
from model.cutting.sheets.manners import FITS, SPLITS
from model.cutting.sheets.packing import Bin, Manner, Packed
from model.cutting.sheets.tree import Leaf, Tree, stacked

PER_ROUND = 40  # sheets packed between two looks at the worth
FREE_ROUNDS = 2  # in which any way is kept, so that the mixture has something to choose from
IDLE_ROUNDS = 4
HAIR = 1e-7

Key = tuple[int, tuple[int, ...]]  # kind of sheet, pieces by size


class Way(NamedTuple):
    """A sheet filled in some way."""

    bin: Bin
    packed: Packed


class Pool:
    """Ways to fill a sheet, by kind of sheet and what it holds."""

    def __init__(self, depot: Depot, random: Random) -> None:
        self.depot = depot
        self.random = random
        self.ways: dict[Key, Way] = {}
        self.worth: list[float] = [float(area) for area in depot.areas]
        self.least_cost = float("inf")  # of any mixture of these ways

    def fill(self, rounds: int) -> None:
        """So many rounds of packing and weighing; ends when a few find nothing new."""
        idle = 0
        for number in range(rounds):
            found = [self._pack(number < FREE_ROUNDS) for _ in range(PER_ROUND)]
            idle = 0 if any(found) else idle + 1
            if idle == IDLE_ROUNDS or (any(found) and not self._weigh()):
                break

    def chosen(self, nodes: int) -> list[Filled] | None:
        """The cheapest whole numbers of the ways that hold all pieces; None if none was found."""
        keys = list(self.ways)
        asked = question(self.depot.whole)
        counts = np.array([held for _, held in keys], np.int64)
        choice = choose(asked, [kind for kind, _ in keys], counts, nodes)
        if choice is None:
            return None
        sheets = [
            self._filled(key)
            for key, times in zip(keys, choice.times, strict=True)
            for _ in range(times)
        ]
        return _exactly(self.depot, sheets)

    def _pack(self, any_way: bool) -> bool:
        """One sheet packed with what is worth most for its room; whether the way is new."""
        depot = self.depot
        kind = int(self.random.random() * len(depot.forms))
        bin_ = depot.bins(
            tuple(int(at == kind) for at in range(len(depot.forms))), [kind], self.random
        )
        packed = depot.pack(depot.lot(depot.demand, bin_), self._manner(), must=False)
        held = tuple(a - b for a, b in zip(depot.demand, packed.unplaced, strict=True))
        key = kind, held
        if key in self.ways or not any(held):
            return False
        value = sum(a * b for a, b in zip(self.worth, held, strict=True))
        if not any_way and value <= depot.whole.sheets[kind].cost * (1 + HAIR) + HAIR:
            return False
        self.ways[key] = Way(bin_[0], packed)
        return True

    def _manner(self) -> Manner:
        draw = self.random.random
        dense, large, noise = 0.6 + 1.4 * draw(), int(draw() * 3) / 2, 0.1 + draw()
        keys = [
            (worth / area) ** dense * area**large * (1 + noise * draw()) if worth > 0 else 0.0
            for worth, area in zip(self.worth, self.depot.areas, strict=True)
        ]
        order = sorted(range(len(keys)), key=lambda at: (-keys[at], at))
        return Manner(tuple(order), FITS[int(draw() * 3)], SPLITS[int(draw() * 5)], draw() < 0.7)

    def _weigh(self) -> bool:
        """The worth of each size in the cheapest mixture; False where the ways hold too little."""
        sheets, most, demand = self.depot.whole.sheets, self.depot.most, self.depot.demand
        kinds = np.array([kind for kind, _ in self.ways])
        held = np.array([counts for _, counts in self.ways], float).T
        limited = [at for at, sheet in enumerate(sheets) if sheet.quantity is not None]
        used = np.array([kinds == at for at in limited], float).reshape(-1, len(kinds))
        answer = linprog(
            np.array([float(each.cost) for each in sheets])[kinds],
            A_ub=np.vstack([-held, used]),
            b_ub=[*(-float(each) for each in demand), *(float(most[at]) for at in limited)],
            method="highs",
        )
        if answer.status != 0:
            return False
        self.worth = [max(0.0, -float(each)) for each in answer.ineqlin.marginals[: len(demand)]]
        self.least_cost = float(answer.fun)
        return True

    def _filled(self, key: Key) -> Filled:
        way = self.ways[key]
        return self.depot.filled(way.packed, [way.bin])[0]


def _exactly(depot: Depot, sheets: Sequence[Filled]) -> list[Filled]:
    """The same sheets without pieces that nobody asked for; empty ones are left out."""
    surplus = [-each for each in depot.demand]
    for sheet in sheets:
        surplus = [a + b for a, b in zip(surplus, sheet.holds, strict=True)]
    kept = []
    for sheet in sheets:
        own = tuple(_without(tree, surplus) for tree in sheet.trees)
        if any(tree is not None for tree in own):
            kept.append(Filled(sheet.blank, own, depot.holds(own)))
    return kept


def _without(tree: Tree | None, surplus: list[int]) -> Tree | None:
    """The tree less pieces of which there are too many; `surplus` is counted down."""
    if tree is None:
        return None
    if isinstance(tree, Leaf):
        if surplus[tree.size] <= 0:
            return tree
        surplus[tree.size] -= 1
        return None
    members = [
        left for each in reversed(tree.members) if (left := _without(each, surplus)) is not None
    ]
    return stacked(tree.way, members[::-1]) if members else None
