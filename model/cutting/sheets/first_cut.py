"""How a sheet is parted in two at first, so that one person can handle what is left.

A first cut should leave no part over the limits of the wishes, unless it is a single piece, or an
offcut from which nothing more is cut. Exact halves are hardly ever to be had: up to a tenth of the
sheet more is let pass, and each further tenth begun counts one.
"""

from __future__ import annotations

from collections import Counter
from math import ceil
from typing import NamedTuple

from model.cutting.record import Stock, Way, Wishes
from model.cutting.sheets.tree import Leaf, Stack, Tree, extent_of

STEP = 0.1  # of the sheet
MOST_SUMS = 300  # first cuts that are looked at
MOST_KEPT = 3  # ways to part a sheet that are as good as each other
OTHER: dict[Way, Way] = {"rip": "crosscut", "crosscut": "rip"}


class Handling(NamedTuple):
    """What may be handled of a sheet: `most` is the share of it, `area` that of the whole sheet in
    whole numbers; `strips` when sheets are ripped into strips first.
    """

    most: float
    area: int
    kerf: int
    strips: bool


class Parted(NamedTuple):
    """A tree with its first cut settled, and by how many steps that is over the limits."""

    steps: int
    tree: Tree | None


class _Option(NamedTuple):
    steps: int
    is_new: bool
    imbalance: int
    low: tuple[tuple[int, int], ...]


def handling(stock: Stock, wishes: Wishes, area: int, kerf: int) -> Handling:
    """The limits for a kind of sheet of this `area`."""
    most = wishes.largest_share
    weight = stock.kg_per_m2 * stock.length * stock.width / 1e6
    if weight > 0:
        most = min(most, wishes.heaviest_kg / weight)
    return Handling(most, area, kerf, wishes.strips)


def parted(tree: Tree | None, x: int, y: int, limits: Handling) -> tuple[Parted, ...]:
    """Ways to begin with the tree in a room, all as easy to handle as can be, at least one."""
    if tree is None:
        return (Parted(0, None),)
    found: list[Parted] = []
    for base in _bases(tree, x, y, limits.strips):
        found += _begun(base, x, y, limits)
    least = min(each.steps for each in found)
    return tuple(each for each in found if each.steps == least)


def _bases(tree: Tree, x: int, y: int, strips: bool) -> list[Tree]:
    """The tree as it is, and cut out of the room as a whole where it leaves a margin across."""
    way: Way = "crosscut" if isinstance(tree, Leaf) else OTHER[tree.way]
    has_margin = extent_of(tree, way) < (y if way == "rip" else x)
    whole = Stack(tree.x, tree.y, way, (tree,))
    if isinstance(tree, Leaf):
        return [whole, tree] if has_margin and not strips else [tree]
    if strips:
        return [whole] if has_margin and tree.way == "crosscut" else [tree]
    return [whole, tree] if has_margin else [tree]


def _begun(tree: Tree, x: int, y: int, limits: Handling) -> list[Parted]:
    if isinstance(tree, Leaf):
        way: Way = "rip" if tree.y < y else "crosscut"
        if extent_of(tree, way) == (y if way == "rip" else x):
            return [Parted(0, tree)]
        tree = Stack(tree.x, tree.y, way, (tree,))
        return [Parted(each.steps, tree.members[0]) for each in _begun(tree, x, y, limits)]
    options = sorted(_options(tree, x, y, limits))
    least = options[0].steps
    singles = [each for each in options if sum(n for _, n in each.low) == 1]
    if all(each.steps == least for each in singles):
        return [Parted(least, tree)]
    best = [each for each in options if each.steps == least][:MOST_KEPT]
    return [Parted(least, _split(tree, x, y, each.low)) for each in best]


def _options(tree: Stack, x: int, y: int, limits: Handling) -> list[_Option]:
    """First cuts: every extent that some of the members add up to."""
    whole, across = (y, x) if tree.way == "rip" else (x, y)
    extents = [extent_of(each, tree.way) for each in tree.members]
    known = set(extents)
    is_single = dict.fromkeys(extents, True)
    for extent, each in zip(extents, tree.members, strict=True):
        exact = isinstance(each, Leaf) and extent_of(each, OTHER[tree.way]) == across
        is_single[extent] = is_single[extent] and exact
    options = []
    for extent, low in _sums(extents).items():
        rest = whole - extent
        if not rest:
            continue
        left = len(extents) - sum(n for _, n in low)
        low_single = sum(n for _, n in low) == 1 and is_single[extent]
        # What lies behind the last piece goes back to the rack whole: nobody cuts it on.
        high_single = not left or (left == 1 and rest in is_single and is_single[rest])
        steps = max(
            0 if low_single else _steps(extent, across, limits),
            0 if high_single or rest <= limits.kerf else _steps(rest, across, limits),
        )
        options.append(_Option(steps, extent not in known, abs(2 * extent - whole), low))
    return options


def _sums(extents: list[int]) -> dict[int, tuple[tuple[int, int], ...]]:
    """Each extent that some members add up to, with how many of which: the fewest kinds first."""
    sums: dict[int, tuple[tuple[int, int], ...]] = {}
    for extent in sorted(set(extents), reverse=True):
        sums.setdefault(extent, ((extent, 1),))
    for extent, count in sorted(Counter(extents).items(), reverse=True):
        for base, low in [(0, ()), *sums.items()]:
            if any(each == extent for each, _ in low):
                continue
            for n in range(1, count + 1):
                if len(sums) < MOST_SUMS:
                    sums.setdefault(base + n * extent, (*low, (extent, n)))
    return sums


def _steps(extent: int, across: int, limits: Handling) -> int:
    share = (extent - limits.kerf) * (across - limits.kerf) / limits.area
    return max(0, ceil((share - limits.most - STEP) / STEP - 1e-9))


def _split(tree: Stack, x: int, y: int, low: tuple[tuple[int, int], ...]) -> Tree:
    """The stack cut in two at first: `low` says how many members of each extent come before."""
    wanted = dict(low)
    before: list[Tree] = []
    behind: list[Tree] = []
    for each in tree.members:
        extent = extent_of(each, tree.way)
        is_low = wanted.get(extent, 0) > 0
        wanted[extent] = wanted.get(extent, 0) - is_low
        (before if is_low else behind).append(each)
    if not behind:
        return tree
    left = (y if tree.way == "rip" else x) - sum(extent_of(each, tree.way) for each in tree.members)
    first = before[0] if len(before) == 1 else _stack(tree.way, before)
    if len(behind) == 1 and not left:
        return _stack(tree.way, [first, behind[0]])
    return _stack(tree.way, [first, _stack(tree.way, behind)])


def _stack(way: Way, members: list[Tree]) -> Stack:
    """Members in one stack, however they are."""
    along, up = [each.x for each in members], [each.y for each in members]
    if way == "rip":
        return Stack(max(along), sum(up), way, tuple(members))
    return Stack(sum(along), max(up), way, tuple(members))
