"""The cheapest stock that holds all pieces: a few packings at once, bounds, then the search. Ends
as soon as no plan can cost less.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import islice
from random import Random

from model.cutting.bounds import bound
from model.cutting.bounds.cover import least_cost, weigh
from model.cutting.bounds.question import question
from model.cutting.record import Effort
from model.cutting.sheets.depot import Depot
from model.cutting.sheets.manners import tried
from model.cutting.sheets.packing import Manner
from model.cutting.sheets.repack import Stop, repacked
from model.cutting.sheets.search import SEED, Floor, Holding, Search, stowed
from model.cutting.sheets.strips import pack_strips, shelf
from model.cutting.whole import Whole

FIRST_TRIES = 12


def at_once(depot: Depot, tries: int) -> Holding:
    """The best of the shelf rule and a few packings, each with every kind of stock bought first."""
    best: Holding | None = None
    manners = [shelf(depot.whole.sizes), *islice(tried(depot.whole.sizes, SEED), tries)]
    orders = _opening_orders(depot)
    for at, manner in enumerate(manners):
        for order in orders if at < 2 else (orders[at % len(orders)],):
            new = _packed(depot, manner, order, is_shelf=not at)
            if best is None or _rank(depot, new) < _rank(depot, best):
                best = new
    assert best is not None
    return best


def _opening_orders(depot: Depot) -> list[list[int]]:
    """What is on hand first, then each kind that is bought before the others."""
    sheets = depot.whole.sheets
    free = [at for at in depot.opening if sheets[at].on_hand]
    bought = [at for at in depot.opening if not sheets[at].on_hand]
    by_area = sorted(bought, key=lambda at: (sheets[at].cost / sheets[at].area, at))
    return [[*free, first, *(at for at in by_area if at != first)] for first in by_area] or [free]


def _packed(depot: Depot, manner: Manner, order: list[int], is_shelf: bool) -> Holding:
    bins = depot.bins(depot.most, order)
    lot = depot.lot(depot.demand, bins)
    packed = (
        pack_strips(lot, manner, must=False) if is_shelf else depot.pack(lot, manner, must=False)
    )
    sheets = depot.filled(packed, bins)
    return Holding(sheets, depot.cost(sheets), packed.unplaced)


def _rank(depot: Depot, held: Holding) -> tuple[int, int, int]:
    return depot.area(held.unplaced), held.cost, len(held.sheets)


# ---------------------------------------------------------------- cheaper and cheaper


def area_floor(depot: Depot, held: Holding) -> Floor:
    """What no plan for the same pieces goes below, by their area alone: at once."""
    whole = _placed(depot, held)
    asked = question(whole)
    areas = [[each.area for each in asked.sizes], [each.area for each in asked.sheets]]
    return Floor(min(held.cost, least_cost(asked.sheets, weigh(asked, *areas)) or 0))


def floor(depot: Depot, held: Holding) -> Floor:
    """The same by all that is known of bounds."""
    found = bound(_placed(depot, held), held.cost)
    return Floor(min(found.cost, held.cost) if found.is_enough else 0, found.covers)


def _placed(depot: Depot, held: Holding) -> Whole:
    sizes = (
        size._replace(units=size.units[: size.demand - missing])
        for size, missing in zip(depot.whole.sizes, held.unplaced, strict=True)
    )
    return depot.whole.only(tuple(size for size in sizes if size.units))


def improved(
    depot: Depot, held: Holding, low: Floor, effort: Effort, stop: Stop
) -> Iterator[tuple[Holding, Floor]]:
    """Each holding that is better than the one before, with what is known of the least cost."""
    if any(held.unplaced):
        yield from _fuller(depot, held, low, effort, stop)
        return
    search = Search(depot, effort, stop)
    while held.cost > low.cost and not stop():
        found, low = search.cheaper_than(held, low)
        if found is None:
            break
        held = found
        yield held, low
    yield held, low


def _fuller(
    depot: Depot, held: Holding, low: Floor, effort: Effort, stop: Stop
) -> Iterator[tuple[Holding, Floor]]:
    """The stock does not hold all: as much of it as can be."""
    random = Random(SEED)
    bins = depot.bins(depot.most, depot.opening, random)
    start = min(
        (
            stowed(depot, depot.demand, bins, manner)
            for manner in islice(tried(depot.whole.sizes, SEED), 1 + effort.tries // 10)
        ),
        key=lambda each: depot.area(each.unplaced),
    )
    done = repacked(depot, start, effort.moves // 2, random, stop)
    if depot.area(done.unplaced) < depot.area(held.unplaced):
        sheets = [done.sheets[at] for at in sorted(done.sheets)]
        held = Holding(sheets, depot.cost(sheets), done.unplaced)
        low = floor(depot, held)
    yield held, low
