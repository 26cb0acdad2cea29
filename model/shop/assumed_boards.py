"""Boards that stand for what a yard might have, until the maker types in real ones.

Random widths and lengths, as hardwood is sold by the board foot, and beside these the wide boards
that have to be asked for. Drawn by fixed lots: the same bed has the same boards.
"""

from __future__ import annotations

import math
import random
from collections.abc import Iterator, Sequence
from dataclasses import replace
from functools import lru_cache

from model.bed import Design
from model.cutting.plan import plan
from model.cutting.record import Effort, Piece, Stock, Task, Trim
from model.shop.board_stock import end_trim
from model.units import INCH, Mm

_FOOT: Mm = 12 * INCH
LENGTHS = (6, 12)  # feet, whole ones: common practice
WIDTHS = (4 * INCH, 10 * INCH, 6.5 * INCH)  # least, most, most frequent: common practice
_EIGHTH = INCH / 8  # to what widths are measured
_FIRST, _MORE = 1.2, 0.1  # of the pieces' area: how much is drawn at first, and then more
_MOST = 4.0
_QUICK = Effort(tries=4, moves=0, nodes=0, racks=0)


def longest_length(design: Design) -> Mm:
    """What the longest board of a yard has between its end trims."""
    trim = end_trim(design)
    return LENGTHS[1] * _FOOT - trim.left - trim.right


@lru_cache(maxsize=256)
def assumed_boards(task: Task, trim: Trim, number: int = 1) -> tuple[Stock, ...]:
    """Boards from which a quick plan cuts all pieces of a task; `task.stock` is left out.

    What no board of a yard can hold stays without: the plan says so.
    """
    asked = list(_asked_for(task, trim.left + trim.right))
    drawn = _drawn(random.Random(number))
    net = sum(piece.quantity * piece.length * piece.width for piece in task.pieces)
    sizes, share = list(asked), _FIRST
    while True:
        while sum(a * b for a, b in sizes) < share * net:
            sizes.append(next(drawn))
        stock = tuple(
            Stock(
                key=f"yard board {n}", length=round(a, 4), width=round(b, 4), quantity=1,
                trim=trim, is_assumed=True,
            )
            for n, (a, b) in enumerate(sizes, 1)
        )  # fmt: skip
        if share > _MOST or not plan(replace(task, stock=stock), _QUICK).left_out:
            return stock
        share += _MORE


def _drawn(draw: random.Random) -> Iterator[tuple[Mm, Mm]]:
    """Length and width of one board after the other."""
    least, most, usual = WIDTHS
    while True:
        width = draw.triangular(least, most, usual)
        yield draw.randint(*LENGTHS) * _FOOT, round(width / _EIGHTH) * _EIGHTH


def _asked_for(task: Task, trims: Mm) -> Iterator[tuple[Mm, Mm]]:
    """The boards that have to be asked for: wide ones, of which a yard has few.

    Pieces wider than the most frequent width lie end to end on boards of the greatest length.
    """
    wide = sorted(_strips(task), key=lambda strip: (-strip[1], -strip[0]))
    boards: list[list[Mm]] = []  # length used, width
    for length, width in wide:
        if width <= WIDTHS[2]:
            break
        room = LENGTHS[1] * _FOOT - trims
        board = next((b for b in boards if b[0] + task.kerf + length <= room), None)
        if board is None:
            boards.append([length, width])
        else:
            board[0] += task.kerf + length
    for used, width in boards:
        feet = max(LENGTHS[0], math.ceil((used + trims) / _FOOT - 1e-9))
        yield feet * _FOOT, math.ceil(width / _EIGHTH - 1e-9) * _EIGHTH


def _strips(task: Task) -> list[tuple[Mm, Mm]]:
    """Length and width of every piece, those of a row end to end."""
    rows: dict[str, list[Piece]] = {}
    found: list[tuple[Mm, Mm]] = []
    for piece in task.pieces:
        if piece.row:
            rows.setdefault(piece.row, []).append(piece)
        else:
            found += [(piece.length, piece.width)] * piece.quantity
    return found + [_strip(row, task.kerf) for row in rows.values()]


def _strip(row: Sequence[Piece], kerf: Mm) -> tuple[Mm, Mm]:
    count = sum(piece.quantity for piece in row)
    length = sum(piece.quantity * piece.length for piece in row)
    return length + (count - 1) * kerf, row[0].width
