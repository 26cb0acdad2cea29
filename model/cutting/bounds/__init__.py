"""Bounds: what any plan of a sheet task needs at least, for any layout whatever.

Cheapest first, and no further than needed: area; pieces that share no sheet; products of dual
feasible functions; bars in both directions, first of plain size, then weighed by what did best.
"""

from __future__ import annotations

from dataclasses import dataclass

from model.cutting.bounds.bars import bars
from model.cutting.bounds.best import Best
from model.cutting.bounds.clique import clique
from model.cutting.bounds.cover import weigh
from model.cutting.bounds.products import products
from model.cutting.bounds.question import ACROSS, ALONG, Question, question
from model.cutting.bounds.scale import Rows
from model.cutting.whole import Whole


@dataclass(frozen=True, kw_only=True)
class Bound:
    """No plan costs less than `cost` (in the whole costs of the task's sheets).

    `by` is the reason, for the sentence "no plan can need fewer than 3 sheets, by ...".
    `is_enough` is False when even all stock together holds too little: then no plan holds all
    pieces, and `cost` says nothing.
    """

    cost: int
    by: str
    is_enough: bool = True
    covers: str = "any plan"


def bound(whole: Whole, target: int) -> Bound:
    """The best bound found, looked for no further once it reaches `target` (a plan's cost).

    Sizes that fit no sheet are not counted.
    """
    return bound_of(question(whole), target)


def bound_of(asked: Question, target: int) -> Bound:
    """The same for a question put by hand."""
    best = Best(asked, target)
    if asked.sizes and not best.is_settled:
        _look(asked, best)
    return Bound(cost=best.cost, by=best.by, is_enough=best.is_enough)


def _look(asked: Question, best: Best) -> None:
    best.offer(
        weigh(asked, [each.area for each in asked.sizes], [each.area for each in asked.sheets]),
        "the area alone",
    )
    if not best.is_settled:
        apart = clique(asked)
        best.offer(apart, f"{apart.total} pieces of which no two share a sheet")
    if best.is_settled:
        return
    rows = Rows(asked, ALONG), Rows(asked, ACROSS)
    pairs = products(best, *rows, "what rows of pieces along and across a sheet can hold")
    if best.is_settled or not any(each.cost for each in asked.sheets):
        return
    plain = rows[ALONG].plain(), rows[ACROSS].plain()
    for pair in (plain, *(each for each in pairs[:1] if each != plain)):
        bars(best, rows, pair, "how well strips of pieces can fill a sheet")
        if best.is_settled:
            return
