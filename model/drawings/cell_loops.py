"""The loops around a set of cells of a grid, their corners only."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator

import numpy as np

from model.drawings.paper import Point
from model.parts.pieces import Bools, Floats

Loop = tuple[Point, ...]
_Node = tuple[int, int]


def loops(inside: Bools, x: Floats, y: Floats) -> tuple[Loop, ...]:
    """Loops around cells (n, m) between lines x (n + 1,) and y (m + 1,), mm.

    What is inside lies to the left: outer loops turn left, loops around holes turn right. Cells
    that touch at a mere corner are parted there.
    """
    ahead: dict[_Node, list[_Node]] = defaultdict(list)
    for here, there in _sides(inside):
        ahead[here].append(there)
    found = []
    while ahead:
        nodes = _walked(ahead, min(ahead))
        corners = [node for node, before, after in _with_neighbours(nodes)
                   if (before[0] == node[0]) != (node[0] == after[0])]  # fmt: skip
        found.append(tuple((float(x[i]), float(y[j])) for i, j in corners))
    return tuple(found)


def _sides(inside: Bools) -> Iterator[tuple[_Node, _Node]]:
    """The sides of cells that have no cell beyond, with the cell on their left."""
    padded = np.pad(inside, 1)
    for i, j in np.argwhere(inside).tolist():
        if not padded[i + 1, j]:
            yield (i, j), (i + 1, j)
        if not padded[i + 2, j + 1]:
            yield (i + 1, j), (i + 1, j + 1)
        if not padded[i + 1, j + 2]:
            yield (i + 1, j + 1), (i, j + 1)
        if not padded[i, j + 1]:
            yield (i, j + 1), (i, j)


def _walked(ahead: dict[_Node, list[_Node]], start: _Node) -> list[_Node]:
    """One loop, taken out of what is ahead; where two ways part, the one to the left."""
    nodes = [start]
    here, way = start, (1, 0)
    while True:
        ways = ahead[here]
        there = max(ways, key=lambda node: _turn(way, (node[0] - here[0], node[1] - here[1])))
        ways.remove(there)
        if not ways:
            del ahead[here]
        way = (there[0] - here[0], there[1] - here[1])
        here = there
        if here == start:
            return nodes
        nodes.append(here)


def _turn(way: _Node, following: _Node) -> int:
    """1 to the left, 0 straight on, -1 to the right."""
    return way[0] * following[1] - way[1] * following[0]


def _with_neighbours(nodes: list[_Node]) -> Iterator[tuple[_Node, _Node, _Node]]:
    yield from zip(nodes, nodes[-1:] + nodes[:-1], nodes[1:] + nodes[:1], strict=True)
