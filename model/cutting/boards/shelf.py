"""A plan of boards at once: strips are ripped and filled one piece after the other."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import NamedTuple

from model.cutting.boards.pattern import Band, Cut, Lying, Pattern
from model.cutting.boards.rack import Board
from model.cutting.boards.reasons import holds
from model.cutting.lengths.lots import Lot

Counts = tuple[int, ...]


class Manner(NamedTuple):
    """How a shelf plan is made: pieces by `order`, boards by `choice`, and the share of a strip's
    width that a narrower piece may waste."""

    order: str
    choice: str
    waste: float


MANNERS = tuple(
    Manner(order, choice, waste)
    for choice in ("closest", "narrow", "large")
    for order in ("length", "area")
    for waste in (0.35, 1.0)
)


@dataclass
class _Strip:
    low: int
    high: int
    at: int  # where the next piece begins
    end: int
    lying: list[Lying] = field(default_factory=list)


@dataclass
class _Blank:
    x0: int
    x1: int
    y0: int
    y1: int
    strips: list[_Strip] = field(default_factory=list)

    @property
    def free(self) -> int:
        """Width that is not ripped yet."""
        return self.y1 - self.y0

    def open(self, width: int, kerf: int) -> _Strip:
        strip = _Strip(self.y0, self.y0 + width, self.x0, self.x1)
        self.strips.append(strip)
        self.y0 += width + kerf
        return strip

    def cut(self) -> Cut:
        bands = (Band(each.low, each.high, tuple(each.lying)) for each in self.strips)
        return Cut("rip", tuple(bands))


@dataclass
class _Shelves:
    """The plan while it is made."""

    boards: Sequence[Board]
    sizes: Sequence[Lot]
    kerf: int
    manner: Manner
    left: list[int | None]
    opened: list[tuple[int, list[_Blank]]] = field(default_factory=list)

    def put(self, lot: int) -> bool:
        """One strip of the lot into the least wasteful place; False where there is none."""
        size = self.sizes[lot]
        strip = self._open_strip(size) or self._new_strip(size) or self._new_board(size)
        if strip is None:
            return False
        strip.lying.append(Lying(lot, strip.at))
        strip.at += size.along + self.kerf
        return True

    def _open_strip(self, size: Lot) -> _Strip | None:
        least = size.across / (1 - self.manner.waste) if self.manner.waste < 1 else 1e18
        fits = [
            strip
            for _, blanks in self.opened
            for blank in blanks
            for strip in blank.strips
            if size.across <= strip.high - strip.low <= least and strip.at + size.along <= strip.end
        ]
        return min(fits, key=lambda s: (s.high - s.low, s.end - s.at), default=None)

    def _new_strip(self, size: Lot) -> _Strip | None:
        fits = [
            blank
            for _, blanks in self.opened
            for blank in blanks
            if blank.free >= size.across and blank.x1 - blank.x0 >= size.along
        ]
        blank = min(fits, key=lambda b: (b.free - size.across, b.x1 - b.x0), default=None)
        return blank.open(size.across, self.kerf) if blank else None

    def _new_board(self, size: Lot) -> _Strip | None:
        fits = [
            (self._worth(board, size), number)
            for number, board in enumerate(self.boards)
            if self.left[number] != 0 and any(holds(blank, size) for blank in board.forms[0])
        ]
        if not fits:
            return None
        number = min(fits)[1]
        count = self.left[number]
        self.left[number] = None if count is None else count - 1
        blanks = [
            _Blank(b.rect.x0, b.rect.x1, b.rect.y0, b.rect.y1) for b in self.boards[number].forms[0]
        ]
        self.opened.append((number, blanks))
        return self._new_strip(size)

    def _worth(self, board: Board, size: Lot) -> tuple[float, ...]:
        dear = (board.cost / max(board.own_cost, 1), board.own_cost)
        width = int(board.stock.width * 1000)
        if self.manner.choice == "closest":
            return (board.own_cost, *dear)
        return (width, *dear) if self.manner.choice == "narrow" else (dear[0], -board.own_cost)


def shelf(
    boards: Sequence[Board], sizes: Sequence[Lot], demand: Counts, kerf: int, manner: Manner
) -> tuple[tuple[Pattern, ...], Counts]:
    """Patterns, and how many of each lot found no room."""
    shelves = _Shelves(boards, sizes, kerf, manner, [each.quantity for each in boards])
    missing = list(demand)
    key = {
        "length": lambda lot: (-sizes[lot].along, -sizes[lot].across),
        "area": lambda lot: (-sizes[lot].area, -sizes[lot].along),
    }[manner.order]
    for lot in sorted(range(len(sizes)), key=key):
        for _ in range(demand[lot]):
            if not shelves.put(lot):
                break
            missing[lot] -= 1
    patterns = (
        Pattern(board, 0, tuple(blank.cut() for blank in blanks))
        for board, blanks in shelves.opened
    )
    return tuple(patterns), tuple(missing)
