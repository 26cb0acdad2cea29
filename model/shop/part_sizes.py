"""The sizes of a part as the parts list tells them: as cut, and rough."""

from __future__ import annotations

from dataclasses import replace
from typing import NamedTuple

from model.bed import Bed
from model.materials import Material
from model.materials.table import row_of
from model.parts.marks import Mark
from model.shop.cut_list import CutPiece, cut_piece
from model.shop.wood_source import allowances
from model.stock.rough import Size, blank_size
from model.units import show_length, tape_grid


class Sizes(NamedTuple):
    """Length, width and thickness as cut, and those of what is sawn for it."""

    finished: Size
    rough: Size


def sizes(bed: Bed, mark: Mark) -> Sizes:
    """The sizes of a mark, mm."""
    return Sizes(finished(mark), rough(bed, mark, cut_piece(bed, mark)))


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
    if not sawn.is_glued:
        return sawn.rough
    blank = blank_size(finished(mark), allowances(bed.design))
    if sawn.strips == 1:
        return blank
    thick = sawn.finished.thickness if sawn.layers == 1 else blank.thickness
    return replace(blank, width=sawn.strips * sawn.finished.width, thickness=thick)


def shown_sizes(bed: Bed, mark: Mark, unit: str) -> tuple[str, ...]:
    """The three finished and the three rough sizes as the maker reads them.

    With their sign: a bare 3/4 becomes a date in a spreadsheet. What is sawn off a rough board is
    shown on the next sixteenth of an inch, or mm, up: nobody saws it closer. A thickness is that of
    the boards, and sheets are cut to size at once.
    """
    piece = cut_piece(bed, mark)
    cut, blank = finished(mark), rough(bed, mark, piece)
    coarse = tape_grid(unit)
    sawn = _sawn_rough(piece)
    blanks = (
        coarse.up(size) if name in sawn else size
        for name, size in zip(("length", "width", "thickness"), _three(blank), strict=True)
    )
    return tuple(show_length(size, unit) for size in (*_three(cut), *blanks))


def _three(size: Size) -> tuple[float, float, float]:
    return (size.length, size.width, size.thickness)


def _sawn_rough(piece: CutPiece) -> tuple[str, ...]:
    """The sizes that nothing but a saw makes; stock that has its width already is only crosscut."""
    if piece.source is None:
        return ()
    return ("length",) if piece.is_as_bought else ("length", "width")
