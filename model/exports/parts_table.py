"""The parts list as rows: one for each mark, the same for every format."""

from __future__ import annotations

from typing import Any

from model.bed import Bed
from model.exports.plain import number
from model.materials import Material
from model.materials.table import row_of
from model.parts.marks import Mark
from model.shop.cut_list import CutPiece, cut_piece
from model.shop.wood_source import allowances
from model.stock.rough import Size, blank_size
from model.units import show_length, tape_grid

SIZES = ("length", "width", "thickness")
ROUGH_SIZES = ("rough_length", "rough_width", "rough_thickness")
COLUMNS = (
    "mark", "name", "assembly", "quantity", *SIZES, "material", "grain", *ROUGH_SIZES,
)  # fmt: skip
SHOWN_COLUMNS = tuple(f"{name}_shown" for name in (*SIZES, *ROUGH_SIZES))


def finished(mark: Mark) -> Size:
    """The cut size, tongues and tenons included."""
    return Size(length=float(mark.length), width=float(mark.width), thickness=float(mark.thickness))


def made_of(bed: Bed, mark: Mark) -> Material:
    """The wood or sheet of a mark."""
    return row_of(bed.materials, mark.material, "material")


def rough(bed: Bed, mark: Mark, sawn: CutPiece) -> Size:
    """What is sawn for a part; for one that is glued up, the blank that is trimmed after."""
    if sawn.material.kind == "sheet":
        return finished(mark)
    return blank_size(finished(mark), allowances(bed.design)) if sawn.is_glued else sawn.rough


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


def _shown(row: dict[str, Any], piece: CutPiece, unit: str) -> tuple[str, ...]:
    """The sizes of a row as the maker reads them. With their sign: a bare 3/4 becomes a date.

    What is sawn off a rough board is shown on the next sixteenth of an inch, or mm, up: nobody saws
    it closer. A thickness is that of the boards, and sheets are cut to size at once.
    """
    sawn = {name: tape_grid(unit).up(row[name]) for name in _sawn_rough(piece)}
    return tuple(show_length(sawn.get(name, row[name]), unit) for name in (*SIZES, *ROUGH_SIZES))


def _sawn_rough(piece: CutPiece) -> tuple[str, ...]:
    """The sizes that nothing but a saw makes; stock that has its width already is only crosscut."""
    if piece.source is None:
        return ()
    return ("rough_length",) if piece.is_as_bought else ("rough_length", "rough_width")


def table(bed: Bed) -> list[tuple[Any, ...]]:
    """Cells of every row: the contract's columns in mm, then the sizes in the shown unit."""
    return [_cells(bed, mark, bed.design.value("shown_unit")) for mark in bed.marks]


def _cells(bed: Bed, mark: Mark, unit: str) -> tuple[Any, ...]:
    piece = cut_piece(bed, mark)
    cells = _row(mark, piece, rough(bed, mark, piece))
    return (*cells.values(), *_shown(cells, piece, unit))
