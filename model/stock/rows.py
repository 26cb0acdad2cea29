"""What the maker can cut from: boards in the rack, sizes a yard sells, sheets and offcuts.

They travel with the design. Lengths mm; `price` is that of one, in the maker's currency, None where
it is not known.
"""

from __future__ import annotations

from dataclasses import dataclass

from model.units import Mm

Span = tuple[Mm, Mm, Mm, Mm]  # a bad span: x0, y0, x1, y1 on the board


@dataclass(frozen=True, kw_only=True)
class Board:
    """A real board of the rack. `thickness` is that of its rough class (25.4 for 4/4), or as it
    measures where it is `planed`. A board with a `price` is still to be bought, others are on hand.
    """

    name: str
    material: str
    thickness: Mm
    length: Mm
    width: Mm
    quantity: int = 1
    bad: tuple[Span, ...] = ()
    price: float | None = None
    planed: bool = False


@dataclass(frozen=True, kw_only=True)
class SoldSize:
    """A size that can be bought as often as needed. What is `planed` is used at its thickness and
    needs no milling on its faces, and none on its edges where the part is as wide.
    """

    material: str
    thickness: Mm
    length: Mm
    width: Mm
    planed: bool = False
    price: float | None = None


@dataclass(frozen=True, kw_only=True)
class SheetSize:
    """A sheet as sold (`quantity` None: as many as needed), or offcuts that are `on_hand`."""

    material: str
    length: Mm
    width: Mm
    quantity: int | None = None
    on_hand: bool = False
    price: float | None = None


@dataclass(frozen=True, kw_only=True)
class StockRows:
    """All of the maker's stock; what a design does not tell comes from the tables of the trade."""

    boards: tuple[Board, ...] = ()
    sold: tuple[SoldSize, ...] = ()
    sheets: tuple[SheetSize, ...] = ()


NO_STOCK = StockRows()
