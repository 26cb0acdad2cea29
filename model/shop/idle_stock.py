"""Stock that was typed in and that no part of the bed is cut from: said, and not passed over.

A slip of the key, a thickness that is no class, or a rack that is not asked for would otherwise
only show in what is bought beside it.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence

from model.bed import Bed
from model.shop.cut_list import CutPiece, cut_list
from model.shop.wood_source import boards_for, sold_for
from model.stock.cells import shown_thickness
from model.stock.rows import Board, SoldSize
from model.units import show_length

_ROWS = {"rack": "Rack", "sold sizes": "Sizes sold"}


def idle_stock(bed: Bed) -> tuple[str, ...]:
    """A sentence for each table, or row of one, that is of no use to this bed."""
    pieces = cut_list(bed)
    solid = [piece for piece in pieces if piece.source is not None]
    return (*_boards(bed, solid), *_sheets(bed, pieces))


def _boards(bed: Bed, solid: Sequence[CutPiece]) -> Iterator[str]:
    design = bed.design
    tables: tuple[tuple[str, Sequence[Board | SoldSize]], ...] = (
        ("rack", design.stock.boards),
        ("sold sizes", design.stock.sold),
    )
    for asked, rows in tables:
        if not rows or not solid:
            continue
        if design.value("boards_from") != asked:
            yield (
                f"{_ROWS[asked]}: none of its {len(rows)} rows is used, because boards come by "
                f"“{design.value('boards_from')}” (Boards from)."
            )
            continue
        used = {id(row) for piece in solid for row in _serving(bed, piece, asked)}
        idle = [(n, row) for n, row in enumerate(rows, 1) if id(row) not in used]
        for number, row in idle:
            yield f"{_ROWS[asked]}, row {number}: {_why(bed, row, solid)}"


def _serving(bed: Bed, piece: CutPiece, asked: str) -> Sequence[Board | SoldSize]:
    serve = boards_for if asked == "rack" else sold_for
    return serve(bed.design, piece.material.key, piece.finished.thickness)


def _why(bed: Bed, row: Board | SoldSize, solid: Sequence[CutPiece]) -> str:
    unit = bed["shown_unit"]
    known = bed.materials.get(row.material)
    name = known.name if known is not None else row.material
    own = [piece for piece in solid if piece.material.key == row.material]
    if not own:
        return f"no part of this bed is made of {name}."
    thick = shown_thickness(row.thickness, not row.planed, unit)
    classes = sorted({piece.thickness for piece in own})
    wanted = ", ".join(shown_thickness(each, not row.planed, unit) for each in classes)
    return f"no part of {name} is cut from boards of {thick}; they are cut from {wanted}."


def _sheets(bed: Bed, pieces: Collection[CutPiece]) -> Iterator[str]:
    used = {piece.material.key for piece in pieces if piece.source is None}
    for number, row in enumerate(bed.design.stock.sheets, 1):
        if row.material not in used:
            known = bed.materials.get(row.material)
            name = known.name if known is not None else row.material
            size = " x ".join(
                show_length(each, bed["shown_unit"]) for each in (row.length, row.width)
            )
            yield f"Sheets, row {number}: no part of this bed is cut from {name} ({size})."
