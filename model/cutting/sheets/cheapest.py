"""The cheapest stock that holds all pieces: many packings, blocks where they can be counted, and
sheets packed anew. Ends as soon as no plan can cost less.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import islice
from random import Random
from typing import NamedTuple

from model.cutting.blocks import COVERS, Cover, close_cover, edge_floor, exact_cover
from model.cutting.blocks import Leaf as BlockLeaf
from model.cutting.blocks import Tree as BlockTree
from model.cutting.bounds import bound
from model.cutting.bounds.cover import least_cost, weigh
from model.cutting.bounds.question import question
from model.cutting.record import Effort
from model.cutting.sheets.depot import Counts, Depot, Filled
from model.cutting.sheets.manners import tried
from model.cutting.sheets.packing import Bin, Manner
from model.cutting.sheets.pool import Pool
from model.cutting.sheets.repack import Stop, Stowed, repacked
from model.cutting.sheets.stock_sets import cheaper
from model.cutting.sheets.strips import pack_strips, shelf
from model.cutting.sheets.tree import Leaf, Tree, stacked
from model.cutting.whole import Whole

SEED = 20_000_003  # any would do; a fixed one gives the same plan for the same task
FIRST_TRIES = 12
TRIES_BEFORE_BLOCKS = 60
SETS_REPACKED = 3
TRIES_PER_ROUND = 16
MOVES_PER_REFILL = 150
MOVES_PER_LAST_TRY = 750
MOST_FILLED_CLOSE = 4  # sheets; with more of them there is more to choose from, and less to gain
HAIR = 1e-6


class Holding(NamedTuple):
    """Sheets that hold all pieces but `unplaced` (by size), and what they cost."""

    sheets: list[Filled]
    cost: int
    unplaced: list[int]


class Floor(NamedTuple):
    """No plan (of those that `covers` names) costs less than `cost`."""

    cost: int
    covers: str = "any plan"


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
    search = _Search(depot, effort, stop)
    while held.cost > low.cost and not stop():
        found, low = search.cheaper_than(held, low)
        if found is None:
            break
        held = found
        yield held, low
    yield held, low


class _Search:
    """What is left of the effort, over all prices that are tried in turn."""

    def __init__(self, depot: Depot, effort: Effort, stop: Stop) -> None:
        self.depot = depot
        self.effort = effort
        self.manners = tried(depot.whole.sizes, SEED)
        self.random = Random(SEED)
        self.tries = effort.tries
        self.moves = effort.moves
        self.nodes = effort.nodes
        self.rounds = effort.tries // TRIES_PER_ROUND
        self.is_hopeful = True
        self.stop = stop

    def cheaper_than(self, held: Holding, low: Floor) -> tuple[Holding | None, Floor]:
        sets = cheaper(self.depot, held.cost)
        if not sets:
            return None, low
        before = min(self.tries, TRIES_BEFORE_BLOCKS)
        found = self._packed(sets, before)
        if found is None:
            found, low = self._from_blocks(held, low)
        if found is None and held.cost > low.cost and self.tries:
            found = self._pooled(held)
            if found is None:
                low = self._by_larger_pieces(held, low)
        if found is None and held.cost > low.cost:
            found = self._packed(sets, self.tries) or self._repacked(sets)
        if found is None and held.cost > low.cost:
            found = self._refilled(held, sets)
        return found, low

    def _pooled(self, held: Holding) -> Holding | None:
        """Ways to fill one sheet, the cheapest choice of them."""
        if self.rounds <= 0 or self.stop():
            return None
        pool = Pool(self.depot, self.random)
        pool.fill(self.rounds)
        self.rounds //= 2
        self.is_hopeful = pool.least_cost <= held.cost - 1 + HAIR
        if not self.is_hopeful:
            self.moves //= 4  # not even a mixture of the ways is cheaper: hardly worth a try
            return None
        sheets = pool.chosen(self.effort.nodes)
        if sheets is None or self.depot.cost(sheets) >= held.cost:
            return None
        return Holding(sheets, self.depot.cost(sheets), [0] * len(self.depot.demand))

    def _by_larger_pieces(self, held: Holding, low: Floor) -> Floor:
        """What the larger pieces alone need, looked at once."""
        if not self.effort.nodes or self.stop():
            return low
        cost = min(held.cost, edge_floor(self.depot.whole, held.cost, self.effort.nodes))
        return Floor(cost, COVERS) if cost > low.cost else low

    def _refilled(self, held: Holding, sets: list[Counts]) -> Holding | None:
        """The set with most area, each of its sheets filled as close as can be.

        On a few sheets it is worth a try even without hope from the pool: what fills them to the
        last piece is seldom among the ways that packing finds.
        """
        if self.depot.whole.task.wishes.strips or self.stop():
            return None
        kinds = [kind for kind, count in enumerate(sets[0]) for _ in range(count)]
        if not self.is_hopeful and len(kinds) > MOST_FILLED_CLOSE:
            return None
        rounds = self.effort.moves // (MOVES_PER_REFILL if self.is_hopeful else MOVES_PER_LAST_TRY)
        cover = close_cover(self.depot.whole, kinds, rounds, self.stop) if rounds else None
        if cover is None or cover.cost >= held.cost:
            return None
        return _of_blocks(self.depot, cover)

    def _packed(self, sets: list[Counts], tries: int) -> Holding | None:
        """The first packing that holds all; a random set of sheets for each."""
        depot = self.depot
        for manner in islice(self.manners, tries):
            self.tries -= 1
            if self.stop():
                break
            counts = sets[self.tries % len(sets)]
            bins = depot.bins(counts, self._order(), self.random)
            packed = depot.pack(depot.lot(depot.demand, bins), manner)
            if packed.is_whole:
                sheets = depot.filled(packed, bins)
                return Holding(sheets, depot.cost(sheets), packed.unplaced)
        return None

    def _order(self) -> list[int]:
        """On hand first; what is bought in any order."""
        sheets = self.depot.whole.sheets
        free = [at for at in self.depot.opening if sheets[at].on_hand]
        bought = [at for at in self.depot.opening if not sheets[at].on_hand]
        return [*free, *self.random.sample(bought, len(bought))]

    def _from_blocks(self, held: Holding, low: Floor) -> tuple[Holding | None, Floor]:
        if not self.nodes:
            return None, low
        cover = exact_cover(self.depot.whole, self.nodes)
        self.nodes = 0
        if cover is None:
            return None, low
        if cover.lower_bound > low.cost:
            low = Floor(cover.lower_bound, COVERS)
        if cover.cost >= held.cost or self.depot.whole.task.wishes.strips:
            return None, low
        return _of_blocks(self.depot, cover), low

    def _repacked(self, sets: list[Counts]) -> Holding | None:
        """The sets that come nearest to holding all, their sheets packed anew."""
        if not self.moves:
            return None
        starts = sorted(
            (self._start(counts) for counts in sets[: 4 * SETS_REPACKED]),
            key=lambda each: self.depot.area(each.unplaced),
        )[:SETS_REPACKED]
        for at, start in enumerate(starts):
            share = self.moves // (len(starts) - at)
            self.moves -= share
            done = repacked(self.depot, start, share, self.random, self.stop)
            if not any(done.unplaced):
                sheets = [done.sheets[at] for at in sorted(done.sheets)]
                return Holding(sheets, self.depot.cost(sheets), done.unplaced)
        return None

    def _start(self, counts: Counts) -> Stowed:
        """The packing of a few that leaves least without a place."""
        starts = []
        for manner in islice(self.manners, 4):
            bins = self.depot.bins(counts, self._order(), self.random)
            starts.append(_stowed(self.depot, self.depot.demand, bins, manner))
        return min(starts, key=lambda each: self.depot.area(each.unplaced))


def _stowed(depot: Depot, demand: list[int], bins: list[Bin], manner: Manner) -> Stowed:
    packed = depot.pack(depot.lot(demand, bins), manner, must=False)
    places = [at for at, _ in packed.opened]
    return Stowed(bins, dict(zip(places, depot.filled(packed, bins), strict=True)), packed.unplaced)


def _fuller(
    depot: Depot, held: Holding, low: Floor, effort: Effort, stop: Stop
) -> Iterator[tuple[Holding, Floor]]:
    """The stock does not hold all: as much of it as can be."""
    random = Random(SEED)
    bins = depot.bins(depot.most, depot.opening, random)
    start = min(
        (
            _stowed(depot, depot.demand, bins, manner)
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


def _of_blocks(depot: Depot, cover: Cover) -> Holding:
    first = [sum(len(each) for each in depot.forms[:kind]) for kind in range(len(depot.forms))]
    sheets = []
    for pattern in cover.patterns:
        own = (_tree(pattern.tree, depot.lies),)
        sheets.append(Filled(first[pattern.sheet], own, depot.holds(own)))
    return Holding(sheets, cover.cost, [0] * len(depot.demand))


def _tree(block: BlockTree, lies: tuple[int, ...]) -> Tree:
    if isinstance(block, BlockLeaf):
        return Leaf(block.length, block.width, block.size, block.length != lies[block.size])
    return stacked(block.way, [_tree(block.low, lies), _tree(block.high, lies)])
