"""What plans ask of yard and rack, and what they leave."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

import pytest

from model.cost.buy import priced
from model.cost.leftover import offcuts, waste
from model.cost.stock_needs import stock_needs
from model.cutting.racks import RackOdds, Recipe
from model.cutting.record import Layout, Piece, Plan, Stock, Task
from model.shop.lumber import Lumber
from model.shop.plans import CutPlan
from model.stock.prices import PriceRow, Prices
from model.stock.rows import SheetSize, SoldSize, StockRows
from model.units import INCH
from tests.model.cost.plain_plans import alone

SIDE = Piece(mark="B1", length=500, width=200, quantity=2)
SHEET = Stock(key="sheet 2440x1220", length=2440, width=1220)
OFFCUT = Stock(key="offcut on hand 1", length=800, width=600, quantity=1, on_hand=True, price=30.0)
KERF = 4.0


def plan_of(*stock: Stock, kind: str = "sheets", material: str = "birch_ply_12",
            thickness: float = 12.0) -> CutPlan:  # fmt: skip
    """A side cut from each of these pieces of stock."""
    layouts = tuple(
        Layout(number=n, stock=each, tree=alone(SIDE, n, each, KERF))
        for n, each in enumerate(stock, 1)
    )
    task = Task(kind=kind, pieces=(SIDE,), stock=tuple(dict.fromkeys(stock)), kerf=KERF)  # type: ignore[arg-type]
    return CutPlan(
        key=f"{material}-{thickness:g}", material=material, material_name="A name",
        thickness=thickness, plan=Plan(task=task, layouts=layouts),
    )  # fmt: skip


def test_sheets_are_counted_by_size_and_offcuts_are_no_purchase() -> None:
    found = {need.key: need for need in stock_needs([plan_of(OFFCUT, SHEET, SHEET)])}

    bought = found["sheet/birch_ply_12/2440x1220"]
    assert (bought.quantity, bought.unit, bought.group) == (2, "sheet", "sheets")
    used = found["on hand/birch_ply_12-12/offcut on hand 1"]
    assert (used.quantity, used.group) == (1, "on hand")
    assert priced(used, Prices()).total == 0


def test_the_same_sheet_in_two_plans_is_one_line() -> None:
    """Measured thicknesses make two plans of one material; the yard sells one sheet."""
    plans = [plan_of(SHEET), plan_of(SHEET, SHEET, thickness=11.9)]

    (need,) = stock_needs(plans)

    assert need.quantity == 3


def test_random_widths_are_billed_by_the_board_foot_at_the_nominal_class() -> None:
    """Two boards of 5/4, 10 ft x 8 in and 8 ft x 6 in: 8 1/3 + 5 = 13 1/3, billed as 14."""
    boards = [
        Stock(key=f"yard board {n}", length=feet * 12 * INCH, width=wide * INCH, quantity=1,
              is_assumed=True)
        for n, (feet, wide) in enumerate([(10, 8), (8, 6)])
    ]  # fmt: skip
    plan = plan_of(*boards, kind="boards", material="red_maple", thickness=1.25 * INCH)

    (need,) = stock_needs([plan], unit="inch")

    assert (need.key, need.quantity, need.unit) == ("boards/red_maple/31.75", 14, "board foot")
    assert need.size == "5/4 rough"
    (metric,) = stock_needs([plan], "cubic metre")
    assert metric.size == "31.75 mm rough (5/4)"
    assert (metric.quantity, metric.unit) == (pytest.approx(0.032), "m3")  # 13.33 / 423.8 up


def test_planed_boards_are_not_called_rough() -> None:
    """Planed 1 in is as thick as 4/4 is rough."""
    board = Stock(key="board 2100x160", length=2100, width=160)

    (need,) = stock_needs([plan_of(board, kind="lengths", thickness=25.4)], unit="mm")

    assert need.size == "25.4 mm, 2100 mm x 160 mm"


def test_sold_sizes_and_boards_of_the_rack_are_bought_by_the_piece() -> None:
    sold = Stock(key="board 2438x139.7", length=2438.4, width=139.7)
    rack = Stock(key="wide one", length=3000, width=250, quantity=1, price=85.0)
    plan = plan_of(sold, sold, rack, kind="boards", material="white_spruce", thickness=38.1)

    found = {need.key: need for need in stock_needs([plan])}

    assert found["boards/white_spruce/38.1/2438x139.7"].quantity == 2
    assert priced(found["boards/white_spruce/38.1/wide one"], Prices()).total == Decimal("85.00")


def test_prices_beside_the_makers_own_stock_are_those_that_count() -> None:
    """Those in the plan's stock can be of an older price list."""
    old = replace(SHEET, price=48.0)
    rows = StockRows(
        sheets=(
            SheetSize(material="birch_ply_12", length=2440, width=1220, on_hand=True, price=1.0),
            SheetSize(material="birch_ply_12", length=2440, width=1220, price=55.0),
        )
    )
    plans = [plan_of(old)]
    prices = Prices(rows=(PriceRow(key="sheet/birch_ply_12/2440x1220", price=60.0),))

    (told,) = stock_needs(plans, rows=rows)
    (listed,) = stock_needs(plans)

    assert priced(told, prices).total == Decimal("55.00")
    assert priced(listed, prices).total == Decimal("60.00")


def test_planed_sizes_have_prices_by_their_thickness() -> None:
    sold = Stock(key="board 2400x160", length=2400, width=160)
    rows = StockRows(
        sold=tuple(
            SoldSize(material="european_beech", thickness=t, length=2400, width=160, planed=True,
                     price=price)
            for t, price in ((20.0, 21.0), (30.0, 29.5))
        )
    )  # fmt: skip
    plan = plan_of(sold, kind="boards", material="european_beech", thickness=30.0)

    (need,) = stock_needs([plan], rows=rows)

    assert need.price == 29.5


def test_an_offcut_is_worth_a_share_of_its_sheets_price_by_area() -> None:
    """A rip at 200 with a kerf of 4 leaves 2440 x 1016 of 2440 x 1220: 83.28 % of 60, half of it
    24.98.
    """
    prices = Prices(rows=(PriceRow(key="sheet/birch_ply_12/2440x1220", price=60.0),))
    plans = [plan_of(SHEET, OFFCUT)]
    buys = [priced(need, prices) for need in stock_needs(plans)]

    bought, old = offcuts(plans, buys, prices)

    assert (bought.length, bought.width) == (2440, 1016)
    assert bought.value == Decimal("24.98")
    assert old.value is None  # what was on hand is worth what it was


def test_offcuts_of_boards_are_valued_by_the_board_foot() -> None:
    """A 4/4 board of 8 ft x 12 in, ripped at 200 mm with a kerf of 4."""
    board = Stock(key="yard board 1", length=96 * INCH, width=12 * INCH, quantity=1,
                  is_assumed=True)  # fmt: skip
    plans = [plan_of(board, kind="boards", material="red_maple", thickness=INCH)]
    prices = Prices(rows=(PriceRow(key="boards/red_maple/25.4", price=8.0),), offcut_share=1.0)
    buys = [priced(need, prices) for need in stock_needs(plans)]

    (left,) = offcuts(plans, buys, prices)

    feet = 96 * (12 - 204 / 25.4) / 144  # square inches of an inch board
    assert float(left.value or 0) == pytest.approx(8 * feet, abs=0.005)


def test_waste_is_what_is_neither_piece_nor_offcut() -> None:
    (spent,) = waste([plan_of(SHEET)])

    # A strip of 200 x 2440 less the piece of 500, and the kerf of 4 along the sheet.
    assert spent.share == pytest.approx((200 * 1940 + 4 * 2440) / (2440 * 1220))


def test_waste_of_boards_used_as_wide_as_they_are_sold_tells_the_width() -> None:
    """Each width is a plan of its own: without it their rows read alike."""
    boards = [Stock(key=f"board {wide}", length=2100, width=wide) for wide in (200, 240)]
    plans = [plan_of(board, kind="lengths", thickness=30.0) for board in boards]

    assert [spent.sold_width for spent in waste(plans)] == [200, 240]
    assert [spent.sold_width for spent in waste([plan_of(SHEET)])] == [None]


# ---------------------------------------------------------------- lumber that is asked for


def ask_for(board_feet: float) -> Lumber:
    """Racks of 4/4 oak that all took so many board feet; 1 x 12 x 12 in each."""
    odds = RackOdds(recipe=Recipe(thickness=INCH), net=1.0, least=1.0,
                    enough=(board_feet * (12 * INCH) ** 2,) * 10)  # fmt: skip
    return Lumber(
        key="white_oak-25.4", material="white_oak", material_name="Oak", asked=(), odds=odds
    )


def test_lumber_is_asked_for_so_that_nine_racks_of_ten_hold_it() -> None:
    """The plan's own boards are one rack of many: nobody will hand over just these."""
    board = Stock(key="yard board 1", length=96 * INCH, width=9 * INCH, quantity=1, is_assumed=True)
    plan = plan_of(board, kind="boards", material="white_oak", thickness=INCH)

    (drawn,) = stock_needs([plan])
    (more,) = stock_needs([plan], asks=[ask_for(9.5)])
    (less,) = stock_needs([plan], asks=[ask_for(4.0)])
    (stored,) = stock_needs([replace(plan, is_stored=True)], asks=[ask_for(9.5)])

    assert drawn.quantity == 6  # 8 ft x 9 in
    assert (more.quantity, less.quantity) == (10, 6)
    assert more.note.startswith("10 board feet in all held every piece in 9 of 10 racks")
    assert less.note.endswith("and so much is reckoned.")
    assert stored == drawn  # the boards of a plan in use are there
