"""The rack as the planner sees it: what each board costs, and its clear blanks.

A blank is a rectangle between trims and between the bad spans that are crosscut out of the board.
A board with spans on part of its width has two forms: all spans cut out across, or only those that
leave no room beside them for the narrowest piece, the others staying in their blank to be sawn
around.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from model.cutting.lengths.lots import NM, at_least, at_most
from model.cutting.lengths.saw import Rect
from model.cutting.record import Measure, Stock, Task

MONEY = 1_000_000


@dataclass(frozen=True)
class Blank:
    """A rectangle of a board, with the bad spans that still lie in it."""

    rect: Rect
    bad: tuple[Rect, ...] = ()

    @property
    def length(self) -> int:
        return self.rect.x1 - self.rect.x0

    @property
    def width(self) -> int:
        return self.rect.y1 - self.rect.y0


Form = tuple[Blank, ...]


@dataclass(frozen=True)
class Board:
    """One row of the rack: the forms it may take, and what using one costs.

    `cost` is what the plan counts, `own_cost` what decides between plans that count alike.
    """

    stock: Stock
    forms: tuple[Form, ...]
    cost: int
    own_cost: int

    @property
    def quantity(self) -> int | None:
        return self.stock.quantity

    def room(self, kerf: int) -> int:
        """Area for pieces that carry a kerf each way, however the board is cut."""
        return max(
            sum((blank.length + kerf) * (blank.width + kerf) for blank in form)
            for form in self.forms
        )


def measure(stock: Sequence[Stock]) -> Measure:
    """Pieces where one kind is sold without limit, price where all have one, else area of board."""
    counted = _counted(stock)
    if len(counted) == 1 and counted[0].quantity is None:
        return "stock"
    return "price" if counted and all(each.price is not None for each in counted) else "area"


def unit(stock: Sequence[Stock]) -> int:
    """How many of the whole numbers of `rack` make one of the measure."""
    return {"stock": 1, "price": MONEY, "length": NM, "area": NM * NM}[measure(stock)]


def rack(task: Task, narrowest: int) -> tuple[Board, ...]:
    """All boards in the order of the task."""
    usable = [each for each in task.stock if each.quantity != 0]
    what, counted = measure(usable), _counted(usable)
    made = []
    for each in usable:
        area, cost = at_most(each.length) * at_most(each.width), 0
        if each in counted:
            cost = {"stock": 1, "price": round((each.price or 0.0) * MONEY)}.get(what, area)
        made.append(Board(each, forms(each, at_least(task.kerf), narrowest), cost, area))
    return tuple(made)


def forms(stock: Stock, kerf: int, narrowest: int) -> tuple[Form, ...]:
    """The ways in which bad spans are crosscut out of a board."""
    whole = Rect(
        at_least(stock.trim.left),
        at_least(stock.trim.lower),
        at_most(stock.length) - at_least(stock.trim.right),
        at_most(stock.width) - at_least(stock.trim.upper),
    )
    spans = [Rect(*map(at_most, b[:2]), *map(at_least, b[2:])) for b in stock.bad]
    spans = sorted(span for span in spans if span.meets(whole))
    full = [span for span in spans if not _leaves_room(span, whole, narrowest + kerf)]
    ways = [spans] if len(full) == len(spans) else [spans, full]
    return tuple(_blanks(whole, out, [s for s in spans if s not in out], kerf) for out in ways)


def _leaves_room(span: Rect, whole: Rect, least: int) -> bool:
    return max(span.y0 - whole.y0, whole.y1 - span.y1) >= least


def _blanks(whole: Rect, out: Sequence[Rect], kept: Sequence[Rect], kerf: int) -> Form:
    at, made = whole.x0, []
    for span in out:
        if span.x0 > at:
            made.append((at, span.x0))
        at = max(at, span.x1, span.x0 + kerf if span.x0 > at else 0)
    made.append((at, whole.x1))
    rects = [Rect(low, whole.y0, high, whole.y1) for low, high in made if high > low]
    return tuple(Blank(r, tuple(s for s in kept if s.meets(r))) for r in rects)


def _counted(stock: Sequence[Stock]) -> list[Stock]:
    """What is bought; where everything is on hand, all of it. Nothing of which there is none."""
    there = [each for each in stock if each.quantity != 0]
    return [each for each in there if not each.on_hand] or there
