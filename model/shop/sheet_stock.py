"""Sheets to cut from: offcuts on hand, and whole ones as they are sold."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from model.bed import Design
from model.cutting.record import Stock, Trim
from model.shop.cut_list import CutPiece
from model.shop.stock_price import price_of
from model.stock.keys import sheet_key
from model.stock.rows import SheetSize
from model.units import Mm

Sizes = tuple[tuple[Mm, Mm], ...]


def sheet_stock(design: Design, own: Sequence[CutPiece]) -> tuple[Stock, ...]:
    """Offcuts and sheets that the pieces of a task are cut from, what is on hand first.

    Where the maker typed in what is sold, the table's sizes are left out.
    """
    material = own[0].material
    rows = [row for row in design.stock.sheets if row.material == material.key]
    sold = [row for row in rows if not row.on_hand]
    listed = material.flat.sizes if material.flat is not None else ()
    if not sold:
        wanted = listed if design.value("sheets_from") == "all sizes" else _first(listed, own)
        sold = [SheetSize(material=material.key, length=a, width=b) for a, b in wanted]
    whole = {*listed, *((row.length, row.width) for row in sold)}
    on_hand = [row for row in rows if row.on_hand]
    has_grain = material.flat is None or material.flat.has_grain
    return (
        *(_on_hand(row, n, design, whole, has_grain) for n, row in enumerate(on_hand, 1)),
        *(_sold(row, design, has_grain) for row in _apart(sold)),
    )


def _first(sizes: Sizes, own: Sequence[CutPiece]) -> Sizes:
    """The first size of the table, and those after it that are asked for by what it cannot hold."""
    taken: list[tuple[Mm, Mm]] = []
    for piece in own:
        if not any(_holds(size, piece) for size in taken):
            better = [size for size in sizes if _holds(size, piece)]
            taken += better[:1]
    return tuple(size for size in sizes if size in taken) or sizes[:1]


def _holds(size: tuple[Mm, Mm], piece: CutPiece) -> bool:
    """Whether a whole sheet is large enough, its trims aside."""
    (length, width), rough = size, piece.rough
    lengthwise = rough.length <= length and rough.width <= width
    crosswise = rough.width <= length and rough.length <= width
    if piece.grain == "free":
        return lengthwise or crosswise
    return lengthwise if piece.grain == "length" else crosswise


def _apart(rows: Iterable[SheetSize]) -> list[SheetSize]:
    """Each size once, the first row of it: two of a kind would be one thing to buy."""
    return list({(row.length, row.width): row for row in reversed(list(rows))}.values())[::-1]


def _sold(row: SheetSize, design: Design, has_grain: bool) -> Stock:
    return Stock(
        key=f"sheet {row.length:g}x{row.width:g}",
        length=row.length,
        width=row.width,
        quantity=row.quantity,
        price=price_of(design, row.price, sheet_key(row.material, row.length, row.width)),
        has_grain=has_grain,
        trim=_trim(design),
    )


def _on_hand(
    row: SheetSize, n: int, design: Design, whole: set[tuple[Mm, Mm]], grain: bool
) -> Stock:
    """An offcut has sawn edges, unless it is a whole sheet."""
    is_whole = (row.length, row.width) in whole
    return Stock(
        key=f"{'sheet' if is_whole else 'offcut'} on hand {n}, {row.length:g}x{row.width:g}",
        length=row.length,
        width=row.width,
        quantity=row.quantity if row.quantity is not None else 1,
        price=row.price,
        on_hand=True,
        has_grain=grain,
        trim=_trim(design) if is_whole else Trim(),
    )


def _trim(design: Design) -> Trim:
    return Trim(lower=design.value("sheet_trim_long"), left=design.value("sheet_trim_short"))
