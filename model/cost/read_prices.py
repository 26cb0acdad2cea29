"""Reading a price table back: from a CSV file, from cells pasted, or one cell that was typed."""

from __future__ import annotations

import csv
import io
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import replace
from difflib import get_close_matches
from typing import TypeVar

from model.cost.general_prices import GENERAL, with_general
from model.cost.measures import measure_called, measures_of, metric_measure, shop_measure
from model.cost.price_cells import amount
from model.cost.price_keys import COLUMNS, EXTRA, WHOLE, WORK, Column
from model.errors import BadInput
from model.stock.price_record import LONGEST_PRICE_KEY
from model.stock.prices import ExtraRow, PriceRow, Prices, RateRow

_MOST_ROWS = 2000
_KEPT_PLACES = 9  # a US quart in litres has that many, so that nothing drifts from list to list
_NOTE = "note"  # a column that is read by nobody here, as is the name
_FIGURES = ("pack", "price", "minutes", "value")
_KINDS = (
    "abrasives", "boards", "brackets", "connectors", "dowels", "finish", "glides", "glue",
    "hardware", "pulls", "screws", "sheet", "slides", "strap", "washers",
)  # fmt: skip
_TAB = "\t"

Cells = Mapping[str, str]
R = TypeVar("R")


def prices_of_table(text: str, name: str, start: Prices, unit: str = "mm") -> Prices:
    """A price list with the rows of a table put into it; rows that the table lacks stay.

    Cells are parted by commas, semicolons or tabs, under a line of headings (see `COLUMNS`). A row
    whose cells are all empty has no price. What is counted in litres, m2 or metres may be told by
    the quart, square foot or foot: as its cell of the column `unit` says, or where that is empty
    as lengths are shown in `unit`. Refused with BadInput, by line: an unknown heading or key, a key
    that stands twice, a cell that is no amount. `name` is what sentences call the table.
    """
    rows = _rows(text, name)
    prices = start
    # The currency first: its name may stand in the other cells.
    for place, cells in sorted(rows, key=lambda row: row[1]["key"] != f"{WHOLE}currency"):
        given = {each: cells[each] for each in _FIGURES if each in cells}
        key = cells["key"]
        holds = _holds(key, cells.get("unit", ""), unit, place)
        prices = _changed(prices, key, given, holds, place)
    return prices


def with_cell(prices: Prices, key: str, column: Column, text: str, unit: str = "") -> Prices:
    """A price list with one cell changed, told by the measure that its row names in `unit`; refused
    with BadInput: what is no figure for it.
    """
    return _changed(prices, key, {column: text}, _holds(key, unit, "mm", key), key)


def without_extra(prices: Prices, name: str) -> Prices:
    """A price list without the charge of that name."""
    return replace(prices, extras=tuple(each for each in prices.extras if each.name != name))


# ---------------------------------------------------------------- the table


def _rows(text: str, name: str) -> list[tuple[str, Cells]]:
    plain = text.removeprefix("\ufeff")
    first = plain.partition("\n")[0]
    between = _TAB if _TAB in first else ";" if ";" in first else ","
    lines = _lines(plain, between, name)
    headings = _headings(next(lines, ("", []))[1], name)
    found: dict[str, tuple[str, Cells]] = {}
    for place, line in lines:
        cells = _cells(headings, line, place, name)
        if cells is None:
            continue
        if cells["key"] in found:
            raise BadInput(name, f"{place}: “{cells['key']}” stands twice.")
        found[cells["key"]] = place, cells
        if len(found) > _MOST_ROWS:
            raise BadInput(name, f"{name} holds more than {_MOST_ROWS} rows.")
    if not found:
        raise BadInput(name, f"{name} holds no rows under its headings.")
    return list(found.values())


def _lines(text: str, between: str, name: str) -> Iterator[tuple[str, list[str]]]:
    reader = csv.reader(io.StringIO(text, newline=""), delimiter=between)
    try:
        for line in reader:
            yield f"{name}, line {reader.line_num}", line
    except csv.Error:
        place = f"{name}, line {reader.line_num}"
        raise BadInput(name, f"{place}: this is not a table of cells; save it as CSV.") from None


def _headings(line: Sequence[str], name: str) -> list[str]:
    headings = [each.strip().lower() for each in line]
    known = (*COLUMNS, _NOTE)
    if "key" not in headings:
        raise BadInput(name, f"{name} has no column “key”; the columns are {', '.join(known)}.")
    if strange := next((each for each in headings if each not in known), None):
        raise BadInput(
            name,
            f"{name} has a column “{strange[:40]}” that no price list has; the columns are "
            f"{', '.join(known)}.",
        )
    if twice := next((each for each in headings if headings.count(each) > 1), None):
        raise BadInput(name, f"{name} has the column “{twice}” twice.")
    return headings


def _cells(headings: list[str], line: list[str], place: str, name: str) -> Cells | None:
    """The cells of a line by their headings, None for an empty line; short ones are filled up."""
    if not any(cell.strip() for cell in line):
        return None
    if any(cell.strip() for cell in line[len(headings) :]):
        raise BadInput(name, f"{place}: there are more cells than headings.")
    filled = [*line, *[""] * len(headings)][: len(headings)]
    cells = dict(zip(headings, (cell.strip().removeprefix("'") for cell in filled), strict=True))
    if not cells["key"]:
        raise BadInput(name, f"{place}: the key is missing; it says what the price is for.")
    return cells


# ---------------------------------------------------------------- one row


def _holds(key: str, told: str, unit: str, place: str) -> float:
    """How much of the measure that a thing is kept by is in the one that its row is told by."""
    if not (metric := metric_measure(key)):
        return 1.0
    measure = measure_called(told, metric) if told else shop_measure(metric, unit)
    if measure is None:
        known = ", ".join(each.name for each in measures_of(metric))
        raise BadInput("unit", f"{place}: unit is “{told[:40]}”; it can be {known}.")
    return measure.holds


def _changed(prices: Prices, key: str, given: Cells, holds: float, place: str) -> Prices:
    if key.startswith(WORK):
        return _with_rate(prices, key.removeprefix(WORK), given, holds, place)
    readers: dict[str, Callable[[Prices, str, Cells, str], Prices]] = {
        WHOLE: _with_general,
        EXTRA: _with_extra,
    }
    for begins, read in readers.items():
        if key.startswith(begins):
            return read(prices, key.removeprefix(begins), given, place)
    return _with_thing(prices, key, given, holds, place)


def _with_general(prices: Prices, name: str, given: Cells, place: str) -> Prices:
    if name not in GENERAL:
        raise BadInput(name, f"{place}: there is no “{WHOLE}{name[:60]}”{_near(name, GENERAL)}")
    return with_general(prices, name, given["value"], place) if "value" in given else prices


def _with_rate(prices: Prices, name: str, given: Cells, holds: float, place: str) -> Prices:
    _check_key(name, place)
    if "minutes" not in given:
        return prices
    minutes = amount(given["minutes"], place, "minutes")
    row = None if minutes is None else RateRow(key=name, minutes=_kept(minutes, 1 / holds))
    return replace(prices, rates=_put(prices.rates, row, lambda each: each.key == name))


def _with_extra(prices: Prices, name: str, given: Cells, place: str) -> Prices:
    _check_key(name, place)
    if "price" not in given:
        return prices
    row = ExtraRow(name=name, price=amount(given["price"], place, "price", prices.currency))
    return replace(prices, extras=_put(prices.extras, row, lambda each: each.name == name))


def _with_thing(prices: Prices, key: str, given: Cells, holds: float, place: str) -> Prices:
    kind = key.partition("/")[0]
    if kind not in _KINDS or "/" not in key:
        known = (*_KINDS, "work", "extra", "general")
        said = f"{place}: “{key[:60]}” is no key of a price list{_near(kind, known)}"
        raise BadInput("key", said)
    _check_key(key, place)
    old = prices.row(key) or PriceRow(key=key)
    price = amount(given["price"], place, "price", prices.currency) if "price" in given else None
    pack = amount(given["pack"], place, "pack") if "pack" in given else old.pack
    if pack and "pack" in given:
        pack = _kept(pack, holds)
    if pack == 0:
        raise BadInput("pack", f"{place}: pack is 0; it is how many are sold together.")
    row = PriceRow(key=key, price=price if "price" in given else old.price, pack=pack)
    known_row = row if (row.price, row.pack) != (None, None) else None
    return replace(prices, rows=_put(prices.rows, known_row, lambda each: each.key == key))


def _kept(figure: float, holds: float) -> float:
    """A figure by the metric measure, without dust; one told by it stays as it was typed."""
    return figure if holds == 1 else round(figure * holds, _KEPT_PLACES)


def _check_key(key: str, place: str) -> None:
    if not key or len(key) > LONGEST_PRICE_KEY or not key.isprintable():
        raise BadInput("key", f"{place}: the key is empty, too long or cannot be printed.")


def _put(rows: tuple[R, ...], row: R | None, is_old: Callable[[R], bool]) -> tuple[R, ...]:
    """The rows with one in place of the old one, else at the end; None takes the old one out."""
    if row is None:
        return tuple(each for each in rows if not is_old(each))
    if any(is_old(each) for each in rows):
        return tuple(row if is_old(each) else each for each in rows)
    return (*rows, row)


def _near(name: str, known: Iterable[str]) -> str:
    near = get_close_matches(name, list(known), n=3)
    return f". Did you mean {' or '.join(near)}?" if near else f". There are {', '.join(known)}."
