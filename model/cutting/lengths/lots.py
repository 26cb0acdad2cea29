"""Pieces as the planners count them: whole numbers, like pieces together, rows as one piece.

Whole numbers are nanometres: every size that a maker can write (a 1/128 in, a 0.01 mm) is one of
them, so that six pieces of a sixth just fit.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass

from model.cutting.record import Piece, Task
from model.units import Mm

NM = 1_000_000
_DUST = 0.01  # of a nanometre: what floating point adds to a size that was meant to be whole


def at_least(size: Mm) -> int:
    """Nanometres that hold the size."""
    return math.ceil(size * NM - _DUST)


def at_most(size: Mm) -> int:
    """Nanometres that the size holds."""
    return math.floor(size * NM + _DUST)


def mm(whole: int) -> Mm:
    """Back to mm."""
    return whole / NM


@dataclass(frozen=True)
class Named:
    """One piece of a strip; `along` and `across` are its sizes on the stock."""

    piece: Piece
    number: int
    along: int
    across: int
    turned: bool


@dataclass(frozen=True)
class Strip:
    """What leaves the saw as one: a single piece, or a row of pieces end to end."""

    named: tuple[Named, ...]
    row: str = ""
    stays_whole: bool = False

    @property
    def marks(self) -> tuple[str, ...]:
        return tuple(each.piece.mark for each in self.named)


@dataclass(frozen=True)
class Lot:
    """Strips of one size: the planners need not tell them apart."""

    along: int
    across: int
    strips: tuple[Strip, ...]

    @property
    def demand(self) -> int:
        return len(self.strips)

    @property
    def area(self) -> int:
        return self.along * self.across


def lots(task: Task, across_matters: bool = True) -> tuple[Lot, ...]:
    """All pieces of a task by size, the longest (then widest) first.

    Where widths do not matter, the grain of a stick runs along all that is cut from it.
    """
    kerf = at_least(task.kerf)
    by_size: dict[tuple[int, int], list[Strip]] = {}
    for strip in _strips(task.pieces, across_matters):
        along = sum(each.along + kerf for each in strip.named) - kerf
        across = max(each.across for each in strip.named) if across_matters else 0
        by_size.setdefault((along, across), []).append(strip)
    return tuple(
        Lot(along, across, tuple(by_size[along, across]))
        for along, across in sorted(by_size, reverse=True)
    )


def _strips(pieces: tuple[Piece, ...], may_turn: bool) -> Iterator[Strip]:
    rows: dict[str, list[Piece]] = {}
    for piece in pieces:
        if piece.row:
            rows.setdefault(piece.row, []).append(piece)
        else:
            yield from (Strip((each,)) for each in _named(piece, may_turn))
    for row, members in rows.items():
        named = tuple(each for piece in members for each in _named(piece, may_turn))
        yield Strip(named, row, any(piece.stays_whole for piece in members))


def _named(piece: Piece, may_turn: bool) -> Iterator[Named]:
    turned = may_turn and piece.grain == "width"
    sizes = (piece.width, piece.length) if turned else (piece.length, piece.width)
    along, across = map(at_least, sizes)
    for number in range(piece.first, piece.first + piece.quantity):
        yield Named(piece, number, along, across, turned)
