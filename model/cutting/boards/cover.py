"""The cheapest boards that hold a short list, over all that fits on each of them.

Board after board, every rest of the list that may be left is kept with the least cost that leaves
it. A rest is dropped once it cannot lead to a plan below the budget: what its strips are worth,
less what the boards to come may give beyond their cost, has still to be paid.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import NamedTuple

import numpy as np

from model.cutting.boards.lattice import Filling
from model.cutting.boards.points import Points
from model.cutting.lengths.master import Floats
from model.cutting.lengths.sums import Ints

SURE = 1e-9  # floating point; money counts in the dearest board
MOST_LOOKED_AT = 1_500_000  # rests times fillings of one board


class Choice(NamedTuple):
    """A board by its place in the list, one of its fillings, and what of that is wanted."""

    board: int
    filling: int
    counts: tuple[int, ...]


class Covered(NamedTuple):
    """The choices of the cheapest plan below the budget, or None. Where `is_all` no rest had to be
    dropped for want of room: nothing is cheaper, and None means that nothing is below the budget.
    """

    choices: tuple[Choice, ...] | None
    is_all: bool


class _Stage(NamedTuple):
    """Rests after a board, with what they cost, the rest before, and the filling (-1: unused)."""

    rests: Ints
    costs: Floats
    before: Ints
    filling: Ints

    def only(self, kept: Ints) -> _Stage:
        return _Stage(self.rests[kept], self.costs[kept], self.before[kept], self.filling[kept])


class Cover:
    """`costs` of each board, and the `worth` of a strip of each lot, in the dearest board."""

    def __init__(
        self,
        points: Points,
        fillings: Sequence[Filling],
        costs: Sequence[float],
        worth: Floats,
        stop: Callable[[], bool] = lambda: False,
    ) -> None:
        self._points, self._fillings, self._costs, self._stop = points, fillings, costs, stop
        self._gains = [each.counts @ worth - c for each, c in zip(fillings, costs, strict=True)]
        most = [max(0.0, float(gains.max(initial=0.0))) for gains in self._gains]
        self._order = sorted(range(len(most)), key=lambda board: (-most[board], board))
        most = [most[board] for board in self._order]
        self._to_come = np.concatenate((np.cumsum(most[::-1])[::-1], [0.0]))
        self._value: Floats = points.every @ worth

    def cheapest(self, budget: float, most_rests: int) -> Covered:
        """The cheapest plan below the budget."""
        none: Ints = np.zeros(1, dtype=np.int64)
        stages = [_Stage(none + self._points.size - 1, np.zeros(1), none, none - 1)]
        is_all = True
        for number, board in enumerate(self._order):
            if self._stop():
                return Covered(None, is_all=False)
            stage = self._after(board, stages[-1], budget)
            least = stage.costs + self._value[stage.rests] - self._to_come[number + 1]
            kept = np.flatnonzero(least < budget)
            most = min(most_rests, MOST_LOOKED_AT // self._most_fillings(number + 1))
            if len(kept) > most:
                is_all = False
                kept = np.sort(kept[np.argsort(least[kept], kind="stable")[:most]])
            stages.append(stage.only(kept))
            if len(kept) and stages[-1].rests[0] == 0:
                budget = min(budget, float(stages[-1].costs[0]) + SURE)
        if not len(stages[-1].rests) or stages[-1].rests[0]:
            return Covered(None, is_all)
        return Covered(self._read(stages), is_all)

    def _most_fillings(self, number: int) -> int:
        following = self._order[number : number + 1]
        return max([1, *(len(self._fillings[board].counts) for board in following)])

    def _after(self, board: int, stage: _Stage, budget: float) -> _Stage:
        """The stage before with the board or without it, each rest once and as cheap as can be."""
        others = self._to_come[0] - max(0.0, float(self._gains[board].max(initial=0.0)))
        useful = np.flatnonzero(self._value[-1] - others - self._gains[board] < budget)
        points, many = self._points, len(useful)
        taken = self._fillings[board].counts[useful]
        left = points.every[stage.rests][:, None, :] - taken[None, :, :]
        before = np.arange(len(stage.rests))
        rests = np.concatenate((stage.rests, points.number(np.maximum(left, 0)).ravel()))
        costs = np.concatenate((stage.costs, (stage.costs + self._costs[board]).repeat(many)))
        came_from = np.concatenate((before, before.repeat(many)))
        filling = np.concatenate((np.full(len(before), -1), np.tile(useful, len(before))))
        order = np.lexsort((costs, rests))
        chosen = order[np.diff(rests[order], prepend=-1) > 0]
        return _Stage(rests[chosen], costs[chosen], came_from[chosen], filling[chosen])

    def _read(self, stages: Sequence[_Stage]) -> tuple[Choice, ...]:
        """How the empty rest, the first of all, came about."""
        choices, at = [], 0
        for number in reversed(range(len(self._order))):
            stage, earlier = stages[number + 1], stages[number]
            before, filling = int(stage.before[at]), int(stage.filling[at])
            if filling >= 0:
                every = self._points.every
                used = every[earlier.rests[before]] - every[stage.rests[at]]
                choices.append(Choice(self._order[number], filling, tuple(used.tolist())))
            at = before
        return tuple(reversed(choices))
