"""Sheets to cut from: offcuts on hand, and whole ones as they are sold."""

from __future__ import annotations

from collections.abc import Iterable

from model.bed import Design
from model.cutting.record import Stock, Trim
from model.materials import Material
from model.shop.stock_price import price_of
from model.stock.keys import sheet_key
from model.stock.rows import SheetSize
from model.units import Mm

Sizes = tuple[tuple[Mm, Mm], ...]


def sheet_stock(design: Design, material: Material) -> tuple[tuple[Stock, ...], tuple[str, ...]]:
    """Offcuts and sheets of a material, what is on hand first; and a note where none is known.

    Where the maker typed in what is sold, the table's sizes are left out.
    """
    rows = [row for row in design.stock.sheets if row.material == material.key]
    sold = [row for row in rows if not row.on_hand]
    listed = material.flat.sizes if material.flat is not None else ()
    if not sold:
        wanted = listed if design.value("sheets_from") == "all sizes" else listed[:1]
        sold = [SheetSize(material=material.key, length=a, width=b) for a, b in wanted]
    whole = {*listed, *((row.length, row.width) for row in sold)}
    on_hand = [row for row in rows if row.on_hand]
    has_grain = material.flat is None or material.flat.has_grain
    stock = (
        *(_on_hand(row, n, design, whole, has_grain) for n, row in enumerate(on_hand, 1)),
        *(_sold(row, design, has_grain) for row in _apart(sold)),
    )
    return stock, () if stock else (f"No size is known for {material.name}: type in one.",)


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
