"""Stock that is of no use to the bed: each row says why."""

from __future__ import annotations

from model.bed import Bed, Design, solve
from model.shop.idle_stock import idle_stock
from model.stock.rows import Board, SheetSize, StockRows

MAPLE = Board(name="m", material="red_maple", thickness=31.75, length=2400.0, width=200.0)
CHOICES = {"boards_from": "rack", "shown_unit": "mm", "left.drawers": 0, "right.drawers": 0}


def bed(stock: StockRows, **choices: object) -> Bed:
    return solve(Design(choices={**CHOICES, **choices}, stock=stock))


def rack(*boards: Board) -> StockRows:
    return StockRows(boards=boards)


def like_maple(**told: object) -> Board:
    from dataclasses import replace

    return replace(MAPLE, **told)  # type: ignore[arg-type]


def test_a_rack_that_serves_is_not_spoken_of() -> None:
    assert idle_stock(bed(rack(MAPLE))) == ()


def test_a_board_of_a_wood_that_nothing_is_made_of_is_named() -> None:
    (said,) = idle_stock(bed(rack(MAPLE, like_maple(material="white_ash"))))

    assert said == "Rack, row 2: no part of this bed is made of White ash."


def test_a_board_of_no_class_says_what_would_serve() -> None:
    (said,) = idle_stock(bed(rack(like_maple(thickness=40.0), MAPLE)))

    assert said.startswith(
        "Rack, row 1: no part of Soft maple (red maple) is cut from boards of 40"
    )
    assert "5/4" in said


def test_a_rack_that_is_not_asked_for_is_told_as_a_whole() -> None:
    (said,) = idle_stock(bed(rack(MAPLE, MAPLE), boards_from="board foot"))

    assert said.startswith("Rack: none of its 2 rows is used")


def test_an_offcut_of_a_sheet_that_nothing_is_cut_from_is_named() -> None:
    offcut = SheetSize(material="hdf_3", length=800.0, width=600.0, on_hand=True)

    (said,) = idle_stock(bed(StockRows(sheets=(offcut,))))

    assert said.startswith("Sheets, row 1: no part of this bed is cut from High-density fibreboard")
