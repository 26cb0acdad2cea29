"""Boards that stand for what a yard might have, until the maker types in real ones."""

from __future__ import annotations

import random
from collections.abc import Sequence

from model.bed import Design
from model.cutting.record import Stock
from model.shop.board_stock import end_trim
from model.shop.cut_list import CutPiece
from model.stock.cells import shown_thickness
from model.units import INCH

_FOOT = 12 * INCH


def assumed_boards(
    design: Design, own: Sequence[CutPiece]
) -> tuple[tuple[Stock, ...], tuple[str, ...]]:
    """Boards drawn at random, enough for all pieces nine times of ten; and a note that says so."""
    net = sum(piece.quantity * piece.rough.length * piece.rough.width for piece in own)
    longest = max(piece.rough.length for piece in own)
    widest = max(piece.rough.width for piece in own)
    trim = end_trim(design)
    draw = random.Random(7)
    boards: list[Stock] = []
    while not boards or sum(each.length * each.width for each in boards) < 1.4 * net:
        width = draw.triangular(4 * INCH, 10 * INCH, 6.5 * INCH)
        boards.append(
            Stock(
                key=f"yard board {len(boards) + 1}",
                length=max(draw.randint(6, 12) * _FOOT, longest + trim.left + trim.right),
                width=round(max(width, widest if len(boards) < 2 else 0.0) / 3.175) * 3.175,
                quantity=1,
                trim=trim,
                is_assumed=True,
            )
        )
    return tuple(boards), (_note(design, own[0]),)


_RANDOM = "drawn at random from what a yard may have. Type in yours when you have them."
_LACKING = {"rack": "Your rack has none", "sold sizes": "Your list of sold sizes has none"}


def _note(design: Design, piece: CutPiece) -> str:
    """Why boards are assumed, and what would be better."""
    lacking = _LACKING.get(design.value("boards_from"))
    if lacking is None:
        return f"The boards are {_RANDOM}"
    thick = shown_thickness(piece.thickness, True, design.value("shown_unit"))
    return f"{lacking} of {piece.material.name} in {thick}: these boards are {_RANDOM}"
