"""Lines of the buying list, whole packs, and what nobody has priced."""

from __future__ import annotations

from decimal import Decimal

import pytest

from model.cost.buy import Need, priced, total
from model.stock.prices import PriceRow, Prices

SCREWS = Need(
    key="screws/8/50.8", group="screws", name="No. 8 wood screw", quantity=101, unit="piece",
    pack=100,
)  # fmt: skip
MAPLE = Need(
    key="boards/red_maple/31.75", group="boards", name="Soft maple", quantity=37, measured=True,
    unit="board foot",
)  # fmt: skip
OFFCUT = Need(
    key="on hand/birch_ply_12-12/offcut", group="on hand", name="Birch plywood", quantity=2,
    unit="sheet", on_hand=True, price=40.0,
)  # fmt: skip


def listed(*rows: PriceRow, decimals: int = 2) -> Prices:
    return Prices(currency="EUR", rows=rows, decimals=decimals)


def test_one_screw_more_than_a_box_is_two_boxes() -> None:
    buy = priced(SCREWS, listed(PriceRow(key=SCREWS.key, price=4.95)))

    assert (buy.packs, buy.price, buy.total) == (2, Decimal("4.95"), Decimal("9.90"))


def test_the_makers_own_box_goes_before_the_usual_one() -> None:
    buy = priced(SCREWS, listed(PriceRow(key=SCREWS.key, price=9.0, pack=200)))

    assert (buy.pack, buy.packs, buy.total) == (200, 1, Decimal("9.00"))


def test_full_boxes_are_not_bought_twice_for_floating_dust() -> None:
    litres = Need(key="glue/pva", group="glue", name="Glue", quantity=0.3, unit="litre", pack=0.1)

    assert priced(litres, Prices()).packs == 3


def test_a_can_that_was_told_in_litres_is_the_same_can_in_quarts() -> None:
    """A gallon can, told in litres, for five quarts: two of it."""
    paint = Need(
        key="finish/paint", group="finish", name="Paint", quantity=5.0, unit="US quart",
        holds=0.946352946,
    )  # fmt: skip

    buy = priced(paint, listed(PriceRow(key=paint.key, price=60.0, pack=3.785411784)))

    assert (buy.pack, buy.packs, buy.total) == (4.0, 2, Decimal("120.00"))


def test_lumber_is_paid_by_its_measure() -> None:
    buy = priced(MAPLE, listed(PriceRow(key=MAPLE.key, price=7.35)))

    assert buy.total == Decimal("271.95")  # 37 x 7.35


def test_currencies_without_small_coins_have_none() -> None:
    buy = priced(MAPLE, listed(PriceRow(key=MAPLE.key, price=1150.5), decimals=0))

    assert str(buy.total) == "42569"  # 42568.5, halves up


def test_a_missing_price_is_no_price_of_zero() -> None:
    buy = priced(SCREWS, listed(PriceRow(key=SCREWS.key)))

    assert buy.price is None
    assert buy.total is None
    assert not buy.is_priced


def test_a_price_of_zero_is_one() -> None:
    assert priced(SCREWS, listed(PriceRow(key=SCREWS.key, price=0.0))).total == 0


def test_what_is_on_hand_costs_nothing_whatever_it_cost_once() -> None:
    buy = priced(OFFCUT, Prices())

    assert (buy.total, buy.is_priced) == (Decimal("0.00"), True)


def test_the_stocks_own_price_goes_before_the_list() -> None:
    sheet = Need(key="sheet/x/2440x1220", group="sheets", name="X", quantity=3, unit="sheet",
                 price=52.5)  # fmt: skip

    assert priced(sheet, Prices()).total == Decimal("157.50")
    assert priced(sheet, listed(PriceRow(key=sheet.key, price=60.0))).total == Decimal("157.50")


@pytest.mark.parametrize(("groups", "sum_of"), [(("boards",), "271.95"), (("glue",), "0.00")])
def test_groups_are_summed(groups: tuple[str, ...], sum_of: str) -> None:
    prices = listed(PriceRow(key=MAPLE.key, price=7.35))
    buys = [priced(need, prices) for need in (SCREWS, MAPLE)]

    assert str(total(buys, groups, 2)) == sum_of  # type: ignore[arg-type]
