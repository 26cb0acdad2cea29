"""Pieces and stock made ready for the search: what may lie on what, in plain tuples."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property
from random import Random
from typing import NamedTuple

from model.cutting.sheets.blank import Blank
from model.cutting.sheets.packing import Bin, Lot, Manner, Packed, Ways, pack
from model.cutting.sheets.strips import pack_strips
from model.cutting.sheets.tree import Tree, leaves, trees
from model.cutting.whole import Whole

Counts = tuple[int, ...]  # by kind of sheet


class Filled(NamedTuple):
    """A sheet with its trees, one for each room of its blank; `holds` counts pieces by size."""

    blank: int
    trees: tuple[Tree | None, ...]
    holds: tuple[int, ...]


@dataclass(frozen=True)
class Depot:
    """`forms` are the blanks of each kind of sheet."""

    whole: Whole
    forms: tuple[tuple[Blank, ...], ...]

    @cached_property
    def blanks(self) -> tuple[Blank, ...]:
        """All blanks in one list, by which the search counts them."""
        return tuple(blank for forms in self.forms for blank in forms)

    @cached_property
    def demand(self) -> list[int]:
        return [size.demand for size in self.whole.sizes]

    @cached_property
    def areas(self) -> tuple[int, ...]:
        return tuple(size.area for size in self.whole.sizes)

    @cached_property
    def ways(self) -> tuple[Ways, ...]:
        """How each size may lie on each kind of sheet."""
        made = self.whole
        return tuple(tuple(made.ways(size, sheet) for size in made.sizes) for sheet in made.sheets)

    @cached_property
    def least(self) -> tuple[int, int]:
        """The least room that any piece takes, along x and y."""
        all_ways = [way for ways in self.ways for each in ways for way in each]
        return min(x for x, _ in all_ways), min(y for _, y in all_ways)

    @cached_property
    def lies(self) -> tuple[int, ...]:
        return tuple(size.along for size in self.whole.sizes)

    @cached_property
    def most(self) -> Counts:
        """How many sheets of each kind there are; no plan takes more than one for each unit."""
        units = sum(self.demand)
        return tuple(
            units if sheet.quantity is None else min(sheet.quantity, units)
            for sheet in self.whole.sheets
        )

    @cached_property
    def opening(self) -> tuple[int, ...]:
        """Kinds in the order in which they are opened: what is on hand and small first."""
        sheets = self.whole.sheets
        return tuple(
            sorted(range(len(sheets)), key=lambda at: (sheets[at].cost, sheets[at].area, at))
        )

    def bins(self, counts: Counts, order: Sequence[int], random: Random | None = None) -> list[Bin]:
        """So many sheets of each kind in this order; a random blank of each with bad spans."""
        return [
            self.bin(kind, random)
            for kind in order
            for _ in range(min(counts[kind], self.most[kind]))
        ]

    def bin(self, kind: int, random: Random | None = None) -> Bin:
        """One sheet of a kind, closed."""
        forms = self.forms[kind]
        form = int(random.random() * len(forms)) if random and len(forms) > 1 else 0
        first = sum(len(each) for each in self.forms[:kind])
        return Bin(first + form, forms[form].rooms, kind)

    def lot(self, demand: list[int], bins: list[Bin]) -> Lot:
        return Lot(demand, self.ways, bins, self.least)

    def pack(self, lot: Lot, manner: Manner, must: bool = True) -> Packed:
        """By strips alone where the maker wishes that."""
        if self.whole.task.wishes.strips:
            return pack_strips(lot, manner, must)
        return pack(lot, manner, must)

    def filled(self, packed: Packed, bins: list[Bin]) -> list[Filled]:
        """The opened bins with their trees."""
        grown = trees(packed, self.lies)
        made = []
        for at, first in packed.opened:
            names = range(first, first + len(bins[at].rooms))
            own = tuple(grown.get(name) for name in names)
            if any(tree is not None for tree in own):
                made.append(Filled(bins[at].blank, own, self.holds(own)))
        return made

    def holds(self, own: Sequence[Tree | None]) -> tuple[int, ...]:
        """How many of each size are in the trees."""
        counts = [0] * len(self.demand)
        for tree in own:
            for leaf in leaves(tree):
                counts[leaf.size] += 1
        return tuple(counts)

    def cost(self, sheets: Sequence[Filled]) -> int:
        return sum(self.whole.sheets[self.blanks[each.blank].sheet].cost for each in sheets)

    def area(self, counts: Sequence[int]) -> int:
        """The area of so many pieces of each size."""
        return sum(count * area for count, area in zip(counts, self.areas, strict=True))
