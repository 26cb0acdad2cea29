"""Plans of longer lists: patterns made to order, then the cheapest choice among them.

Column generation (Gilmore, Gomory, Operations Research 9:849-859, 1961): a linear program says
what one more piece of each size is worth; the sheet worth most under that joins the patterns, until
none is worth more than it costs.
"""

from __future__ import annotations

from collections.abc import Iterable

import numpy as np
from numpy.typing import NDArray
from scipy.optimize import linprog

from model.cutting.blocks.cover import assembled
from model.cutting.blocks.fullest import Filler
from model.cutting.blocks.master import choose
from model.cutting.blocks.record import Cover, Pattern
from model.cutting.bounds.question import Question

FINE = 10**9
WORTH = 1e-7
UNCUT = 10.0  # what a piece costs that stays uncut, in sheets; only until there are patterns

Floats = NDArray[np.float64]


def cover_by_columns(
    asked: Question, rounds: int, width: int, nodes: int, known: Iterable[Pattern] = ()
) -> Cover | None:
    """The cheapest sheets among patterns made to order and those `known`.

    Its lower bound is 0, because other patterns may do better. `rounds` of new patterns are made,
    each with a beam of `width`. None where no choice holds all pieces within `nodes`.
    """
    columns = _Columns(asked, width, known)
    for _ in range(rounds):
        if not columns.grow():
            break
    patterns = list(columns.patterns.values())
    counts = np.array([each.counts for each in patterns], np.int64)
    choice = choose(asked, [each.sheet for each in patterns], counts, nodes)
    if choice is None:
        return None
    chosen = zip(patterns, choice.times, strict=True)
    return assembled(asked, [each for each, times in chosen for _ in range(times)], 0)


class _Columns:
    """The patterns so far, the program over them, and what fills sheets under its values."""

    def __init__(self, asked: Question, width: int, known: Iterable[Pattern]) -> None:
        self.asked = asked
        self.width = width
        self.dearest = max(1, *(sheet.cost for sheet in asked.sheets))
        self.fillers = [Filler(asked, at) for at in range(len(asked.sheets))]
        self.patterns: dict[tuple[int, tuple[int, ...]], Pattern] = {}
        for pattern in known:
            self._add(pattern)
        for at, size in enumerate(asked.sizes):
            self._fill([size.area if at == each else 0 for each in range(len(asked.sizes))])

    def grow(self) -> bool:
        """Take up what is worth more than it costs; False when nothing is."""
        worth, rent = self._worth()
        known = len(self.patterns)
        self._fill(np.rint(worth * FINE).astype(int).tolist(), rent)
        return len(self.patterns) > known

    def _worth(self) -> tuple[Floats, Floats]:
        """What one more piece of each size is worth, and what a sheet must be worth, in shares of
        the dearest sheet's cost.
        """
        sizes, sheets = self.asked.sizes, self.asked.sheets
        of_sheet = [key[0] for key in self.patterns]
        costs = np.array([sheet.cost for sheet in sheets]) / self.dearest
        counts = np.array([key[1] for key in self.patterns]).reshape(len(of_sheet), len(sizes))
        few = [at for at, sheet in enumerate(sheets) if sheet.quantity is not None]
        used = (np.array(of_sheet)[None, :] == np.array(few, int)[:, None]).astype(float)
        answer = linprog(
            np.concatenate((costs[of_sheet], np.full(len(sizes), UNCUT))),
            A_ub=np.block(
                [[-counts.T, -np.eye(len(sizes))], [used, np.zeros((len(few), len(sizes)))]]
            ),
            b_ub=[*(-size.demand for size in sizes), *(sheets[at].quantity or 0 for at in few)],
            method="highs-ds",
        )
        duals = np.maximum(-np.asarray(answer.ineqlin.marginals), 0.0)
        costs[few] += duals[len(sizes) :]
        return duals[: len(sizes)], costs

    def _fill(self, values: list[int], rent: Floats | None = None) -> None:
        """Fill every kind of sheet; keep the patterns that are worth it."""
        for sheet, filler in enumerate(self.fillers):
            least = 0.0 if rent is None else rent[sheet] + WORTH
            for filled in filler.best_filled(values, self.width):
                if filled.value / FINE > least:
                    self._add(filled.pattern)

    def _add(self, pattern: Pattern) -> None:
        self.patterns.setdefault((pattern.sheet, pattern.counts), pattern)
