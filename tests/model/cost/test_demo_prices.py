"""Prices come from the maker, or from a demo that says that they are invented."""

from __future__ import annotations

import csv
from functools import cache
from pathlib import Path

import pytest

from model.bed import solve
from model.cost.cost_sheet import CostSheet, cost_sheet
from model.cost.costing import costing
from model.designs import read
from model.shop.plans import plans
from tests.model.cost.beds import DEMOS, FOLDER

RESOURCES = Path(__file__).resolve().parents[3] / "resources"


@cache
def sheet_of(name: str) -> CostSheet:
    bed = solve(read(FOLDER / f"{name}.bedwright"))
    return cost_sheet(costing(bed, plans(bed)))


@pytest.mark.parametrize("name", ["painted_storage_queen", "loft_single"])
def test_some_demos_are_priced_and_timed_through(name: str) -> None:
    sheet = sheet_of(name)

    assert sheet.missing == ()
    assert min(sheet.materials, sheet.hardware, sheet.consumables, sheet.labour) > 0


def test_one_demo_shows_what_an_incomplete_cost_looks_like() -> None:
    missing = sheet_of("guest_room_double").missing

    assert [sentence.partition(" of ")[0] for sentence in missing] == ["4", "2"]
    assert "not priced" in missing[0]
    assert "not timed" in missing[1]


@pytest.mark.parametrize("name", DEMOS)
def test_no_demo_passes_its_prices_off_as_real(name: str) -> None:
    prices = read(FOLDER / f"{name}.bedwright").prices

    assert prices.is_example or not (prices.rows or prices.rates or prices.hour)


@pytest.mark.parametrize("table", sorted(RESOURCES.glob("*.csv")), ids=lambda table: table.stem)
def test_no_table_of_the_trade_has_a_price(table: Path) -> None:
    headings = next(csv.reader(table.read_text("utf-8").splitlines()))

    assert not [each for each in headings if "price" in each or "cost" in each]
    assert "source" in headings
