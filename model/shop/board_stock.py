"""Boards to cut from: those of the rack, and the sizes that a yard sells."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from model.bed import Design
from model.cutting.record import Box, Stock, Trim
from model.shop.cut_list import CutPiece
from model.shop.stock_price import price_of
from model.shop.wood_source import SAME, boards_for, sold_for
from model.stock.keys import board_key
from model.stock.rows import Board, SoldSize
from model.units import Mm


def rack_stock(design: Design, own: Sequence[CutPiece]) -> tuple[Stock, ...]:
    """Every board of the rack that the pieces of a task can be sawn from, each its own stock."""
    thickest = max(piece.finished.thickness for piece in own)
    boards = boards_for(design, own[0].material.key, thickest)
    trim = end_trim(design)
    return tuple(
        Stock(
            key=key,
            length=board.length,
            width=board.width,
            quantity=board.quantity,
            price=board.price,
            on_hand=board.price is None,
            trim=trim,
            bad=tuple(Box(*span) for span in board.bad),
        )
        for key, board in _named(boards)
    )


def _named(boards: tuple[Board, ...]) -> Iterator[tuple[str, Board]]:
    """Boards by what is chalked on them, with a number where that stands twice."""
    seen: dict[str, int] = {}
    for number, board in enumerate(boards, 1):
        name = board.name or f"board {number}"
        seen[name] = seen.get(name, 0) + 1
        yield (name if seen[name] == 1 else f"{name} ({seen[name]})"), board


def sold_stock(design: Design, piece: CutPiece) -> tuple[Stock, ...]:
    """What a yard sells for a task, told by one of its pieces; planed stock as wide as the piece
    is only crosscut.
    """
    sold = sold_for(design, piece.material.key, piece.finished.thickness)
    if piece.is_as_bought:
        sold = tuple(size for size in sold if abs(size.width - piece.rough.width) <= SAME)
    trim, made_of, thick = end_trim(design), piece.material.key, piece.thickness
    by_size: dict[tuple[Mm, Mm], SoldSize] = {}
    for size in sold:
        by_size.setdefault((size.length, size.width), size)
    return tuple(
        Stock(
            key=f"board {size.length:g}x{size.width:g}",
            length=size.length,
            width=size.width,
            price=price_of(design, size.price, board_key(made_of, thick, size.length, size.width)),
            trim=Trim() if size.planed else trim,
        )
        for size in by_size.values()
    )


def end_trim(design: Design) -> Trim:
    """What is cut off both ends of a rough board."""
    each = design.value("board_end_trim")
    return Trim(left=each, right=each)
