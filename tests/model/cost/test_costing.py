"""Everything that a bed takes, put together."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from model.bed import solve
from model.cost import costing as module
from model.cost.costing import costing_of, is_anything_priced, taken
from model.cost.faces import fixed, glued_area
from model.stock.prices import NO_PRICES, ExtraRow, PriceRow, Prices
from model.stock.rows import SheetSize, StockRows
from tests.model.cost.beds import bed_of, plans_of
from tests.model.cost.plain_plans import plain_plans

QUEEN = "painted_storage_queen"


def test_layers_are_glued_over_their_whole_face() -> None:
    """Four posts of two layers, beside all other joints; 0.15 litres a m2, a half more of loss."""
    bed = bed_of(QUEEN, glue_loss=50)
    posts = [mark for mark in bed.marks if mark.name == "post"]
    between = sum(mark.length * mark.width * mark.quantity for mark in posts)

    (glue,) = [need for need in taken(bed, plans_of(QUEEN)).needs if need.group == "glue"]

    area = (glued_area(bed, fixed(bed)) + between) / 1e6
    quarts = area * 0.15 * 1.5 / 0.946352946  # a quarter of 231 cubic inches
    assert glue.quantity == pytest.approx(quarts, abs=0.01)  # hundredths, upwards
    assert glue.unit == "US quart"


def test_a_panel_of_strips_is_glued_along_each_edge_but_one() -> None:
    """Boards no wider than 120 mm: end rails of 190.5 mm are glued up from strips."""
    wide, narrow = (bed_of(QUEEN, widest_board=most) for most in (228.6, 120.0))

    def glue(bed: Any) -> float:
        return next(n.quantity for n in taken(bed, plain_plans(bed)).needs if n.group == "glue")

    assert glue(narrow) > glue(wide)


def test_a_design_with_other_prices_is_costed_anew(monkeypatch: pytest.MonkeyPatch) -> None:
    """The same bed under another design keeps what was worked out of it, but not its cost."""
    monkeypatch.setattr(module, "plans", plain_plans)
    bed = bed_of(QUEEN)
    before = costing_of(bed)
    prices = Prices(rows=(PriceRow(key="glue/pva", price=5.0),))

    after = costing_of(solve(replace(bed.design, prices=prices), bed))

    assert costing_of(bed) is before
    assert len(after.not_priced) == len(before.not_priced) - 1


@pytest.mark.parametrize(
    ("prices", "stock"),
    [
        (Prices(hour=40.0), StockRows()),
        (Prices(rows=(PriceRow(key="glue/pva", price=0.0),)), StockRows()),
        (Prices(extras=(ExtraRow(name="Delivery", price=10.0),)), StockRows()),
        (NO_PRICES, StockRows(sheets=(SheetSize(material="mdf_9", length=1, width=1, price=9.0),))),
    ],
)
def test_one_price_is_enough_to_speak_of_a_cost(prices: Prices, stock: StockRows) -> None:
    design = bed_of(QUEEN).design

    assert not is_anything_priced(design)
    assert is_anything_priced(replace(design, prices=prices, stock=stock))
