"""How a room is cut up, as nested stacks: side by side along x, or one above the other.

A stack is as large as its members need, so that what is left over stays in one: every tree is told
by its members alone. A member smaller than its stack across is cut to size by one more cut. All
numbers are those of `Whole`.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from model.cutting.record import Way
from model.cutting.sheets.packing import Packed, Run


class Leaf(NamedTuple):
    """A unit of a size as it lies; `is_turned` when its `along` lies across the sheet."""

    x: int
    y: int
    size: int
    is_turned: bool


class Stack(NamedTuple):
    """Members cut off one after another: `rip` one above the other, `crosscut` side by side.

    No member is a stack of the same way, except the two parts of a first cut (`first_cut`).
    """

    x: int
    y: int
    way: Way
    members: tuple[Tree, ...]


Tree = Leaf | Stack


def extent_of(tree: Tree, way: Way) -> int:
    """How much a stack of this way takes for it."""
    return tree.y if way == "rip" else tree.x


def is_first_cut(stack: Stack) -> bool:
    """Whether it only parts a sheet in two: the second part is all that the first leaves."""
    last = stack.members[-1]
    return isinstance(last, Stack) and last.way == stack.way


def stacked(way: Way, members: list[Tree]) -> Tree:
    """Members in one stack, those of the same way taken apart; one alone is no stack."""
    flat: list[Tree] = []
    for each in members:
        if isinstance(each, Stack) and each.way == way:
            flat += each.members
        else:
            flat.append(each)
    if len(flat) < 2:
        return flat[0]
    if way == "rip":
        return Stack(max(each.x for each in flat), sum(each.y for each in flat), way, tuple(flat))
    return Stack(sum(each.x for each in flat), max(each.y for each in flat), way, tuple(flat))


def leaves(tree: Tree | None) -> Iterator[Leaf]:
    """The leaves in order."""
    waiting = [tree] if tree is not None else []
    while waiting:
        each = waiting.pop()
        if isinstance(each, Leaf):
            yield each
        else:
            waiting += reversed(each.members)


def trees(packed: Packed, lies: tuple[int, ...]) -> dict[int, Tree]:
    """The trees by the name of the rest that they fill; of rooms and of all that is in them.

    `lies` holds each size's extent along x when it is not turned.
    """
    grown: dict[int, Tree] = {}
    for name in sorted(packed.runs, reverse=True):  # a rest is named after the one it is part of
        tree = _grown(packed.runs[name], grown, lies)
        grown[name] = tree
    return grown


def _grown(run: Run, grown: dict[int, Tree], lies: tuple[int, ...]) -> Tree:
    size, dx, dy, count, is_rip, right, above = run
    row: list[Tree] = [Leaf(dx, dy, size, dx != lies[size])] * count
    inner: Way = "crosscut" if is_rip else "rip"
    outer: Way = "rip" if is_rip else "crosscut"
    near, far = (right, above) if is_rip else (above, right)
    low = stacked(inner, [*row, *_present(grown, near)])
    return stacked(outer, [low, *_present(grown, far)])


def _present(grown: dict[int, Tree], name: int) -> tuple[Tree, ...]:
    tree = grown.get(name)
    return () if tree is None else (tree,)
