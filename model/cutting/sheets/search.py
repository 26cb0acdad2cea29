"""The search for cheaper sheets, step by step: what is quick and finds most goes first."""

from __future__ import annotations

from itertools import islice
from random import Random
from typing import NamedTuple

from model.cutting.blocks import COVERS, Cover, close_cover, edge_floor, exact_cover
from model.cutting.blocks import Leaf as BlockLeaf
from model.cutting.blocks import Tree as BlockTree
from model.cutting.record import Effort
from model.cutting.sheets.depot import Counts, Depot, Filled
from model.cutting.sheets.manners import tried
from model.cutting.sheets.packing import Bin, Manner
from model.cutting.sheets.pool import Pool
from model.cutting.sheets.repack import Stop, Stowed, repacked
from model.cutting.sheets.stock_sets import cheaper
from model.cutting.sheets.tree import Leaf, Tree, stacked

SEED = 20_000_003  # any would do; a fixed one gives the same plan for the same task
TRIES_BEFORE_BLOCKS = 60
SETS_REPACKED = 3
MOST_BLOCKS = 8000  # above which they are given up; where they have paid they were fewer
TRIES_PER_ROUND = 16
MOVES_AT_FIRST = 4  # of the moves, one in so many goes before all that is slower
CLOSE = ((40, 8), (100, 30))  # blocks kept while sheets are filled; moves for a piece laid so
SHEETS_IN_A_ROUND = 2  # that are filled anew
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


class Search:
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
        self.stop = stop

    def cheaper_than(self, held: Holding, low: Floor) -> tuple[Holding | None, Floor]:
        sets = cheaper(self.depot, held.cost)
        if not sets:
            return None, low
        found = self._packed(sets, min(self.tries, TRIES_BEFORE_BLOCKS))
        if found is None:
            found = self._repacked(sets, self.moves // MOVES_AT_FIRST)
        if found is None:
            found, low = self._from_blocks(held, low)
        if found is None and held.cost > low.cost:
            found = self._filled_close(held, sets)
        if found is None and held.cost > low.cost:
            low = self._by_larger_pieces(held, low)
        if found is None and held.cost > low.cost and self._may_choose(sets):
            found = (
                self._pooled(held)
                or self._packed(sets, self.tries)
                or self._repacked(sets, self.moves)
            )
        return found, low

    def _may_choose(self, sets: list[Counts]) -> bool:
        """Whether there is more to look at than sheets of one kind, which blocks fill closer than
        any number of packings.
        """
        made = self.depot.whole
        has_bad = any(each.bad for each in made.sheets)
        return len(sets) > 1 or made.task.wishes.strips or has_bad

    def _pooled(self, held: Holding) -> Holding | None:
        """Ways to fill one sheet, the cheapest choice of them."""
        if self.rounds <= 0 or self.stop():
            return None
        pool = Pool(self.depot, self.random)
        pool.fill(self.rounds)
        self.rounds //= 2
        if pool.least_cost > held.cost - 1 + HAIR:
            return None  # not even a mixture of the ways is cheaper
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

    def _filled_close(self, held: Holding, sets: list[Counts]) -> Holding | None:
        """The set with most area, each of its sheets filled as close as can be: in haste first,
        then with more care.
        """
        if self.depot.whole.task.wishes.strips:
            return None
        kinds = [kind for kind, count in enumerate(sets[0]) for _ in range(count)]
        in_a_round = SHEETS_IN_A_ROUND * -(-sum(self.depot.demand) // len(kinds))
        for width, dear in CLOSE:
            rounds = self.effort.moves // (dear * in_a_round)
            if not rounds or self.stop():
                break
            cover = close_cover(self.depot.whole, kinds, rounds, self.stop, width)
            if cover is not None and cover.cost < held.cost:
                return of_blocks(self.depot, cover)
        return None

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
        cover = exact_cover(self.depot.whole, self.nodes, MOST_BLOCKS)
        self.nodes = 0
        if cover is None:
            return None, low
        if cover.lower_bound > low.cost:
            low = Floor(cover.lower_bound, COVERS)
        if cover.cost >= held.cost or self.depot.whole.task.wishes.strips:
            return None, low
        return of_blocks(self.depot, cover), low

    def _repacked(self, sets: list[Counts], moves: int) -> Holding | None:
        """The sets that come nearest to holding all, their sheets packed anew."""
        if not moves:
            return None
        self.moves -= moves
        some = (sets * SETS_REPACKED)[: max(SETS_REPACKED, min(len(sets), 4 * SETS_REPACKED))]
        starts = sorted(
            (self._start(counts) for counts in some),
            key=lambda each: self.depot.area(each.unplaced),
        )[:SETS_REPACKED]
        for at, start in enumerate(starts):
            share = moves // (len(starts) - at)
            moves -= share
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
            starts.append(stowed(self.depot, self.depot.demand, bins, manner))
        return min(starts, key=lambda each: self.depot.area(each.unplaced))


def stowed(depot: Depot, demand: list[int], bins: list[Bin], manner: Manner) -> Stowed:
    packed = depot.pack(depot.lot(demand, bins), manner, must=False)
    places = [at for at, _ in packed.opened]
    return Stowed(bins, dict(zip(places, depot.filled(packed, bins), strict=True)), packed.unplaced)


def of_blocks(depot: Depot, cover: Cover) -> Holding:
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
