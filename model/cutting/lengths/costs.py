"""What a plan of sticks counts: pieces bought, their price, or their length; stock on hand first.

Costs are whole numbers, so that sums compare exactly: a price counts in 1e-6 of the currency, a
length in nanometres.
"""

from __future__ import annotations

from collections.abc import Sequence

from model.cutting.lengths.lots import NM, at_least, at_most
from model.cutting.lengths.sticks import Kind, segments
from model.cutting.record import Measure, Stock, Task

MONEY = 1_000_000


def measure(stock: Sequence[Stock]) -> Measure:
    """Price where all that could be bought has one, else length; one kind alone is only counted."""
    counted = _counted(stock)
    if len(counted) == 1:
        return "stock"
    return "price" if all(each.price is not None for each in counted) and counted else "length"


def unit(stock: Sequence[Stock]) -> int:
    """How many of the whole numbers of `kinds` make one of the measure."""
    return {"stock": 1, "price": MONEY, "length": NM, "area": NM}[measure(stock)]


def kinds(task: Task) -> tuple[Kind, ...]:
    """All stock that has room, in the order of the task."""
    usable = [each for each in task.stock if each.quantity != 0]
    what, counted = measure(usable), _counted(usable)
    made = []
    for each in usable:
        cost = 0
        if each in counted:
            price = round((each.price or 0.0) * MONEY)
            cost = {"stock": 1, "price": price}.get(what, at_most(each.length))
        clear = segments(each, at_least(task.kerf))
        made.append(Kind(each, clear, cost, at_most(each.length)))
    return tuple(made)


def _counted(stock: Sequence[Stock]) -> list[Stock]:
    """What is bought; where everything is on hand, all of it. Nothing of which there is none."""
    there = [each for each in stock if each.quantity != 0]
    return [each for each in there if not each.on_hand] or there
