"""Materials of the maker's own: from a file or a spreadsheet into the bed, and out again."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from pathlib import Path
from types import SimpleNamespace
from typing import Any

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QFileDialog, QWidget
from pytestqt.modeltest import ModelTester
from pytestqt.qtbot import QtBot

from app.fields.option_field import OptionField
from app.panes.choices_pane import ChoicesPane
from app.panes.materials_desk import MaterialsDesk
from app.panes.materials_pane import MaterialsPane
from app.session import Session, Ways
from app.tables.materials import YOUR_OWN, material_rows
from model.bed import Design
from model.brief import all_choices
from model.materials import sheets, species

ELM = (
    "name,kind,density_kg_m3,shrinkage_radial_pct,shrinkage_tangential_pct\n"
    "Wych elm,hardwood,670,5.2,8.0\n"
)


def solve(design: Design, last: Any = None) -> Any:
    """A bed that always builds: only its design matters here."""
    lists: dict[str, Any] = {"findings": (), "marks": (), "hardware": ()}
    return SimpleNamespace(design=design, moved=frozenset(), **lists)


@pytest.fixture
def session(qtbot: QtBot) -> Iterator[Session]:
    made = Session(Design(), Ways(solve, lambda *_: None))
    yield made
    made.worker.wait()


@pytest.fixture
def desk(
    qtbot: QtBot, session: Session, shown: Callable[[QWidget], QWidget]
) -> Iterator[MaterialsDesk]:
    pane, choices = MaterialsPane(), ChoicesPane()
    qtbot.addWidget(choices)
    made = MaterialsDesk(session, pane, choices, pane)
    values = {name: session.design.value(name) for name in all_choices()}
    choices.show_values(values, "mm")
    shown(pane)
    yield made
    if made.dialog is not None:
        made.dialog.close()


def keys(desk: MaterialsDesk) -> list[str]:
    return [each.key for each in desk.pane.table.sorted.rows.records]


def offered(desk: MaterialsDesk, name: str) -> list[str]:
    field = desk.choices.field(name)
    assert isinstance(field, OptionField)
    return [field.box.itemData(row) for row in range(field.box.count())]


def test_all_woods_and_sheets_are_listed(desk: MaterialsDesk, qtmodeltester: ModelTester) -> None:
    assert keys(desk) == [*species(), *sheets()]
    qtmodeltester.check(desk.pane.table.sorted.rows)


def test_a_picked_material_tells_its_figures_with_their_sources(desk: MaterialsDesk) -> None:
    desk.pane.choose("yellow_poplar")

    told = desk.pane.told.toPlainText()
    assert "density 470 kg/m3" in told
    assert "table 5-3" in told and "ASTM D245" in told


def test_a_file_of_woods_is_added_to_the_bed_and_to_every_choice(
    desk: MaterialsDesk, session: Session, tmp_path: Path
) -> None:
    file = tmp_path / "woods.csv"
    file.write_text(ELM, "utf-8")
    made_before = offered(desk, "frame_wood")

    desk.add_table(file)

    assert [row.key for row in session.design.own.species] == ["wych_elm"]
    assert "wych_elm" in keys(desk)
    assert desk.pane.table.record.key == "wych_elm"
    assert "Wych elm" in desk.pane.said.text()
    assert set(offered(desk, "frame_wood")) - set(made_before) == {"wych_elm"}
    assert "wych_elm" in offered(desk, "slat_wood")  # a field that was not made yet


def test_the_file_is_asked_for(qtbot: QtBot, desk: MaterialsDesk, tmp_path: Path) -> None:
    file = tmp_path / "woods.csv"
    file.write_text(ELM, "utf-8")

    qtbot.mouseClick(desk.pane.add_button, Qt.MouseButton.LeftButton)
    dialog = desk.dialog
    assert isinstance(dialog, QFileDialog)
    dialog.fileSelected.emit(str(file))

    assert "wych_elm" in keys(desk)


def test_rows_of_a_spreadsheet_are_pasted(
    qtbot: QtBot, desk: MaterialsDesk, session: Session
) -> None:
    QGuiApplication.clipboard().setText(ELM.replace(",", "\t"))

    desk.pane.table.setFocus()
    qtbot.keyClick(desk.pane.table, Qt.Key.Key_V, Qt.KeyboardModifier.ControlModifier)

    assert [row.name for row in session.design.own.species] == ["Wych elm"]
    row = next(each for each in material_rows(session.design.own) if each.key == "wych_elm")
    assert row.is_own
    assert YOUR_OWN == "your own"


def test_pasting_is_a_step_that_can_be_undone(desk: MaterialsDesk, session: Session) -> None:
    desk.paste(ELM)

    session.undo()

    assert "wych_elm" not in keys(desk)
    assert "wych_elm" not in offered(desk, "frame_wood")
    session.redo()
    assert "wych_elm" in keys(desk)


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("", "no text on the clipboard"),
        ("hello", "Nothing is added."),
        (ELM.replace("670", "6700"), "Wych elm cannot have density_kg_m3 6700"),
    ],
)
def test_what_makes_no_sense_is_said_and_not_added(
    desk: MaterialsDesk, session: Session, text: str, said: str
) -> None:
    before = session.design

    desk.paste(text)

    assert said in desk.pane.said.text()
    assert desk.pane.said.isVisible()
    assert session.design == before


def test_a_material_is_taken_out_unless_it_is_chosen(
    qtbot: QtBot, desk: MaterialsDesk, session: Session
) -> None:
    desk.paste(ELM)
    session.choose("frame_wood", "wych_elm")
    session.take_now()

    qtbot.mouseClick(desk.pane.out_button, Qt.MouseButton.LeftButton)
    assert "still chosen" in desk.pane.said.text()

    session.choose("frame_wood", "yellow_poplar")
    session.take_now()
    desk.pane.choose("wych_elm")
    qtbot.mouseClick(desk.pane.out_button, Qt.MouseButton.LeftButton)
    assert "wych_elm" not in keys(desk)


def test_a_material_of_the_trade_stays(desk: MaterialsDesk) -> None:
    desk.pane.choose("white_oak")

    assert not desk.pane.out_button.isEnabled()


def test_headings_are_copied_for_a_spreadsheet_and_read_back_from_it(
    desk: MaterialsDesk, session: Session
) -> None:
    desk.pane.copy_headings("woods")
    headings = QGuiApplication.clipboard().text().strip().split("\t")
    cells = {"name": "Wych elm", "kind": "hardwood", "density_kg_m3": "670"}
    cells |= {"shrinkage_radial_pct": "5.2", "shrinkage_tangential_pct": "8"}

    row = "\t".join(cells.get(heading, "") for heading in headings)
    desk.paste("\t".join(headings) + "\n" + row + "\n")

    assert [wood.key for wood in session.design.own.species] == ["wych_elm"]


def test_the_grade_of_the_boards_is_followed(desk: MaterialsDesk, session: Session) -> None:
    desk.pane.choose("yellow_poplar")
    session.choose("stock_grade", "knotty")
    session.take_now()

    assert "Knotty" in desk.pane.told.toPlainText()


def test_a_picked_wood_of_ones_own_stays_picked_in_its_field(
    desk: MaterialsDesk, session: Session
) -> None:
    desk.paste(ELM)
    field = desk.choices.field("frame_wood")
    field.show_value("wych_elm")

    desk.paste(ELM.replace("Wych elm", "Field elm"))

    assert isinstance(field, OptionField)
    assert field.box.currentData() == "wych_elm"
