"""Cut trees in whole numbers, and the patterns and covers made of them."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import NamedTuple

from model.cutting.record import Way


class Leaf(NamedTuple):
    """A piece of the size numbered `size`: along the sheet and across it."""

    size: int
    length: int
    width: int


class Join(NamedTuple):
    """Two blocks that one cut parts: a crosscut at x = `at`, or a rip at y = `at`, from the lower
    left corner of the block. `low` begins there, `high` at the cut; the space beside the smaller
    of them is left over. `length` and `width` are what both take up.
    """

    way: Way
    at: int
    low: Tree
    high: Tree
    length: int
    width: int


Tree = Leaf | Join


@dataclass(frozen=True, kw_only=True)
class Pattern:
    """One way to fill a sheet (numbered as in the question) from its lower left corner."""

    sheet: int
    counts: tuple[int, ...]
    tree: Tree


@dataclass(frozen=True, kw_only=True)
class Cover:
    """Patterns that hold every piece exactly once, one for each sheet used, and their cost.

    No plan that is cut from edge to edge costs less than `lower_bound`.
    """

    patterns: tuple[Pattern, ...]
    cost: int
    lower_bound: int

    @property
    def is_proven(self) -> bool:
        return self.cost <= self.lower_bound


def leaves(tree: Tree) -> Iterator[Leaf]:
    """The pieces of a tree, low before high."""
    waiting = [tree]
    while waiting:
        each = waiting.pop()
        if isinstance(each, Leaf):
            yield each
        else:
            waiting += (each.high, each.low)


def counted(tree: Tree, sizes: int) -> tuple[int, ...]:
    """How many pieces of each size."""
    counts = [0] * sizes
    for leaf in leaves(tree):
        counts[leaf.size] += 1
    return tuple(counts)


def joined(way: Way, low: Tree, high: Tree) -> Join:
    """Both end to end along the sheet (a crosscut parts them) or side by side (a rip does)."""
    if way == "crosscut":
        size = low.length + high.length, max(low.width, high.width)
        return Join(way, low.length, low, high, *size)
    return Join(way, low.width, low, high, max(low.length, high.length), low.width + high.width)


def without(tree: Tree, surplus: dict[int, int]) -> Tree | None:
    """The tree less pieces that are not wanted, by size; `surplus` is counted down."""
    if isinstance(tree, Leaf):
        if surplus.get(tree.size, 0) > 0:
            surplus[tree.size] -= 1
            return None
        return tree
    high = without(tree.high, surplus)
    low = without(tree.low, surplus)
    if low is None or high is None:
        return low or high
    return joined(tree.way, low, high)
