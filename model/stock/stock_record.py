"""The maker's stock as a design file holds it: `{"boards": [...], "sold": [...], "sheets": [...]}`.

Lengths are mm, or texts with a unit. What is as usual is left out.
"""

from __future__ import annotations

from dataclasses import asdict
from typing import Any

from model.stock.given import DEAREST, Given, spare
from model.stock.rows import Board, SheetSize, SoldSize, Span, StockRows
from model.units import Mm

KINDS = ("boards", "sold", "sheets")
BOARD = (
    "name", "material", "thickness", "length", "width", "quantity", "bad", "price", "planed",
)  # fmt: skip
SOLD = ("material", "thickness", "length", "width", "planed", "price")
SHEET = ("material", "length", "width", "quantity", "on_hand", "price")

SHORTEST: Mm = 10.0  # what is smaller is a slip of the keys, or inches taken for mm
NARROWEST: Mm = 5.0
THINNEST: Mm = 1.0
LONGEST: Mm = 20_000.0  # no yard's board is longer
WIDEST: Mm = 4_000.0
THICKEST: Mm = 400.0
MOST = 10_000  # pieces of one kind
MOST_SPANS = 100  # of one board: more is firewood

_USUAL = {"quantity": 1, "bad": [], "price": None, "planed": False, "on_hand": False, "name": ""}


def stock_of(record: Any, place: str = "stock") -> StockRows:
    """The rows that a design file gives; refused with BadInput: what is no sound row."""
    given = Given(record, place, KINDS)
    return StockRows(
        boards=tuple(_board(row) for row in given.records("boards", BOARD)),
        sold=tuple(_sold(row) for row in given.records("sold", SOLD)),
        sheets=tuple(_sheet(row) for row in given.records("sheets", SHEET)),
    )


def record_of(stock: StockRows) -> dict[str, Any]:
    """The rows as a design file holds them; empty where there are none."""
    rows = {
        "boards": [_written(row, _USUAL) for row in stock.boards],
        "sold": [_written(row, _USUAL) for row in stock.sold],
        # A sheet without a quantity is sold as often as needed: 1 has to be said.
        "sheets": [_written(row, _USUAL | {"quantity": None}) for row in stock.sheets],
    }
    return {kind: listed for kind, listed in rows.items() if listed}


def _written(row: Board | SoldSize | SheetSize, usual: dict[str, Any]) -> dict[str, Any]:
    record = asdict(row)
    if "bad" in record:
        record["bad"] = [list(span) for span in record["bad"]]
    return spare(record, usual)


def _board(given: Given) -> Board:
    length, width = _sides(given)
    return Board(
        name=given.text("name"),
        material=_material(given),
        thickness=given.length("thickness", None, THINNEST, THICKEST),
        length=length,
        width=width,
        quantity=given.whole("quantity", 1, 1, MOST),
        bad=tuple(
            _bad_span(given, span, length, width) for span in given.listed("bad", MOST_SPANS)
        ),
        price=given.maybe("price", 0.0, DEAREST),
        planed=given.flag("planed"),
    )


def _sold(given: Given) -> SoldSize:
    length, width = _sides(given)
    return SoldSize(
        material=_material(given),
        thickness=given.length("thickness", None, THINNEST, THICKEST),
        length=length,
        width=width,
        planed=given.flag("planed"),
        price=given.maybe("price", 0.0, DEAREST),
    )


def _sheet(given: Given) -> SheetSize:
    length, width = _sides(given)
    return SheetSize(
        material=_material(given),
        length=length,
        width=width,
        quantity=given.whole("quantity", 1, 1, MOST) if given.has("quantity") else None,
        on_hand=given.flag("on_hand"),
        price=given.maybe("price", 0.0, DEAREST),
    )


def _sides(given: Given) -> tuple[Mm, Mm]:
    """Length and width, as large as a board or sheet can be."""
    return (
        given.length("length", None, SHORTEST, LONGEST),
        given.length("width", None, NARROWEST, WIDEST),
    )


def _material(given: Given) -> str:
    """The key of a wood or sheet. It may be one that the program does not know: then nothing is
    cut from the row, and the maker does not lose it.
    """
    key = given.text("material", None, 60)
    if not all(each.isascii() and (each.isalnum() or each == "_") for each in key):
        raise given.refused("material must be a key of small letters, figures and underscores.")
    return key


def _bad_span(given: Given, span: Any, length: Mm, width: Mm) -> Span:
    """A bad span, inside its board: x0, y0, x1, y1 from the lower left corner."""
    if not isinstance(span, list | tuple) or len(span) != 4:
        raise given.refused("a bad span is four figures: from and to along, then across.")
    x0, y0, x1, y1 = (given.checked("bad", each, 0.0, LONGEST) for each in span)
    if not x0 < x1 or not y0 < y1:
        raise given.refused("a bad span ends where it begins, or before.")
    if x1 > length + 1e-6 or y1 > width + 1e-6:
        raise given.refused(f"a bad span reaches over the board's {length:g} x {width:g} mm.")
    return x0, y0, x1, y1
