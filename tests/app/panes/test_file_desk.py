"""Nothing that the maker made is lost: files, questions before a loss, work kept aside.

Only the bed is a stand-in here; designs, files and dialogs are real.
"""

from __future__ import annotations

import shutil
from collections.abc import Callable, Iterator
from pathlib import Path
from types import SimpleNamespace
from typing import Any

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QFileDialog, QMessageBox, QWidget
from pytestqt.qtbot import QtBot

from app.panes.file_desk import FileDesk
from app.panes.kept_work import KeptWork
from app.panes.notice import Notice
from app.session import Session, Ways
from model import designs
from model.bed import Design
from model.errors import CannotBuild


def solve(design: Design, last: Any = None) -> Any:
    """A bed that builds unless it is named after a fault."""
    if design.name == "Impossible" and design.value("rail_height") > 399.0:
        raise CannotBuild("rail_height", "The rail is too low.")
    lists: dict[str, Any] = {"findings": (), "marks": (), "hardware": ()}
    lists["dimensions"] = SimpleNamespace(book=None)
    return SimpleNamespace(design=design, moved=frozenset(), **lists)


def mend(*_: Any) -> Any:
    found = {"choice": "rail_height", "range": (300.0, 400.0), "keys": (), "conflict": ()}
    return SimpleNamespace(**found, changes={"rail_height": 300.0})


@pytest.fixture
def session(qtbot: QtBot) -> Iterator[Session]:
    made = Session(Design(), Ways(solve, mend))
    yield made
    made.worker.wait()


@pytest.fixture
def desk(qtbot: QtBot, session: Session) -> Iterator[FileDesk]:
    window = QWidget()
    qtbot.addWidget(window)
    window.show()
    notice = Notice(window)
    made = FileDesk(session, window, notice)
    yield made
    window.close()


def change(session: Session) -> None:
    session.choose("side_fit", 20.0)
    session.take_now()


def button(desk: FileDesk, words: str) -> Any:
    assert isinstance(desk.dialog, QMessageBox)
    return next(b for b in desk.dialog.buttons() if b.text() == words)


def answer_with_file(desk: FileDesk, path: Path) -> None:
    assert isinstance(desk.dialog, QFileDialog)
    desk.dialog.fileSelected.emit(str(path))
    desk.dialog.close()


def test_a_saved_design_opens_again_as_it_was(
    session: Session, desk: FileDesk, tmp_path: Path
) -> None:
    change(session)
    before = session.design

    desk.save()
    answer_with_file(desk, tmp_path / "guest.bedwright")
    assert not session.is_unsaved
    desk.new()
    assert session.design != before
    desk.open_path(tmp_path / "guest.bedwright")

    assert session.design.value("side_fit") == 20.0
    assert session.path == tmp_path / "guest.bedwright"


def test_a_second_save_asks_for_no_file(session: Session, desk: FileDesk, tmp_path: Path) -> None:
    path = tmp_path / "guest.bedwright"
    session.mark_saved(path)
    change(session)

    desk.save()

    assert desk.dialog is None
    assert designs.read(path).value("side_fit") == 20.0


def test_a_folder_that_cannot_be_written_is_said_and_nothing_is_called_saved(
    session: Session, desk: FileDesk, tmp_path: Path
) -> None:
    change(session)
    session.path = tmp_path / "gone" / "guest.bedwright"

    desk.save()

    assert session.is_unsaved
    assert "The design is not saved." in desk._notice.label.text()


@pytest.mark.parametrize(
    ("words", "is_new", "is_kept"),
    [("Stay", False, True), ("Throw away", True, False), ("Save", True, True)],
)
def test_unsaved_work_is_asked_about_before_it_is_left(
    qtbot: QtBot,
    session: Session,
    desk: FileDesk,
    tmp_path: Path,
    words: str,
    is_new: bool,
    is_kept: bool,
) -> None:
    path = tmp_path / "guest.bedwright"
    session.mark_saved(path)
    change(session)

    desk.new()
    qtbot.mouseClick(button(desk, words), Qt.MouseButton.LeftButton)

    on_view = session.design.value("side_fit") == 20.0
    assert on_view is not is_new
    assert (on_view or path.exists()) is is_kept


def test_a_design_that_cannot_be_built_leaves_the_open_bed(
    session: Session, desk: FileDesk, tmp_path: Path
) -> None:
    path = tmp_path / "low.bedwright"
    designs.write(Design(name="Impossible"), path)
    bed = session.bed

    assert not desk.open_path(path)

    assert session.bed is bed
    assert "The rail is too low." in desk._notice.label.text()


def test_a_design_that_cannot_be_built_is_offered_with_what_works(
    qtbot: QtBot, session: Session, desk: FileDesk, tmp_path: Path
) -> None:
    path = tmp_path / "low.bedwright"
    designs.write(Design(name="Impossible"), path)
    desk.open_path(path)
    qtbot.waitUntil(lambda: "would work" in desk._notice.label.text())

    qtbot.mouseClick(desk._notice.buttons[0], Qt.MouseButton.LeftButton)

    assert session.design.value("rail_height") == pytest.approx(300, abs=1.6)  # on a step inside
    assert session.is_unsaved  # the file still holds what does not build


def test_a_file_that_is_no_design_is_refused_in_a_sentence(
    session: Session, desk: FileDesk, tmp_path: Path
) -> None:
    path = tmp_path / "broken.bedwright"
    path.write_text("{", encoding="utf-8")

    assert not desk.open_path(path)

    assert "broken.bedwright is not opened" in desk._notice.label.text()


# ---------------------------------------------------------------- work kept aside


def crash(kept: KeptWork, place: Path, aside: Path) -> None:
    """What a window that dies leaves on the disk: its file, but no living lock."""
    kept.keep()
    shutil.copy(kept._file, aside)
    kept.forget()
    shutil.move(aside, place / "0.bedwright")


@pytest.fixture
def kept(session: Session, tmp_path: Path) -> KeptWork:
    return KeptWork(session, tmp_path / "unsaved")


def test_unsaved_work_survives_a_crash(session: Session, kept: KeptWork, tmp_path: Path) -> None:
    change(session)
    crash(kept, tmp_path / "unsaved", tmp_path / "aside")

    later = KeptWork(session, tmp_path / "unsaved")

    (path,) = later.found()
    design = later.read(path)
    assert design is not None and design.value("side_fit") == 20.0
    later.throw_away(path)
    assert later.found() == []


def test_a_window_that_is_open_is_not_taken_for_a_crash(
    session: Session, kept: KeptWork, tmp_path: Path
) -> None:
    change(session)
    kept.keep()

    assert KeptWork(session, tmp_path / "unsaved").found() == []


def test_saved_work_leaves_nothing_aside(session: Session, kept: KeptWork) -> None:
    change(session)
    kept.keep()
    assert kept._file.exists()

    session.mark_saved(None)
    kept.keep()

    assert not kept._file.exists()


def test_half_a_file_is_passed_over(kept: KeptWork, tmp_path: Path) -> None:
    (tmp_path / "unsaved").mkdir()
    (tmp_path / "unsaved" / "0.bedwright").write_text("{", encoding="utf-8")

    (path,) = kept.found()

    assert kept.read(path) is None


def test_a_change_is_written_aside_by_itself(
    qtbot: QtBot, session: Session, kept: KeptWork
) -> None:
    kept._soon.setInterval(1)
    is_there: Callable[[], bool] = lambda: kept._file.exists()  # noqa: E731

    change(session)

    qtbot.waitUntil(is_there)
