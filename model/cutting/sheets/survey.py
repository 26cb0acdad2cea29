"""What a tree of cuts means at the saw: its rows of cuts, what they leave, how far the blade goes.

A row is all cuts that one piece of wood gets in one way. They may be made in any order, so that
the order can serve the settings; where the members fill the wood, the last is left without a cut.
"""

from __future__ import annotations

from typing import NamedTuple

from model.cutting.sheets.tree import Leaf, Tree, is_first_cut

RIP_KIND, CROSSCUT_KIND = 0, 1

Setting = tuple[int, int]  # rip or crosscut, extent with kerf


class Row(NamedTuple):
    """Cuts of one kind. `members` are (extent, row inside or -1); `is_full` when they fill the
    wood, `is_fixed` when their order is (the first cut of a sheet).
    """

    kind: int
    members: tuple[tuple[int, int], ...]
    is_full: bool
    is_fixed: bool


class Survey(NamedTuple):
    """`rows` with the outer ones first; `rests` are (along x, along y) of what is left over, with
    kerf; `length` is how far the blade goes.
    """

    rows: tuple[Row, ...]
    rests: tuple[tuple[int, int], ...]
    cuts: int
    length: int


def survey(tree: Tree | None, x: int, y: int) -> Survey:
    """The tree in a room of these extents."""
    made = _Surveyor()
    made.visit(tree, x, y)
    rows = tuple(row for row in made.rows if row is not None)
    return Survey(rows, tuple(made.rests), made.cuts, made.length)


class _Surveyor:
    def __init__(self) -> None:
        self.rows: list[Row | None] = []
        self.rests: list[tuple[int, int]] = []
        self.cuts = 0
        self.length = 0

    def visit(self, tree: Tree | None, x: int, y: int) -> int:
        """The place of the row that cuts it, -1 where none does."""
        if tree is None:
            self.rests.append((x, y))
            return -1
        if isinstance(tree, Leaf):
            if tree.y < y:
                return self._row(RIP_KIND, (tree,), x, y, False)
            if tree.x < x:
                return self._row(CROSSCUT_KIND, (tree,), x, y, False)
            return -1
        kind = RIP_KIND if tree.way == "rip" else CROSSCUT_KIND
        return self._row(kind, tree.members, x, y, is_first_cut(tree))

    def _row(self, kind: int, members: tuple[Tree, ...], x: int, y: int, is_fixed: bool) -> int:
        at = len(self.rows)
        self.rows.append(None)
        made = []
        left, across = (y, x) if kind == RIP_KIND else (x, y)
        last = len(members) - 1
        for place, each in enumerate(members):
            extent = each.y if kind == RIP_KIND else each.x
            if is_fixed and place == last:
                extent = left
            left -= extent
            inside = (
                self.visit(each, x, extent) if kind == RIP_KIND else self.visit(each, extent, y)
            )
            made.append((extent, inside))
        if left:
            self.rests.append((x, left) if kind == RIP_KIND else (left, y))
        cuts = len(made) - (not left)
        self.cuts += cuts
        self.length += cuts * across
        self.rows[at] = Row(kind, tuple(made), not left, is_fixed)
        return at
