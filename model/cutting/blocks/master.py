"""The cheapest choice among patterns known: a set cover in whole numbers."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import ceil, inf

import numpy as np
from numpy.typing import NDArray
from scipy.optimize import Bounds, LinearConstraint, milp

from model.cutting.bounds.question import Question

Floats = NDArray[np.float64]
Whole = NDArray[np.int64]

HAIR = 1e-6  # what the solver may be off by


@dataclass(frozen=True, kw_only=True)
class Choice:
    """`times` by pattern; nothing chosen from these patterns costs less than `lower_bound`."""

    times: tuple[int, ...]
    cost: int
    lower_bound: int


def choose(asked: Question, sheets: Sequence[int], counts: Whole, nodes: int) -> Choice | None:
    """Patterns, each of one sheet, by `sheets` (pattern) and `counts` (pattern, size).

    Counted by nodes of the search tree, never by time, so that the answer is always the same.
    None when no choice was found that holds all pieces.
    """
    of_sheet = np.array(sheets, np.int64)
    costs = np.array([sheet.cost for sheet in asked.sheets], float)
    dearest = float(max(costs.max(initial=0.0), 1.0))
    answer = milp(
        costs[of_sheet] / dearest,
        constraints=_constraints(asked, of_sheet, counts),
        integrality=np.ones(len(of_sheet)),
        bounds=Bounds(0, inf),
        options={"node_limit": nodes, "mip_rel_gap": 0.0},
    )
    if answer.x is None:
        return None
    times = np.rint(answer.x).astype(np.int64)
    if (counts.T @ times < [size.demand for size in asked.sizes]).any():
        return None  # the solver took a hair too little for enough
    cost = int(np.array([sheet.cost for sheet in asked.sheets], np.int64)[of_sheet] @ times)
    floor = cost if answer.status == 0 else _floor(answer.mip_dual_bound, dearest)
    return Choice(times=tuple(times.tolist()), cost=cost, lower_bound=min(cost, floor))


def _constraints(asked: Question, of_sheet: Whole, counts: Whole) -> list[LinearConstraint]:
    """All pieces are held, and no sheet is used more often than it is there."""
    held = LinearConstraint(counts.T, lb=[size.demand for size in asked.sizes], ub=inf)
    few = [at for at, sheet in enumerate(asked.sheets) if sheet.quantity is not None]
    if not few:
        return [held]
    used = np.stack([of_sheet == at for at in few]).astype(float)
    return [held, LinearConstraint(used, lb=-inf, ub=[asked.sheets[at].quantity for at in few])]


def _floor(dual: float | None, dearest: float) -> int:
    """Costs are whole: a bound on them may be rounded up, less what the solver may be off by."""
    return 0 if dual is None or dual == -inf else max(0, ceil((dual - HAIR) * dearest))
