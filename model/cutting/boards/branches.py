"""The cheapest set of boards by branch and bound, for racks with too many sets to look at all."""

from __future__ import annotations

from collections.abc import Sequence
from heapq import heappop, heappush
from typing import NamedTuple

import numpy as np
from scipy.optimize import linprog

from model.cutting.lengths.master import Floats

WHOLE = 1e-6
SURELY = 1 - 1e-9  # of the list: floating point


class Cheapest(NamedTuple):
    """What no set costs less than (in the dearest board), and how many of each board the cheapest
    has: None where that is not known.
    """

    least: float
    chosen: tuple[int, ...] | None


class _Node(NamedTuple):
    """Boards between limits: what they cost at least, and how many of each that takes."""

    least: float
    number: int
    used: tuple[float, ...]
    limits: tuple[tuple[int, int], ...]


class Branches:
    """Sets of boards with these `costs`, at most so many of each, and at most so many nodes a
    search.
    """

    def __init__(self, costs: Floats, most: Sequence[int], node_limit: int) -> None:
        self._costs, self._most, self._node_limit = costs, most, node_limit
        self._rows: list[Floats] = []

    def keep(self, held: Floats) -> None:
        """Only sets that hold all by this condition: a share of the list for each board."""
        self._rows.append(held)

    def cheapest(self) -> Cheapest:
        """The cheapest set by all conditions, or what is known once the nodes are used up."""
        waiting: list[_Node] = []
        self._push(waiting, [(0, each) for each in self._most], 0)
        for number in range(self._node_limit):
            if not waiting:
                break
            node = heappop(waiting)
            part = np.abs(np.array(node.used) - np.round(node.used))
            if part.max() < WHOLE:
                return Cheapest(node.least, tuple(round(each) for each in node.used))
            if number == self._node_limit - 1:
                return Cheapest(node.least, None)
            self._divide(waiting, node, int(part.argmax()), number)
        return Cheapest(0.0, None)

    def _divide(self, waiting: list[_Node], node: _Node, board: int, number: int) -> None:
        low, high = node.limits[board]
        few = int(node.used[board])
        for side, limits in enumerate(((low, few), (few + 1, high))):
            divided = [*node.limits[:board], limits, *node.limits[board + 1 :]]
            self._push(waiting, divided, 2 * number + side + 1)

    def _push(self, waiting: list[_Node], limits: Sequence[tuple[int, int]], number: int) -> None:
        wanted = np.full(len(self._rows), -SURELY)
        rows = -np.array(self._rows)
        answer = linprog(self._costs, A_ub=rows, b_ub=wanted, bounds=limits, method="highs")
        if answer.x is not None:
            used = tuple(answer.x.tolist())
            heappush(waiting, _Node(float(answer.fun), number, used, tuple(limits)))
