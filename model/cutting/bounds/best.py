"""The best bound so far, and when to stop looking for a better one."""

from __future__ import annotations

from math import ceil

from model.cutting.bounds.cover import Weighing, least_cost
from model.cutting.bounds.question import Question


class Best:
    """Each weighing offered is turned into a cost; the greatest is kept with its reason."""

    def __init__(self, asked: Question, target: int) -> None:
        self.asked = asked
        self.target = target
        self.cost = 0
        self.by = ""
        self.is_enough = True

    @property
    def is_settled(self) -> bool:
        """The target is met, or all stock together is too little."""
        return self.cost >= self.target or not self.is_enough

    def offer(self, weighing: Weighing, by: str) -> None:
        cost = least_cost(self.asked.sheets, weighing)
        if cost is None:
            self.is_enough = False
            self.by = by
        elif cost > self.cost:
            self.cost, self.by = cost, by

    def could_gain(self, promise: float) -> bool:
        """Whether a bound that may still reach `promise` (not exact) is worth going on for."""
        return ceil(promise - 1e-6) > self.cost
