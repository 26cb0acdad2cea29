"""The parts list as rows: one for each mark, the same for every format."""

from __future__ import annotations

from typing import Any

from model.bed import Bed
from model.exports.plain import number
from model.parts.marks import Mark
from model.shop.cut_list import CutPiece, cut_piece
from model.shop.part_sizes import finished, rough, shown_sizes
from model.stock.rough import Size

SIZES = ("length", "width", "thickness")
ROUGH_SIZES = ("rough_length", "rough_width", "rough_thickness")
COLUMNS = (
    "mark", "name", "assembly", "quantity", *SIZES, "material", "grain", *ROUGH_SIZES,
)  # fmt: skip
SHOWN_COLUMNS = tuple(f"{name}_shown" for name in (*SIZES, *ROUGH_SIZES))


def row(bed: Bed, mark: Mark) -> dict[str, Any]:
    """One mark in the contract's columns; sizes in mm."""
    piece = cut_piece(bed, mark)
    return _row(mark, piece, rough(bed, mark, piece))


def _row(mark: Mark, piece: CutPiece, sawn: Size) -> dict[str, Any]:
    cut = finished(mark)
    return {
        "mark": mark.mark,
        "name": mark.name,
        "assembly": mark.assembly,
        "quantity": mark.quantity,
        "length": number(cut.length),
        "width": number(cut.width),
        "thickness": number(cut.thickness),
        "material": piece.material.name,
        "grain": mark.grain,
        "rough_length": number(sawn.length),
        "rough_width": number(sawn.width),
        "rough_thickness": number(sawn.thickness),
    }


def table(bed: Bed) -> list[tuple[Any, ...]]:
    """Cells of every row: the contract's columns in mm, then the sizes in the shown unit."""
    return [_cells(bed, mark, bed.design.value("shown_unit")) for mark in bed.marks]


def _cells(bed: Bed, mark: Mark, unit: str) -> tuple[Any, ...]:
    piece = cut_piece(bed, mark)
    cells = _row(mark, piece, rough(bed, mark, piece))
    return (*cells.values(), *shown_sizes(bed, mark, unit))
