"""The bars bound: pieces sliced into bars, packed as well as bars can be, in both directions.

Each piece becomes bars one step high that lie along the sheet and bars one step wide that lie
across it; how many pieces lie which way is shared. All rows of bars together must hold all bars:
a linear program over the patterns of a row (Gilmore, Gomory, Operations Research 9:849-859, 1961;
the two directions as in Scheithauer, Journal of Combinatorial Optimization 3:19-38, 1999, both
from memory). With scales in place of plain heights and widths it is never weaker than their
product, and it finds the best weights for one scale when the other is given.

The program only proposes weights. They are rounded to whole numbers and what rows hold under them
is reckoned afresh, so that nothing hangs on the solver's rounding.
"""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray
from scipy.optimize import linprog

from model.cutting.bounds.best import Best
from model.cutting.bounds.cover import Weighing, weigh
from model.cutting.bounds.fill import Fill
from model.cutting.bounds.question import ACROSS, ALONG, Axis, Question
from model.cutting.bounds.scale import Rows, Scale

MOST_ROUNDS = 60
FINE = 10**9  # weights are rounded to this part of a sheet's cost
WORTH = 1e-7  # a pattern that gains less is left out
UNCUT = 10.0  # what a piece costs that stays uncut, in sheets; only until there are patterns

Floats = NDArray[np.float64]


def bars(best: Best, rows: tuple[Rows, Rows], scales: tuple[Scale, Scale], by: str) -> list[Scale]:
    """Offer bounds until the target is met or nothing more can be gained.

    `scales` are the heights of bars along (by width) and the widths of bars across (by length), in
    the order along, across. Returned: the last weights of lengths and of widths.
    """
    master = _Master(best.asked, rows, scales)
    found: list[Scale] = []
    for _ in range(MOST_ROUNDS):
        promise, weights = master.solve()
        if not best.could_gain(promise):
            break
        fills = [rows[axis].fills(weights[axis]) for axis in (ALONG, ACROSS)]
        found = [
            Scale(
                weights=dict(zip(rows[axis].sizes, weights[axis], strict=True)),
                holds=tuple(fill.value for fill in fills[axis]),
            )
            for axis in (ALONG, ACROSS)
        ]
        best.offer(_both(best.asked, found, scales), by)
        if best.is_settled or not master.grow(fills):
            break
    return found


def _both(asked: Question, found: list[Scale], scales: tuple[Scale, Scale]) -> Weighing:
    """Bars along weigh what their lengths do, times their height; bars across likewise.

    Heights and widths are shares of the fullest row, as in the program, brought to one measure.
    """
    (f, g), (along, across) = found, scales
    height, width = max(along.holds), max(across.holds)
    weights = [
        min(
            f.weights[a] * across.weights[b] * height + g.weights[b] * along.weights[a] * width
            for a, b in size.ways
        )
        for size in asked.sizes
    ]
    each = zip(f.holds, g.holds, along.holds, across.holds, strict=True)
    holds = [f_ * across_ * height + g_ * along_ * width for f_, g_, along_, across_ in each]
    return weigh(asked, weights, holds)


class _Master:
    """The linear program over the patterns known so far.

    Unknowns: sheets of each kind, pieces of each size by way, pieces that stay uncut (dear), and
    how much of each pattern. Rows: patterns fit the sheets, by axis and sheet; bars are packed, by
    axis and length. Costs are shares of the dearest sheet's.
    """

    def __init__(self, asked: Question, rows: tuple[Rows, Rows], scales: tuple[Scale, Scale]):
        self.rows = rows
        self.demands = [float(size.demand) for size in asked.sizes]
        self.dearest = max(sheet.cost for sheet in asked.sheets)
        sheets, ways = len(asked.sheets), sum(len(size.ways) for size in asked.sizes)
        self.starts = (0, sheets, 2 * sheets, 2 * sheets + len(rows[ALONG].sizes))
        self.height = self.starts[3] + len(rows[ACROSS].sizes)
        fixed = sheets + ways + len(asked.sizes)
        self.costs = [sheet.cost / self.dearest for sheet in asked.sheets] + [0.0] * ways
        self.costs += [UNCUT] * len(asked.sizes)
        self.most = [sheet.quantity for sheet in asked.sheets] + [None] * (fixed - sheets)
        self.fixed = np.zeros((self.height, fixed))
        self.lying = np.zeros((len(asked.sizes), fixed))
        self._set_rooms(scales)
        self._set_ways(asked, scales)
        self.patterns: dict[tuple[int, int, tuple[int, ...]], Floats] = {}
        for axis in (ALONG, ACROSS):
            for sheet in range(sheets):
                self._start(axis, sheet)

    def _set_rooms(self, scales: tuple[Scale, Scale]) -> None:
        for axis, other in ((ALONG, scales[ACROSS]), (ACROSS, scales[ALONG])):
            for sheet, holds in enumerate(other.holds):
                self.fixed[self.starts[axis] + sheet, sheet] = -holds / max(other.holds)

    def _set_ways(self, asked: Question, scales: tuple[Scale, Scale]) -> None:
        at = len(asked.sheets)
        for number, size in enumerate(asked.sizes):
            for way in size.ways:
                for axis, other in ((ALONG, scales[ACROSS]), (ACROSS, scales[ALONG])):
                    row = self.starts[2 + axis] + self.rows[axis].sizes.index(way[axis])
                    self.fixed[row, at] = other.weights[way[1 - axis]] / max(other.holds)
                self.lying[number, at] = 1.0
                at += 1
        self.lying[:, at:] = np.eye(len(asked.sizes))

    def _start(self, axis: Axis, sheet: int) -> None:
        """As many as a row holds of one length alone."""
        rows = self.rows[axis]
        for at, (size, demand) in enumerate(zip(rows.sizes, rows.demands[sheet], strict=True)):
            if number := min(demand, rows.rooms[sheet] // size):
                counts = tuple(number if at == each else 0 for each in range(len(rows.sizes)))
                self._add(axis, sheet, counts)

    def _add(self, axis: Axis, sheet: int, counts: tuple[int, ...]) -> bool:
        key = (axis, sheet, counts)
        if key in self.patterns:
            return False
        column = np.zeros(self.height)
        column[self.starts[axis] + sheet] = 1.0
        start = self.starts[2 + axis]
        column[start : start + len(counts)] = [-each for each in counts]
        self.patterns[key] = column
        return True

    def solve(self) -> tuple[float, tuple[list[int], list[int]]]:
        """What the sheets cost in the program, and whole weights of lengths along and across."""
        packed = np.column_stack([self.fixed, *self.patterns.values()])
        extra = np.zeros(len(self.patterns))
        answer = linprog(
            np.concatenate((self.costs, extra)),
            A_ub=packed,
            b_ub=np.zeros(self.height),
            A_eq=np.pad(self.lying, ((0, 0), (0, len(extra)))),
            b_eq=self.demands,
            bounds=[(0, most) for most in self.most] + [(0, None)] * len(extra),
            method="highs-ds",
        )
        self.duals = -np.asarray(answer.ineqlin.marginals)
        whole = np.rint(np.maximum(self.duals, 0.0) * FINE).astype(int).tolist()
        split = self.starts[3]
        return float(answer.fun) * self.dearest, (whole[self.starts[2] : split], whole[split:])

    def grow(self, fills: list[list[Fill]]) -> bool:
        """Take up the patterns that are worth more than the room they take."""
        grown = False
        for axis in (ALONG, ACROSS):
            for sheet, fill in enumerate(fills[axis]):
                room = self.duals[self.starts[axis] + sheet]
                if fill.counts is not None and fill.value / FINE > room + WORTH:
                    grown |= self._add(axis, sheet, fill.counts)
        return grown
