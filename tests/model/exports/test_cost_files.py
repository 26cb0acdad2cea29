"""Buying list, cost sheet, quote: opened again as a spreadsheet and a client would read them."""

from __future__ import annotations

import csv
import io
from dataclasses import replace
from decimal import Decimal
from typing import Any

import pytest

from model.cost.buy import Need
from model.cost.cost_sheet import cost_sheet
from model.cost.costing import Costing, at_prices
from model.cost.leftover import Waste
from model.exports import cost_csv, quote_text, shopping_csv, summary
from model.exports.cost_csv import PAID_BEFORE
from model.stock.prices import ExtraRow, PriceRow, Prices, RateRow
from tests.model.cost.beds import bed_of, taken_of

QUEEN = "painted_storage_queen"


def prices(**more: Any) -> Prices:
    taken = taken_of(QUEEN)
    base = Prices(
        currency="=EUR",  # somebody's joke: no cell may run it
        rows=tuple(PriceRow(key=need.key, price=9.99) for need in taken.needs),
        rates=tuple(RateRow(key=each.key, minutes=2.0) for each in taken.work),
        hour=50.0, overhead=0.1, margin=0.2, tax=0.19,
        extras=(ExtraRow(name="Delivery", price=120.0),),
    )  # fmt: skip
    return replace(base, **more)


def costed(**more: Any) -> Costing:
    return at_prices(replace(taken_of(QUEEN), plans=()), prices(**more))


def rows_of(content: bytes) -> list[dict[str, str]]:
    return list(csv.DictReader(io.StringIO(content.decode("utf-8"))))


def test_the_buying_list_has_a_line_for_each_thing_and_adds_up() -> None:
    costing = costed()

    rows = rows_of(shopping_csv.content(costing))

    assert len(rows) == len(costing.buys)
    for row in rows:
        assert float(row["packs"]) * float(row["pack"]) >= float(row["quantity"]) - 1e-9
        assert Decimal(row["total"]) == round(Decimal(row["price"]) * Decimal(row["packs"]), 2)
        assert row["unit"]
    sheet = cost_sheet(costing)
    told = sum(Decimal(row["total"]) for row in rows)
    assert told == sheet.materials + sheet.hardware + sheet.consumables


def test_what_is_ticked_as_bought_is_printed_so() -> None:
    rows = rows_of(shopping_csv.content(costed(), {"glue/pva"}))

    assert [row["key"] for row in rows if row["bought"] == "yes"] == ["glue/pva"]
    assert {row["bought"] for row in rows_of(shopping_csv.content(costed()))} == {""}


def test_what_nobody_has_priced_says_so() -> None:
    rows = rows_of(shopping_csv.content(costed(rows=())))

    assert {row["price"] for row in rows} == {row["total"] for row in rows} == {"not priced"}


def test_examples_are_headed_so() -> None:
    mine, example = costed(), costed(is_example=True)

    assert {row["prices"] for row in rows_of(shopping_csv.content(mine))} == {""}
    assert {row["prices"] for row in rows_of(shopping_csv.content(example))} == {"example prices"}
    assert rows_of(cost_csv.content(example, "inch"))[0]["name"] == "example prices"
    said = quote_text.content(bed_of(QUEEN), example).decode()
    assert "example prices" in said
    assert "example prices" not in quote_text.content(bed_of(QUEEN), mine).decode()


def test_no_cell_can_run() -> None:
    for content in (shopping_csv.content(costed()), cost_csv.content(costed(), "inch")):
        cells = [cell for row in csv.reader(io.StringIO(content.decode())) for cell in row]
        assert not any(cell.startswith(("=", "+", "-", "@")) for cell in cells)
        assert "'=EUR" in cells


def test_the_cost_sheet_adds_up_to_its_total() -> None:
    rows = rows_of(cost_csv.content(costed(), "inch"))

    def amounts(section: str) -> Decimal:
        found = (row["amount"] for row in rows if row["section"] == section)
        return sum((Decimal(each) for each in found), Decimal(0))

    by_name = {row["name"]: row for row in rows}
    direct = amounts("bought") + amounts("work") + amounts("charge")
    assert Decimal(by_name["All before overhead"]["amount"]) == direct
    assert amounts("total") == direct + Decimal(by_name["Overhead"]["amount"])
    assert not [row for row in rows if row["section"] == "missing"]


def test_an_incomplete_sheet_says_what_is_missing() -> None:
    rows = rows_of(cost_csv.content(costed(rows=(), rates=()), "inch"))

    assert [row["note"] for row in rows if row["section"] == "total"] == ["incomplete"]
    assert len([row for row in rows if row["section"] == "missing"]) == 2
    assert {row["rate"] for row in rows if row["section"] == "work"} == {"not timed"}
    assert {row["amount"] for row in rows if row["section"] == "bought"} == {"not priced"}


def test_the_cost_sheet_says_that_stock_on_hand_counts_nothing() -> None:
    """A sum of 0.00 beside eighteen boards looks like a mistake, or like a gift to the client."""
    needs = (
        Need(key="on hand/oak/K1", group="on hand", name="Oak", quantity=1, unit="board",
             on_hand=True),
        Need(key="sheet/ply", group="sheets", name="Ply", quantity=1, unit="sheet", price=60.0),
    )  # fmt: skip
    costing = at_prices(replace(taken_of(QUEEN), plans=(), needs=needs), prices())

    bought = {row["name"]: row for row in rows_of(cost_csv.content(costing, "inch"))}

    assert (bought["on hand"]["amount"], bought["on hand"]["note"]) == ("0.00", PAID_BEFORE)
    assert bought["sheets"]["note"] == ""


def test_offcuts_and_waste_are_told_apart_from_the_cost() -> None:
    rows = rows_of(cost_csv.content(at_prices(taken_of(QUEEN), prices()), "inch"))

    after = [row["section"] for row in rows[[row["section"] for row in rows].index("total") :]]
    assert {"offcut", "waste"} <= set(after)
    assert any("% waste" in row["note"] for row in rows)


def test_rows_of_waste_of_one_wood_and_thickness_read_differently() -> None:
    spent = Waste(
        material="european_beech", material_name="European beech", thickness=25.4, is_sheet=False,
        area=2e5, pieces=1.5e5, offcuts=0.0,
    )  # fmt: skip
    waste = (spent, replace(spent, sold_width=160.0), replace(spent, sold_width=90.0))
    costing = Costing(prices=prices(), buys=(), work=(), offcuts=(), waste=waste, without_stock=0)

    names = [row[1] for row in cost_csv.rows(costing, "mm") if row[0] == "waste"]

    # Boards that are sold at their width are planed: no rough class.
    assert names == [
        "European beech, 25.4 mm rough (4/4)",
        "European beech, 25.4 mm x 160 mm",
        "European beech, 25.4 mm x 90 mm",
    ]


def test_a_quote_shows_no_hour_rate_or_margin_and_adds_up() -> None:
    said = quote_text.content(bed_of(QUEEN), costed()).decode()
    lines = [line for line in said.splitlines() if line.endswith("=EUR")]

    amounts = {line[:40].strip(): Decimal(line.split()[-2]) for line in lines}
    net, tax, total = amounts.pop("Sum"), amounts.pop("Tax, 19 %"), amounts.pop("Total with tax")
    assert net == sum(amounts.values())
    assert total == net + tax
    assert not any(word in said.lower() for word in ("margin", "overhead", "minute", " h "))
    assert "DRAFT" not in said
    assert "30 days" in said


@pytest.mark.parametrize(
    ("finish", "said"),
    [("painted", "wood, fittings and finish"), ("none", "all wood and fittings.")],
)
def test_a_quote_says_what_is_in_it(finish: str, said: str) -> None:
    bed = bed_of(QUEEN, finish=finish)

    text = quote_text.content(bed, costed()).decode()

    assert said in text
    assert "4 drawers" in text
    assert '60" x 80"' in text
    assert "Not included: the mattress." in text


def test_a_quote_with_anything_missing_is_a_draft() -> None:
    said = quote_text.content(bed_of(QUEEN), costed(hour=None)).decode()

    assert said.startswith("DRAFT")
    assert "What an hour of the shop costs is not told." in said
    assert "days" not in said  # a draft stands for no day


@pytest.mark.parametrize("terms", ["Half when ordered.\nHalf on delivery.", "x" * 300, ""])
def test_lines_of_a_quote_fit_the_page_and_the_terms_are_all_there(terms: str) -> None:
    said = quote_text.content(bed_of(QUEEN), costed(terms=terms)).decode()

    assert max(map(len, said.splitlines())) <= 80
    assert "".join(terms.split()) in "".join(said.split())


def test_the_summary_tells_the_cost_where_anything_is_priced(monkeypatch: Any) -> None:
    bed = bed_of(QUEEN)
    mine = replace(bed, design=replace(bed.design, prices=prices(is_example=True)))
    monkeypatch.setattr(summary, "costing_of", lambda _: costed(is_example=True))
    sheet = cost_sheet(costed())

    told = summary.summary(mine)["cost"]

    assert told == {
        "currency": "=EUR", "materials": float(sheet.materials), "total": float(sheet.total),
        "complete": True, "not_priced": 0, "not_timed": 0, "example": True,
    }  # fmt: skip
