"""A price list as a table: all keys that a bed needs, empty, filled in a spreadsheet, read back."""

from __future__ import annotations

import csv
import io
from dataclasses import replace

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from model.cost.cost_sheet import cost_sheet
from model.cost.costing import at_prices
from model.cost.price_cells import amount
from model.cost.price_keys import COLUMNS
from model.cost.price_table import price_lines, without_figures
from model.cost.read_prices import prices_of_table, with_cell, without_extra
from model.errors import BadInput
from model.stock.prices import ExtraRow, PriceRow, Prices, RateRow
from tests.model.cost.beds import taken_of

TAKEN = taken_of("painted_storage_queen")
HEADINGS = ",".join(COLUMNS)


def table_of(prices: Prices, delimiter: str = ",") -> str:
    file = io.StringIO()
    lines = csv.writer(file, delimiter=delimiter, lineterminator="\r\n")
    lines.writerow(COLUMNS)
    lines.writerows(line.cells for line in price_lines(TAKEN, prices))
    return file.getvalue()


def filled(delimiter: str = ",", mark: str = ".") -> str:
    """The empty table with a figure in every open cell, as a maker fills it."""
    rows = list(csv.reader(io.StringIO(table_of(Prices(), delimiter)), delimiter=delimiter))
    for row, line in zip(rows[1:], price_lines(TAKEN, Prices()), strict=True):
        for column in line.open:
            if column in ("price", "minutes"):
                row[COLUMNS.index(column)] = f"1{mark}50"
    file = io.StringIO()
    csv.writer(file, delimiter=delimiter).writerows(rows)
    return file.getvalue()


def test_cells_ship_empty_and_every_key_is_there() -> None:
    lines = price_lines(TAKEN, Prices())

    keys = [line.key for line in lines]
    assert {need.key for need in TAKEN.needs if not need.on_hand} <= set(keys)
    assert {f"work/{each.key}" for each in TAKEN.work} <= set(keys)
    assert len(keys) == len(set(keys))
    assert not any(line.price or line.minutes for line in lines)


@pytest.mark.parametrize(("delimiter", "mark"), [(",", "."), (";", ","), ("\t", ","), ("\t", ".")])
def test_a_filled_table_prices_and_times_the_bed(delimiter: str, mark: str) -> None:
    prices = prices_of_table(filled(delimiter, mark), "prices.csv", Prices(hour=40.0))
    prices = replace(prices, hour=40.0)  # the empty cell of the hour has taken it out

    sheet = cost_sheet(at_prices(replace(TAKEN, plans=()), prices))

    assert {row.price for row in prices.rows} == {1.5}
    told = {line.minutes for line in price_lines(TAKEN, prices) if line.key.startswith("work/")}
    assert told == {"1.5"}
    assert sheet.is_complete


@pytest.mark.parametrize(
    ("row", "pack", "minutes"),
    [
        # 231 cubic inches a gallon, 0.3048 m a foot: exact by definition.
        ("finish/paint,,US gallon,1,60,,", 3.785411784, None),
        ("finish/paint,,quarts,4,60,,", 3.785411784, None),
        ("finish/paint,,litre,2.5,60,,", 2.5, None),
        ("finish/paint,,,1,60,,", 0.946352946, None),
        ("glue/pva,,pint,1,8,,", 0.473176473, None),
        ("work/sanding/80,,sq ft,,,0.9290304,", None, 10.0),
        ("work/sanding/80,,m2,,,10,", None, 10.0),
        ("work/mill,,feet,,,0.3048,", None, 1.0),
        ("work/mill,,,,,0.3048,", None, 1.0),
        ("work/holes,,,,,0.4,", None, 0.4),
    ],
)
def test_packs_and_rates_are_read_by_the_measure_that_is_told(
    row: str, pack: float | None, minutes: float | None
) -> None:
    """An inch shop: what names no measure is told as that shop counts."""
    prices = prices_of_table(f"{HEADINGS}\n{row}\n", "p", Prices(), "inch")

    found = [each.pack for each in prices.rows] + [each.minutes for each in prices.rates]
    assert found == [pytest.approx(minutes if pack is None else pack)]


def test_a_rate_does_not_drift_from_list_to_list() -> None:
    """6 minutes a m2 are told as 0.557 a square foot, and are 6 again when that is read."""
    prices = Prices(rates=tuple(RateRow(key=each.key, minutes=6.0) for each in TAKEN.work))

    again = prices_of_table(table_of(prices), "p", Prices(), "inch")

    assert {row.minutes for row in again.rates} == {6.0}


def test_a_measure_of_another_kind_is_refused() -> None:
    with pytest.raises(BadInput, match="unit is “m2”; it can be litre, US quart, US gallon"):
        prices_of_table(f"{HEADINGS}\nfinish/paint,,m2,1,60,,\n", "p", Prices())


def test_a_cell_is_typed_by_the_measure_of_its_row() -> None:
    typed = with_cell(Prices(), "work/sanding/80", "minutes", "0.5", "square foot")

    (line,) = [x for x in price_lines(TAKEN, typed) if x.key == "work/sanding/80"]
    assert (line.unit, line.minutes) == ("square foot", "0.5")
    assert typed.minutes("sanding/80") == pytest.approx(0.5 / 0.3048**2)


def test_a_list_that_is_written_and_read_is_the_same_list() -> None:
    need, work = TAKEN.needs[3], TAKEN.work[2]
    prices = Prices(
        currency="kr", decimals=0, board_measure="cubic metre", hour=512.5, overhead=0.125,
        margin=0.3, tax=0.25, offcut_share=0.4, valid_days=14, terms="Half when it is ordered.",
        is_example=True, extras=(ExtraRow(name="Delivery", price=300.0),),
        rows=(PriceRow(key=need.key, price=79.95, pack=2.0),),
        rates=(RateRow(key=work.key, minutes=2.5),),
    )  # fmt: skip

    found = prices_of_table(table_of(prices), "prices.csv", Prices())

    packs = {row.key: row for row in found.rows}
    assert packs[need.key] == prices.rows[0]
    assert all(row.price is None for row in found.rows if row.key != need.key)
    assert replace(found, rows=()) == replace(prices, rows=())


def test_rows_of_other_beds_stay() -> None:
    other = PriceRow(key="sheet/mdf_18/2440x1220", price=33.0)

    found = prices_of_table(f"{HEADINGS}\nglue/pva,,,,4.5,,\n", "p", Prices(rows=(other,)))

    assert found.rows == (other, PriceRow(key="glue/pva", price=4.5))


def test_an_emptied_cell_takes_the_price_away() -> None:
    start = Prices(rows=(PriceRow(key="glue/pva", price=4.5),))

    assert prices_of_table(f"{HEADINGS}\nglue/pva,,,,,,\n", "p", start).rows == ()


@pytest.mark.parametrize(
    ("row", "said"),
    [
        ("glue/pva,,,,about 5,,", "p, line 2: price is “about 5”, not an amount"),
        ("glue/pva,,,,-3,,", "p, line 2: price is “-3”, and nothing costs less than nothing"),
        ("glue/pva,,,0,3,,", "p, line 2: pack is 0"),
        ('glue/pva,,,,"1,234",,', "could be 1 and a bit or thousands"),
        ("glue/pva,,,,1e9,,", "not an amount"),
        ("glue/pva,,,,9999999999,,", "more than anything costs"),
        ("glu/pva,,,,3,,", "“glu/pva” is no key of a price list. Did you mean glue"),
        ("general/margn,,,,,,20", "Did you mean margin?"),
        ("general/margin,,,,,,100", "margin is 100; it takes a percentage up to 99"),
        ("general/decimals,,,,,,1.5", "it takes a whole number up to 4"),
        ("general/board_measure,,,,,,foot", "not board foot or cubic metre"),
        ("work/holes,,,,,a lot,", "p, line 2: minutes is “a lot”"),
        (",,,,3,,", "p, line 2: the key is missing"),
        ("glue/pva,,,,3,,\nglue/pva,,,,4,,", "p, line 3: “glue/pva” stands twice"),
        ("glue/pva,,,,3,,,7", "more cells than headings"),
    ],
)
def test_a_bad_cell_is_said_by_its_line(row: str, said: str) -> None:
    with pytest.raises(BadInput) as refusal:
        prices_of_table(f"{HEADINGS}\n{row}\n", "p", Prices())

    assert said in str(refusal.value)


@pytest.mark.parametrize(
    ("headings", "said"),
    [("name,price", "has no column “key”"), ("key,prcie", "has a column “prcie”"),
     ("key,price,price", "has the column “price” twice"), ("key,price", "holds no rows")],
)  # fmt: skip
def test_headings_are_looked_at_first(headings: str, said: str) -> None:
    with pytest.raises(BadInput, match=said):
        prices_of_table(f"{headings}\n", "p", Prices())


@pytest.mark.parametrize(
    ("typed", "figure"),
    [
        ("12.50", 12.5), ("12,50", 12.5), (" 1 234,5 ", 1234.5), ("1,234.50", 1234.5),
        ("1.234,50", 1234.5), ("1.234.567", 1234567.0), ("€ 7", 7.0), ("7 kr", 7.0), ("", None),
        ("'3", 3.0), ("0", 0.0),
    ],
)  # fmt: skip
def test_amounts_are_read_as_people_write_them(typed: str, figure: float | None) -> None:
    assert amount(typed, "here", "price", "kr") == figure


@given(st.text(max_size=30))
def test_any_text_is_an_amount_or_a_sentence(typed: str) -> None:
    try:
        found = amount(typed, "here", "price")
    except BadInput as refusal:
        assert str(refusal).startswith("here: price is")
    else:
        assert found is None or 0 <= found <= 1e9


@example(1.234)
@example(123.456)
@example(1e-7)
@given(st.floats(0, 1e8).map(lambda figure: round(figure, 4)))
def test_what_a_cell_shows_is_read_as_what_it_was(figure: float) -> None:
    prices = Prices(rows=(PriceRow(key="glue/pva", price=figure),))
    (line,) = [each for each in price_lines(TAKEN, prices) if each.key == "glue/pva"]

    assert amount(line.price, "here", "price") == pytest.approx(figure, rel=1e-9)


def test_one_cell_is_changed_alone() -> None:
    start = Prices(rows=(PriceRow(key="glue/pva", price=4.5, pack=0.5),))

    assert with_cell(start, "glue/pva", "price", "5").rows[0] == PriceRow(
        key="glue/pva", price=5.0, pack=0.5
    )
    assert with_cell(start, "work/holes", "minutes", "0,5").minutes("holes") == 0.5
    assert with_cell(start, "general/tax", "value", "19 %").tax == 0.19


def test_a_template_has_no_figure_of_the_makers() -> None:
    prices = Prices(rows=(PriceRow(key="glue/pva", price=4.5),), hour=40.0)

    assert not any(
        line.price or line.minutes for line in without_figures(price_lines(TAKEN, prices))
    )


def test_a_charge_of_ones_own_is_taken_out_by_its_name() -> None:
    start = Prices(extras=(ExtraRow(name="delivery", price=40.0), ExtraRow(name="hire")))

    assert without_extra(start, "delivery").extras == (ExtraRow(name="hire"),)
