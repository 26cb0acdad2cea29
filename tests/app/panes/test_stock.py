"""Rack, sizes and sheets: what is typed comes into the design, what cannot be read stays typed."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import replace

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QWidget
from pytestqt.qtbot import QtBot

from app.panes.stock_desk import KINDS, StockDesk
from app.panes.stock_pane import StockPane
from app.session import Session
from model.bed import Design
from model.stock.rows import Board, SheetSize, StockRows

ASH = Board(
    name="a1", material="white_ash", thickness=50.8, length=2438.4, width=190.5,
    bad=((300.0, 0.0, 420.0, 190.5),),
)  # fmt: skip
IN_INCHES = Design(choices={"shown_unit": "inch"}, stock=StockRows(boards=(ASH,)))


@pytest.fixture
def session(qtbot: QtBot) -> Iterator[Session]:
    made = Session(IN_INCHES)
    yield made
    made.worker.wait()


@pytest.fixture
def pane(session: Session, shown: Callable[[QWidget], QWidget]) -> StockPane:
    pane = StockPane(KINDS)
    StockDesk(session, pane)
    shown(pane)
    return pane


def type_in(pane: StockPane, key: str, row: int, *cells: str) -> None:
    entries = pane.tables[key].entries
    for column, text in enumerate(cells):
        if text:
            entries.setData(entries.index(row, column), text)


def trouble(pane: StockPane) -> str:
    return pane._trouble.text() if pane._trouble.isVisible() else ""


def test_the_rack_of_the_design_is_shown_in_its_unit(pane: StockPane) -> None:
    row = pane.tables["boards"].entries.rows[0]

    assert row[:5] == ("a1", "White ash", "8/4", "96", "7 1/2")


def test_a_board_that_is_typed_cell_by_cell_is_kept_once_it_is_whole(
    session: Session, pane: StockPane
) -> None:
    type_in(pane, "boards", 1, "a2", "white ash", "8/4")
    assert session.design.stock.boards == (ASH,)
    assert trouble(pane) == "Row 2 is kept once it is whole: it still needs length and width."

    type_in(pane, "boards", 1, "", "", "", "7' 6", "6 1/4")

    assert trouble(pane) == ""
    assert session.design.stock.boards[1] == replace(
        ASH, name="a2", length=2286.0, width=158.75, bad=()
    )


def test_a_new_board_is_a_step_that_can_be_undone(session: Session, pane: StockPane) -> None:
    type_in(pane, "boards", 1, "a2", "white_ash", "8/4", "90", "6")
    assert len(session.design.stock.boards) == 2

    session.undo()

    assert session.design.stock.boards == (ASH,)
    assert len(pane.tables["boards"].entries.rows) == 1


def test_a_cell_that_cannot_be_read_stays_typed_and_says_why(
    session: Session, pane: StockPane
) -> None:
    entries = pane.tables["boards"].entries

    entries.setData(entries.index(0, 3), "ninety")

    assert session.design.stock.boards == (ASH,)
    assert entries.rows[0][3] == "ninety"
    assert entries.trouble == (0, "length")
    assert "boards, row 1" in trouble(pane)


def test_a_correction_is_taken_and_the_sentence_goes(session: Session, pane: StockPane) -> None:
    entries = pane.tables["boards"].entries
    entries.setData(entries.index(0, 3), "ninety")

    entries.setData(entries.index(0, 3), "90")

    assert trouble(pane) == ""
    assert session.design.stock.boards[0].length == 2286.0


def test_what_is_half_typed_goes_when_another_design_is_opened(
    session: Session, pane: StockPane
) -> None:
    type_in(pane, "boards", 1, "a2")

    session.open(Design())

    assert pane.tables["boards"].entries.rows == ()
    assert trouble(pane) == ""


def test_rows_pasted_with_their_headings_are_added(
    qtbot: QtBot, session: Session, pane: StockPane
) -> None:
    QGuiApplication.clipboard().setText(
        "board\twood\tclass\tlength (mm)\twidth (mm)\nb1\tred oak\t4/4\t2400\t180\n"
    )

    qtbot.mouseClick(pane.paste_button, Qt.MouseButton.LeftButton)

    assert session.design.stock.boards[1] == Board(
        name="b1", material="northern_red_oak", thickness=25.4, length=2400.0, width=180.0
    )


def test_cells_without_headings_are_laid_over_the_table(
    qtbot: QtBot, session: Session, pane: StockPane
) -> None:
    QGuiApplication.clipboard().setText("a7\twhite ash\t8/4\t100\t7\n")

    qtbot.mouseClick(pane.paste_button, Qt.MouseButton.LeftButton)

    assert session.design.stock.boards[1].name == "a7"


def test_an_offcut_on_hand_is_typed_among_the_sheets(
    qtbot: QtBot, session: Session, pane: StockPane
) -> None:
    pane.show_table("sheets")

    type_in(pane, "sheets", 0, "Birch plywood, sanded, 12 mm", "40", "24", "", "yes")

    assert session.design.stock.sheets == (
        SheetSize(material="birch_ply_12", length=1016.0, width=609.6, quantity=None, on_hand=True),
    )


def test_rows_are_taken_out(qtbot: QtBot, session: Session, pane: StockPane) -> None:
    table = pane.tables["boards"]
    table.setCurrentIndex(table.entries.index(0, 0))

    qtbot.mouseClick(pane.out_button, Qt.MouseButton.LeftButton)

    assert session.design.stock.boards == ()


def test_headings_are_copied_for_a_spreadsheet(qtbot: QtBot, pane: StockPane) -> None:
    qtbot.mouseClick(pane.headings_button, Qt.MouseButton.LeftButton)

    assert QGuiApplication.clipboard().text().startswith("Board\tWood\tThickness\tLength, in")


def test_a_board_that_no_part_is_cut_from_is_spoken_of_below(
    session: Session, pane: StockPane
) -> None:
    assert "Boards from" in pane._idle.text()  # by the board foot until the rack is asked for

    session.choose("boards_from", "rack")
    session.take_now()

    assert pane._idle.text() == "Rack, row 1: no part of this bed is made of White ash."
