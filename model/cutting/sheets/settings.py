"""Which settings a set of surveyed rooms needs, and in which order all their cuts are made."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from typing import NamedTuple

from model.cutting.sheets.survey import Row, Setting
from model.cutting.sheets.tree import Leaf, Tree


class Sawn(NamedTuple):
    """`changes` of setting when the cuts are grouped over all rows; `order` of each row's members,
    the one without a cut last.
    """

    changes: int
    order: tuple[tuple[int, ...], ...]


def spared(rows: Sequence[Row]) -> tuple[set[Setting], list[int]]:
    """The settings that cannot be spared, and for each row the member that is left without a cut,
    -1 where each is cut: in a full row one is, best the one whose setting nothing else needs.
    """
    needed: set[Setting] = set()
    open_: list[tuple[int, list[int]]] = []
    last = [-1] * len(rows)
    for at, (kind, members, is_full, is_fixed) in enumerate(rows):
        if not is_full:
            needed.update((kind, extent) for extent, _ in members)
        elif is_fixed:
            last[at] = len(members) - 1
            needed.update((kind, extent) for extent, _ in members[:-1])
        else:
            count = Counter(extent for extent, _ in members)
            needed.update((kind, extent) for extent, n in count.items() if n > 1)
            open_.append((at, [extent for extent, n in count.items() if n == 1]))
    for at, single in sorted(open_, key=lambda each: (len(each[1]), each[0])):
        kind, members, _, _ = rows[at]
        free = [extent for extent in single if (kind, extent) not in needed]
        chosen = min(free or [extent for extent, _ in members])
        last[at] = next(n for n, (extent, _) in enumerate(members) if extent == chosen)
        needed.update((kind, extent) for extent in single if extent != chosen)
    return needed, last


def sawn(rows: Sequence[Row], roots: Sequence[int]) -> Sawn:
    """List scheduling as `model.cutting.order` does it, but with the order within rows still open:
    a setting that can be finished first, else the one with most cuts ready.

    `roots` are the rows that wait for no other.
    """
    saw = _Saw(rows)
    for at in roots:
        saw.open(at)
    changes = 0
    while saw.ready:
        saw.make(saw.chosen())
        changes += 1
    return Sawn(changes, tuple(tuple(each) for each in saw.order))


class _Saw:
    """Rows while they are cut. A member is (row, place in the row)."""

    def __init__(self, rows: Sequence[Row]) -> None:
        self.rows = rows
        self.last = spared(rows)[1]
        self.order: list[list[int]] = [[] for _ in rows]
        self.todo = [len(row.members) for row in rows]
        self.ready: dict[Setting, list[tuple[int, int]]] = {}
        self.machine = -1
        self.left: Counter[Setting] = Counter()
        for (kind, members, _, _), last in zip(rows, self.last, strict=True):
            self.left.update((kind, extent) for n, (extent, _) in enumerate(members) if n != last)

    def open(self, at: int) -> None:
        kind, members, _, _ = self.rows[at]
        last = self.last[at]
        for n, (extent, _) in enumerate(members):
            if n != last:
                self.ready.setdefault((kind, extent), []).append((at, n))

    def chosen(self) -> Setting:
        machine, left = self.machine, self.left
        finished = [each for each, cuts in self.ready.items() if len(cuts) == left[each]]
        if finished:
            return min(finished, key=lambda each: (each[0] != machine, each[0], -each[1]))
        ready = self.ready
        return min(
            ready, key=lambda each: (-len(ready[each]), each[0] != machine, each[0], -each[1])
        )

    def make(self, setting: Setting) -> None:
        """All cuts of the setting, those included that it sets free itself."""
        self.machine = setting[0]
        while cuts := self.ready.pop(setting, None):
            self.left[setting] -= len(cuts)
            for at, n in cuts:
                self._cut_off(at, n)
                if self.todo[at] == 1 and self.last[at] >= 0:
                    self._cut_off(at, self.last[at])

    def _cut_off(self, at: int, n: int) -> None:
        self.order[at].append(n)
        self.todo[at] -= 1
        inside = self.rows[at].members[n][1]
        if inside >= 0:
            self.open(inside)


def ordered(
    tree: Tree | None, rows: Sequence[Row], order: Sequence[Sequence[int]], at: int
) -> Tree | None:
    """The tree with its members in the order in which they are cut off; `at` is its row."""
    if tree is None or isinstance(tree, Leaf):
        return tree
    members = [
        ordered(each, rows, order, row)
        for each, (_, row) in zip(tree.members, rows[at].members, strict=True)
    ]
    return tree._replace(members=tuple(each for n in order[at] if (each := members[n]) is not None))
