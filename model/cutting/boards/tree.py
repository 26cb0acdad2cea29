"""Boards with real pieces on them, as trees of cuts."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from functools import partial

from model.cutting.boards.pattern import Band, Cut, Pattern
from model.cutting.boards.rack import Blank, Board
from model.cutting.lengths.lots import Lot, Strip, at_least, at_most
from model.cutting.lengths.saw import Block, Rect, Saw
from model.cutting.record import Layout, Region, Task, Way

Waiting = list[list[Strip]]  # strips of each lot that no board has yet, the next one last


def layouts(
    task: Task, boards: Sequence[Board], sizes: Sequence[Lot], patterns: Iterable[Pattern]
) -> tuple[Layout, ...]:
    """The boards as they are cut, numbered; pieces are handed out in order.

    Strips that are no longer waiting are left out of the board: their place is waste or offcut.
    """
    waiting = [list(reversed(lot.strips)) for lot in sizes]
    made = []
    for number, pattern in enumerate(patterns, start=1):
        board = boards[pattern.board]
        tree = _board(task, board, pattern, sizes, waiting)
        made.append(Layout(number=number, stock=board.stock, tree=tree))
    return tuple(made)


def _board(
    task: Task, board: Board, pattern: Pattern, sizes: Sequence[Lot], waiting: Waiting
) -> Region:
    stock = board.stock
    rect = Rect(0, 0, at_most(stock.length), at_most(stock.width))
    bad = tuple(Rect(*map(at_most, b[:2]), *map(at_least, b[2:])) for b in stock.bad)
    saw = Saw(at_least(task.kerf), task.wishes.least_offcut, bad)
    blanks = board.forms[pattern.form]
    blocks = [
        Block(blank.rect.x0, blank.rect.x1, partial(saw.chain, way=cut.way, blocks=inside))
        for blank, cut in zip(blanks, pattern.cuts, strict=True)
        for inside in [_bands(saw, blank, cut, sizes, waiting)]
    ]
    low, high = at_least(stock.trim.lower), rect.y1 - at_least(stock.trim.upper)
    clear = partial(saw.chain, way="rip", is_trim=True)

    def trimmed(part: Rect, block: Block) -> Region:
        return clear(part, blocks=[Block(low, high, block.made)])

    ends = [block._replace(made=partial(trimmed, block=block)) for block in blocks]
    return saw.chain(rect, "crosscut", ends, is_trim=True)


def _bands(saw: Saw, blank: Blank, cut: Cut, sizes: Sequence[Lot], waiting: Waiting) -> list[Block]:
    blocks = []
    for band in cut.bands:
        inside = _lying(saw, band, cut, sizes, waiting)
        other: Way = "crosscut" if cut.way == "rip" else "rip"
        blocks.append(Block(band.low, band.high, partial(saw.chain, way=other, blocks=inside)))
    return blocks


def _lying(saw: Saw, band: Band, cut: Cut, sizes: Sequence[Lot], waiting: Waiting) -> list[Block]:
    blocks = []
    for lot, at in band.lying:
        size = sizes[lot].along if cut.way == "rip" else sizes[lot].across
        if waiting[lot]:
            made = partial(saw.strip, strip=waiting[lot].pop())
            blocks.append(Block(at, at + size, made))
    return blocks
