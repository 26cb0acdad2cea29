"""Buying list, price list, cost sheet and quote: what is typed or ticked comes into the design."""

from __future__ import annotations

from collections.abc import Callable, Iterator

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QWidget
from pytestqt.qtbot import QtBot

from app.panes.cost_desk import CostDesk
from app.panes.cost_pane import PRICES, QUOTE, CostPane
from app.session import Session
from app.tables.costs import SHEET_COLUMNS
from app.tables.rows import ROW
from model.bed import Design
from model.exports.cost_csv import COLUMNS
from model.stock.prices import ExtraRow, PriceRow, Prices

# Four legs and a deck: little to plan, so that the tests are quick.
PLAIN = {"left.drawers": 0, "right.drawers": 0, "shown_unit": "mm"}
START = Design(choices=PLAIN, prices=Prices(currency="EUR"))


@pytest.fixture
def session(qtbot: QtBot) -> Iterator[Session]:
    made = Session(START)
    yield made
    made.worker.wait()


@pytest.fixture
def desk(qtbot: QtBot, session: Session, shown: Callable[[QWidget], QWidget]) -> CostDesk:
    desk = CostDesk(session, CostPane())
    shown(desk.pane)
    settled(qtbot, desk)
    return desk


def settled(qtbot: QtBot, desk: CostDesk) -> None:
    """Wait until the costs of the open bed, by its best plans, are on view."""

    def is_final() -> None:
        assert desk.shown is not None
        assert desk.shown.bed is desk.session.bed
        assert desk.shown.is_final

    qtbot.waitUntil(is_final, timeout=30_000)


def place_of(desk: CostDesk, key: str) -> int:
    assert desk.shown is not None
    return next(i for i, line in enumerate(desk.shown.prices) if line.key == key)


def type_in(desk: CostDesk, row: int, column: str, text: str) -> None:
    entries = desk.pane.prices.entries
    place = next(i for i, each in enumerate(entries.columns) if each.name == column)
    entries.setData(entries.index(row, place), text)


def trouble(desk: CostDesk) -> str:
    return desk.pane._trouble.text()


def test_the_sheet_has_the_columns_of_its_file() -> None:
    assert SHEET_COLUMNS == COLUMNS


def test_the_sheet_is_read_from_what_is_bought_down_to_what_is_left_over(desk: CostDesk) -> None:
    sections = [desk.pane.sheet.sorted.index(k, 0).data() for k in range(200)]
    in_order = list(dict.fromkeys(each for each in sections if each))

    assert in_order[:2] == ["bought", "work"]
    assert in_order.index("total") < in_order.index("waste")


def test_everything_that_is_bought_is_listed_and_nothing_is_priced(desk: CostDesk) -> None:
    assert desk.shown is not None
    groups = {row.buy.group for row in desk.shown.buys}

    assert {"boards", "hardware", "screws", "glue", "abrasives", "finish"} <= groups
    assert all(row.buy.total is None for row in desk.shown.buys)
    assert "incomplete" in desk.shown.total
    assert desk.shown.quote.startswith("DRAFT")


def test_a_price_that_is_typed_is_kept_and_a_step_that_can_be_undone(
    qtbot: QtBot, desk: CostDesk
) -> None:
    assert desk.shown is not None
    key = desk.shown.prices[0].key

    type_in(desk, 0, "price", "12,50")

    assert desk.session.design.prices.row(key) == PriceRow(key=key, price=12.5)
    settled(qtbot, desk)
    row = next(each for each in desk.shown.buys if each.key == key)
    assert str(row.buy.price) == "12.50"
    assert row.buy.total is not None
    desk.session.undo()
    assert desk.session.design.prices.rows == ()


def test_a_price_that_is_none_stays_typed_and_says_why(desk: CostDesk) -> None:
    type_in(desk, 0, "price", "dear")

    assert desk.session.design.prices.rows == ()
    assert "dear" in trouble(desk)
    assert desk.pane.prices.entries.trouble == (0, "price")


def test_cells_that_mean_nothing_for_a_row_are_not_typed_in(desk: CostDesk) -> None:
    row = place_of(desk, "general/hour")
    entries = desk.pane.prices.entries
    names = [each.name for each in entries.columns]

    def takes(column: str) -> bool:
        flags = entries.flags(entries.index(row, names.index(column)))
        return bool(flags & Qt.ItemFlag.ItemIsEditable)

    assert takes("value")
    assert not takes("price")
    assert not takes("name")


def test_a_charge_of_ones_own_begins_in_the_last_row(qtbot: QtBot, desk: CostDesk) -> None:
    last = desk.pane.prices.entries.rowCount() - 1

    type_in(desk, last, "name", "Delivery")

    assert desk.session.design.prices.extras == (ExtraRow(name="Delivery"),)
    settled(qtbot, desk)
    type_in(desk, place_of(desk, "extra/Delivery"), "price", "40")
    assert desk.session.design.prices.extras == (ExtraRow(name="Delivery", price=40.0),)


def test_a_line_is_ticked_as_bought(qtbot: QtBot, desk: CostDesk) -> None:
    table = desk.pane.buying
    desk.pane.show_list(0)
    key = table.sorted.index(0, 0).data(ROW).key

    qtbot.mouseClick(
        table.viewport(),
        Qt.MouseButton.LeftButton,
        pos=table.visualRect(table.sorted.index(0, 0)).center(),
    )

    assert desk.session.design.progress.bought == frozenset({key})
    settled(qtbot, desk)
    assert [row.key for row in desk.shown.buys if row.is_bought] == [key]


def test_the_price_list_goes_to_a_spreadsheet_and_comes_back(qtbot: QtBot, desk: CostDesk) -> None:
    desk.pane.show_list(PRICES)
    qtbot.mouseClick(desk.pane.template_button, Qt.MouseButton.LeftButton)
    lines = [line.split("\t") for line in QGuiApplication.clipboard().text().splitlines()]
    price = lines[0].index("price")
    lines[1][price] = "7.25"
    QGuiApplication.clipboard().setText("\n".join("\t".join(line) for line in lines))

    qtbot.mouseClick(desk.pane.paste_button, Qt.MouseButton.LeftButton)

    assert trouble(desk) == ""
    row = desk.session.design.prices.row(lines[1][0])
    assert row is not None
    assert row.price == 7.25


def test_the_quote_is_copied_as_text(qtbot: QtBot, desk: CostDesk) -> None:
    desk.pane.show_list(QUOTE)

    qtbot.mouseClick(desk.pane.copy_button, Qt.MouseButton.LeftButton)

    assert QGuiApplication.clipboard().text().startswith("DRAFT of a quote")
