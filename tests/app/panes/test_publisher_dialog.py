"""The shop's name and logo: typed, chosen, refused in a sentence, and undone like all else."""

from __future__ import annotations

import io
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from PIL import Image
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QDialogButtonBox, QFileDialog, QWidget
from pytestqt.qtbot import QtBot
from shiboken6 import isValid

from app.panes.plan_pane import PlanPane
from app.panes.publisher_desk import PublisherDesk
from app.panes.publisher_dialog import NO_LOGO, PublisherDialog
from app.session import Session
from model.bed import Design
from model.designs import from_bytes, to_bytes

LEFT = Qt.MouseButton.LeftButton
HEBREW = "נגריית אלון"


@pytest.fixture
def session(qtbot: QtBot) -> Iterator[Session]:
    made = Session(Design())
    yield made
    made.worker.wait()


@pytest.fixture
def dialog(
    qtbot: QtBot, session: Session, shown: Callable[[QWidget], QWidget]
) -> Iterator[PublisherDialog]:
    window, pane = QWidget(), PlanPane()
    shown(window)
    qtbot.addWidget(pane)
    desk = PublisherDesk(session, pane, window)
    pane.foot.shop_asked.emit()
    assert desk.dialog is not None
    yield desk.dialog
    if isValid(desk.dialog):  # it is gone once it is answered
        desk.dialog.reject()


@pytest.fixture
def logo(tmp_path: Path) -> Path:
    path = tmp_path / "logo.jpg"
    Image.new("RGB", (400, 100), (20, 90, 60)).save(path)
    return path


def press_ok(qtbot: QtBot, dialog: PublisherDialog) -> None:
    button = dialog.buttons.button(QDialogButtonBox.StandardButton.Ok)
    qtbot.mouseClick(button, LEFT)


def test_what_is_given_is_a_step_that_can_be_undone(
    qtbot: QtBot, session: Session, dialog: PublisherDialog, logo: Path
) -> None:
    qtbot.keyClicks(dialog.name, "Elder Lane Joinery")
    qtbot.keyClicks(dialog.line, "Beds to order")
    dialog.take_logo(logo)
    press_ok(qtbot, dialog)

    publisher = session.design.publisher
    assert (publisher.name, publisher.line) == ("Elder Lane Joinery", "Beds to order")
    with Image.open(io.BytesIO(publisher.logo)) as picture:
        assert (picture.format, picture.size) == ("PNG", (400, 100))
    session.undo()
    assert session.design.publisher.name == ""


def test_a_broken_picture_gives_its_sentence_and_the_logo_before_stays(
    qtbot: QtBot, session: Session, dialog: PublisherDialog, logo: Path, tmp_path: Path
) -> None:
    dialog.take_logo(logo)
    broken = tmp_path / "broken.png"
    broken.write_bytes(b"\x89PNG\r\n\x1a\n and no more")

    dialog.take_logo(broken)

    assert dialog.trouble.isVisible()
    assert "cannot be read as a picture" in dialog.trouble.text()
    assert dialog.publisher.logo and not dialog.logo.pixmap().isNull()
    press_ok(qtbot, dialog)
    assert session.design.publisher.logo


def test_a_file_that_is_gone_gives_a_sentence(dialog: PublisherDialog, tmp_path: Path) -> None:
    dialog.take_logo(tmp_path / "gone.png")

    assert dialog.trouble.text() == "gone.png was not read: there is no such file or folder."
    assert dialog.logo.text() == NO_LOGO


def test_the_picture_is_asked_for_and_can_be_dropped_again(
    qtbot: QtBot, dialog: PublisherDialog, logo: Path
) -> None:
    assert not dialog.without_button.isEnabled()
    qtbot.mouseClick(dialog.choose_button, LEFT)
    (asked,) = dialog.findChildren(QFileDialog)
    asked.fileSelected.emit(str(logo))
    asked.reject()
    assert dialog.publisher.logo

    qtbot.mouseClick(dialog.without_button, LEFT)
    assert not dialog.publisher.logo and dialog.logo.text() == NO_LOGO


def test_a_name_from_right_to_left_is_kept_as_it_is(
    qtbot: QtBot, session: Session, dialog: PublisherDialog
) -> None:
    dialog.name.setText(HEBREW)
    assert not dialog.trouble.isVisible()
    press_ok(qtbot, dialog)

    assert session.design.publisher.name == HEBREW
    assert from_bytes(to_bytes(session.design)).publisher.name == HEBREW


def test_letters_that_cannot_be_printed_are_told_of_while_they_are_typed(
    dialog: PublisherDialog,
) -> None:
    dialog.name.setText("木 Joinery")
    assert "木" in dialog.trouble.text()

    dialog.name.setText("Joinery")
    assert not dialog.trouble.isVisible()


def test_cancel_changes_nothing(qtbot: QtBot, session: Session, dialog: PublisherDialog) -> None:
    qtbot.keyClicks(dialog.name, "Another")
    qtbot.keyClick(dialog, Qt.Key.Key_Escape)

    assert session.design.publisher.name == ""
    assert not session.can_undo
