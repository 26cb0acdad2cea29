"""From trees of whole numbers to layouts in mm: every cut with its kerf, every piece by name."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from typing import Any, NamedTuple

from model.cutting.record import Layout, Placed, Region, Use, Way
from model.cutting.sheets.blank import Blank, Frame, Room
from model.cutting.sheets.tree import Leaf, Stack, Tree, extent_of, is_first_cut
from model.cutting.whole import Unit, Whole


class Laid(NamedTuple):
    """A sheet with its cuts: a tree for each room of its blank, None where nothing is cut."""

    blank: Blank
    trees: tuple[Tree | None, ...]


class _Member(NamedTuple):
    """The piece of a unit at a place in its row."""

    unit: Unit
    at: int
    is_turned: bool


class _Spot(NamedTuple):
    """Where a region lies; its extents count a kerf behind it."""

    x: int
    y: int
    along: int
    across: int


_Inside = Tree | Frame | Room | _Member | None


def layouts(whole: Whole, sheets: Sequence[Laid]) -> tuple[Layout, ...]:
    """The sheets in order; units of equal size are handed out in the order of the task."""
    units = [iter(size.units) for size in whole.sizes]
    drawn = []
    for number, sheet in enumerate(sheets, 1):
        stock = whole.task.stock[whole.sheets[sheet.blank.sheet].stock]
        tree = _Drawing(whole, sheet, units).whole_sheet()
        drawn.append(Layout(number=number, stock=stock, tree=tree))
    return tuple(drawn)


class _Drawing:
    """One sheet while its regions are made."""

    def __init__(self, whole: Whole, sheet: Laid, units: list[Iterator[Unit]]) -> None:
        self.whole = whole
        self.sheet = sheet
        self.units = units
        self.kerf = whole.kerf
        self.least = whole.task.wishes.least_offcut

    def whole_sheet(self) -> Region:
        blank = self.sheet.blank
        return self._region(blank.frame, _Spot(0, 0, blank.length, blank.width), False)

    def _region(self, inside: _Inside, spot: _Spot, is_waste: bool) -> Region:
        """What is made of the wood at a spot; `is_waste` where an edge or bad wood lies in it."""
        if isinstance(inside, Room):
            return self._region(self.sheet.trees[inside.at], spot, False)
        if isinstance(inside, Frame):
            return self._row(inside.way, list(inside.parts), spot, True)
        if isinstance(inside, Stack):
            way = inside.way
            parts = [(extent_of(each, way), each) for each in inside.members]
            if is_first_cut(inside):
                parts[1] = _span(way, spot)[1] - _span(way, spot)[0] - parts[0][0], parts[1][1]
            return self._row(way, parts, spot, False)
        if isinstance(inside, Leaf):
            return self._leaf(inside, spot)
        if isinstance(inside, _Member):
            return self._piece(inside, spot)
        kept = min(self.whole.mm(spot.along - self.kerf), self.whole.mm(spot.across - self.kerf))
        use: Use = "offcut" if kept >= self.least and not is_waste else "waste"
        return self._wood(spot, use=use)

    def _leaf(self, leaf: Leaf, spot: _Spot) -> Region:
        """Cut to size where the wood is larger; then the piece, or the row cut apart."""
        if leaf.y < spot.across:
            return self._row("rip", [(leaf.y, leaf)], spot, False)
        if leaf.x < spot.along:
            return self._row("crosscut", [(leaf.x, leaf)], spot, False)
        unit = next(self.units[leaf.size])
        is_turned = unit.turned != leaf.is_turned
        members = [
            (self.whole.count(piece[2]) + self.kerf, _Member(unit, at, is_turned))
            for at, piece in enumerate(unit.pieces)
        ]
        region = self._row("rip" if is_turned else "crosscut", members, spot, False)
        return replace(region, row=unit.row, stays_whole=unit.stays_whole)

    def _piece(self, member: _Member, spot: _Spot) -> Region:
        mark, number, length, width = member.unit.pieces[member.at]
        corner = self.whole.mm(spot.x), self.whole.mm(spot.y)
        placed = Placed(mark, number, *corner, length, width, member.is_turned)
        return self._wood(spot, use="piece", placed=placed)

    def _row(
        self, way: Way, parts: Sequence[tuple[int, _Inside]], spot: _Spot, is_trim: bool
    ) -> Region:
        """Parts cut off one after another, and what is left behind the last."""
        kerf = self.kerf
        start, end = _span(way, spot)
        cuts: list[tuple[int, int, Region | None]] = []
        for extent, inside in parts:
            part = _part(way, spot, start, extent)
            low = self._region(inside, part, is_trim) if extent > kerf else None
            cuts.append((start, extent, low))
            start += extent
        rest = _part(way, spot, start, end - start)
        behind = self._region(None, rest, is_trim) if end - start > kerf else None
        if start == end:
            behind = cuts.pop()[2]
        for start, extent, low in reversed(cuts):
            wood = _part(way, spot, start, end - start)
            # Where next to nothing is left, the blade runs off the wood, behind the cut or before.
            blade = min(kerf, extent if low is None else end - start - extent)
            at = start if low is None else start + extent - kerf
            behind = self._wood(
                wood,
                cut=way,
                at=self.whole.mm(at),
                kerf=self.whole.mm(blade),
                low=low,
                high=behind,
                is_trim=is_trim,
            )
        assert behind is not None
        return behind

    def _wood(self, spot: _Spot, **told: Any) -> Region:
        mm = self.whole.mm
        return Region(
            x=mm(spot.x),
            y=mm(spot.y),
            length=mm(spot.along - self.kerf),
            width=mm(spot.across - self.kerf),
            **told,
        )


def _span(way: Way, spot: _Spot) -> tuple[int, int]:
    if way == "rip":
        return spot.y, spot.y + spot.across
    return spot.x, spot.x + spot.along


def _part(way: Way, spot: _Spot, start: int, extent: int) -> _Spot:
    if way == "rip":
        return _Spot(spot.x, start, spot.along, extent)
    return _Spot(start, spot.y, extent, spot.across)
