"""Sticks as the planner sees them: kinds with clear segments, filled sticks, and their trees."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from functools import partial

from model.cutting.lengths.lots import Lot, Strip, at_least, at_most
from model.cutting.lengths.saw import Block, Rect, Saw
from model.cutting.record import Layout, Region, Stock, Task

Counts = tuple[int, ...]
Segment = tuple[int, int]  # from and to along the stick


@dataclass(frozen=True)
class Kind:
    """One row of stock: its clear segments, and what using one costs.

    `cost` is what the plan counts, `own_cost` what decides between plans that count alike.
    """

    stock: Stock
    segments: tuple[Segment, ...]
    cost: int = 0
    own_cost: int = 0

    @property
    def quantity(self) -> int | None:
        return self.stock.quantity

    def rooms(self, kerf: int) -> tuple[int, ...]:
        """What each segment holds, of pieces that carry a kerf each."""
        return tuple(high - low + kerf for low, high in self.segments)


@dataclass(frozen=True)
class Stick:
    """A stick as it is cut: the kind's number, and strips of each lot in each segment."""

    kind: int
    counts: tuple[Counts, ...]

    @property
    def total(self) -> Counts:
        return tuple(map(sum, zip(*self.counts, strict=True)))


def segments(stock: Stock, kerf: int) -> tuple[Segment, ...]:
    """The clear stretches between trims and bad spans, in order; width plays no part."""
    at = at_least(stock.trim.left)
    end = at_most(stock.length) - at_least(stock.trim.right)
    clear = []
    for low, high in sorted((at_most(bad.x0), at_least(bad.x1)) for bad in stock.bad):
        if low > at:
            clear.append((at, min(low, end)))
        at = max(at, high, low + kerf if low > at else 0)
    clear.append((at, end))
    return tuple((low, high) for low, high in clear if high > low)


def layouts(
    task: Task, kinds: Sequence[Kind], sizes: Sequence[Lot], sticks: Iterable[Stick]
) -> tuple[Layout, ...]:
    """The sticks with real pieces on them, numbered; pieces are handed out in order."""
    waiting = [list(reversed(lot.strips)) for lot in sizes]
    made = []
    for number, stick in enumerate(sticks, start=1):
        kind = kinds[stick.kind]
        made.append(
            Layout(number=number, stock=kind.stock, tree=_tree(task, kind, stick, sizes, waiting))
        )
    return tuple(made)


def _tree(
    task: Task, kind: Kind, stick: Stick, sizes: Sequence[Lot], waiting: list[list[Strip]]
) -> Region:
    stock, kerf = kind.stock, at_least(task.kerf)
    rect = Rect(0, 0, at_most(stock.length), at_most(stock.width))
    bad = tuple(Rect(at_most(b.x0), 0, at_least(b.x1), rect.y1) for b in stock.bad)
    saw = Saw(kerf, task.wishes.least_offcut, bad, is_stick=True)
    blocks = []
    for (low, high), counts in zip(kind.segments, stick.counts, strict=True):
        inside, at = [], low
        for lot, count, strips in zip(sizes, counts, waiting, strict=True):
            for _ in range(count):
                inside.append(Block(at, at + lot.along, partial(saw.strip, strip=strips.pop())))
                at += lot.along + kerf
        blocks.append(Block(low, high, partial(saw.chain, way="crosscut", blocks=inside)))
    return saw.chain(rect, "crosscut", blocks, is_trim=True)
