"""A table to type in: what is typed stays, what is pasted lands where it should."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from PySide6.QtCore import QItemSelectionModel, Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QApplication, QWidget
from pytestqt.modeltest import ModelTester
from pytestqt.qtbot import QtBot

from app.tables.cells import plain, sized
from app.tables.entries import Entries, Entry
from app.tables.entry_table import EntryTable, block_of

COLUMNS = (
    Entry("name", plain("Board"), "What you call it"),
    Entry("length", sized("Length"), "As measured", is_number=True),
    Entry("price", plain("Price"), is_number=True),
)


@pytest.fixture
def entries() -> Entries:
    table = Entries(COLUMNS)
    table.show_rows([("ash 1", "2400", ""), ("ash 2", "1800", "12")], "mm")
    return table


@pytest.fixture
def table(entries: Entries, shown: Callable[[QWidget], QWidget]) -> EntryTable:
    view = EntryTable(entries, "Rack")
    view.paste_asked.connect(lambda: view.lay(QGuiApplication.clipboard().text()))
    shown(view)
    return view


def told(entries: Entries) -> list[object]:
    heard: list[object] = []
    entries.typed.connect(heard.append)
    return heard


def test_it_keeps_every_promise_of_an_item_model(
    qtmodeltester: ModelTester, entries: Entries
) -> None:
    qtmodeltester.check(entries)


def test_an_empty_row_waits_at_the_end(entries: Entries) -> None:
    assert entries.rowCount() == 3
    assert entries.rows == (("ash 1", "2400", ""), ("ash 2", "1800", "12"))


def test_what_is_typed_in_the_empty_row_makes_it_a_row(entries: Entries) -> None:
    heard = told(entries)

    entries.setData(entries.index(2, 0), "ash 3")

    assert entries.rows[2] == ("ash 3", "", "")
    assert entries.rowCount() == 4
    assert heard == [entries.rows]


def test_nothing_is_told_when_a_cell_is_left_as_it_was(entries: Entries) -> None:
    heard = told(entries)

    entries.setData(entries.index(0, 1), "2400")
    entries.setData(entries.index(2, 0), "  ")

    assert heard == []


def test_a_pasted_block_grows_the_table(entries: Entries) -> None:
    entries.lay(entries.index(1, 0), [["oak 1", "2000"], ["oak 2", "2100"], ["oak 3", "2200"]])

    assert entries.rows[1] == ("oak 1", "2000", "12")
    assert entries.rows[3] == ("oak 3", "2200", "")


def test_a_table_of_fixed_rows_does_not_grow() -> None:
    table = Entries(
        (Entry("key", plain("What"), is_fixed=True), Entry("price", plain("Price"))), can_grow=False
    )
    table.show_rows([("sheet", ""), ("screws", "")], "mm")

    table.lay(table.index(0, 0), [["x", "10"], ["y", "20"], ["z", "30"]])

    assert table.rows == (("sheet", "10"), ("screws", "20"))


def test_rows_that_are_taken_out_are_gone(entries: Entries) -> None:
    heard = told(entries)

    entries.take_out([0])

    assert entries.rows == (("ash 2", "1800", "12"),)
    assert heard == [entries.rows]


def test_the_cell_in_trouble_is_marked_and_no_other(entries: Entries) -> None:
    entries.mark_trouble((1, "length"))

    marked = [
        (row, column)
        for row in range(3)
        for column in range(3)
        if entries.index(row, column).data(Qt.ItemDataRole.BackgroundRole) is not None
    ]
    assert marked == [(1, 1)]


def test_headings_name_the_shown_unit(entries: Entries) -> None:
    entries.show_rows(entries.rows, "inch")

    assert entries.headerData(1, Qt.Orientation.Horizontal) == "Length, in"


def test_a_cell_is_typed_with_the_keyboard(table: EntryTable, qtbot: QtBot) -> None:
    table.setFocus()
    table.setCurrentIndex(table.entries.index(0, 1))

    qtbot.keyClicks(table, "2")
    editor = QApplication.focusWidget()
    assert editor is not table
    qtbot.keyClicks(editor, "350")
    with qtbot.waitSignal(table.entries.typed):
        qtbot.keyClick(editor, Qt.Key.Key_Return)

    assert table.entries.rows[0][1] == "2350"


def test_cells_are_copied_and_pasted_as_a_block(table: EntryTable, qtbot: QtBot) -> None:
    QGuiApplication.clipboard().setText("elm 1\t900\nelm 2\t1000\n")
    table.setCurrentIndex(table.entries.index(2, 0))

    qtbot.keyClick(table, Qt.Key.Key_V, Qt.KeyboardModifier.ControlModifier)

    assert table.entries.rows[2:] == (("elm 1", "900", ""), ("elm 2", "1000", ""))

    whole_row = (
        QItemSelectionModel.SelectionFlag.ClearAndSelect | QItemSelectionModel.SelectionFlag.Rows
    )
    table.selectionModel().select(table.entries.index(3, 0), whole_row)
    qtbot.keyClick(table, Qt.Key.Key_C, Qt.KeyboardModifier.ControlModifier)
    assert QGuiApplication.clipboard().text() == "elm 2\t1000\t\n"


def test_delete_empties_the_chosen_cells(table: EntryTable, qtbot: QtBot) -> None:
    table.setCurrentIndex(table.entries.index(1, 2))

    qtbot.keyClick(table, Qt.Key.Key_Delete)

    assert table.entries.rows[1] == ("ash 2", "1800", "")


@pytest.mark.parametrize("between", ["\t", ";", ","])
def test_a_block_is_read_whatever_parts_its_cells(between: str) -> None:
    assert block_of(f'a{between}"1 1/2"\nb{between}2\n') == [["a", "1 1/2"], ["b", "2"]]
