"""The plan set leaves the window whole or not at all: as a file, and on paper at true size."""

from __future__ import annotations

import errno
import os
from collections.abc import Callable, Iterator
from pathlib import Path

import pypdf
import pypdfium2
import pytest
from PIL import Image
from PySide6.QtCore import Qt
from PySide6.QtGui import QPageSize
from PySide6.QtPrintSupport import QPrintDialog, QPrinter
from PySide6.QtWidgets import QFileDialog, QWidget
from pytestqt.qtbot import QtBot

from app.panes.notice import Notice
from app.panes.plan_desk import PlanDesk
from app.panes.plan_files import GAVE_UP, GivenUp, PlanFiles, written
from app.panes.plan_pane import PlanPane
from app.panes.plan_print import has_other_paper, printer_for
from app.panes.plan_turn import Listed, Turn, listed
from app.session import Session
from model.bed import Design, solve
from model.errors import BadInput
from model.exports import files
from model.planset.page import A4, LETTER, Paper

PLAIN = Design(choices={"left.drawers": 0, "right.drawers": 0})
LONG = 30_000  # ms
POINT = 25.4 / 72


@pytest.fixture(scope="module")
def plain() -> Listed:
    found = listed(Turn(solve(PLAIN)))
    assert found is not None
    return found


@pytest.fixture
def session(qtbot: QtBot) -> Iterator[Session]:
    made = Session(PLAIN)
    yield made
    made.worker.wait()


@pytest.fixture
def out(
    qtbot: QtBot, session: Session, shown: Callable[[QWidget], QWidget], plain: Listed
) -> PlanFiles:
    """With a list of three ticked pages; the bed of the list is one like that of the session."""
    pane, window = PlanPane(), QWidget()
    qtbot.addWidget(window)
    desk = PlanDesk(session, pane)
    made = PlanFiles(desk, window, Notice(window))
    pane.resize(900, 500)
    shown(pane)
    qtbot.waitUntil(lambda: desk.is_known, timeout=LONG)
    ticked = [plain.place(key) for key in ("cover", "ends", "sides")]
    pane.list.none_button.click()
    pane.list.tree.tick(ticked, True)
    return made


def said(out: PlanFiles) -> str:
    return out.desk.pane.foot.said.text()


# ---------------------------------------------------------------- a file


def test_the_ticked_pages_are_saved_in_their_order(
    qtbot: QtBot, out: PlanFiles, tmp_path: Path
) -> None:
    path = tmp_path / "bed.pdf"
    foot = out.desk.pane.foot
    assert foot.said.text().startswith("3 of ")

    qtbot.mouseClick(foot.pdf_button, Qt.MouseButton.LeftButton)
    dialog = out.dialog
    assert isinstance(dialog, QFileDialog)
    with qtbot.waitSignal(out.ended, timeout=LONG):
        dialog.fileSelected.emit(str(path))
    dialog.reject()

    pages = pypdf.PdfReader(path).pages
    assert len(pages) == 3
    assert "From the foot" in pages[1].extract_text()
    assert os.listdir(tmp_path) == ["bed.pdf"]
    assert not foot.bar.isVisible() and foot.pdf_button.isVisible()
    assert "3 pages" in out._notice.label.text()


def test_a_page_goes_without_the_first_of_its_chapter(plain: Listed, tmp_path: Path) -> None:
    path = tmp_path / "bed.pdf"

    written(plain.planset, [plain.place("sides"), plain.place("plan")], path, lambda _: None)

    assert len(pypdf.PdfReader(path).outline) == 2


def test_giving_up_leaves_the_folder_as_it_was(
    qtbot: QtBot, out: PlanFiles, tmp_path: Path
) -> None:
    path = tmp_path / "bed.pdf"
    path.write_bytes(b"the one before")
    out.desk.pane.list.all_button.click()
    out.reached.connect(lambda done, of: out.give_up() if done >= 2 else None)

    with qtbot.waitSignal(out.ended, timeout=LONG):
        assert out.desk.listed is not None
        out.save(out.desk.listed, path)
        assert out.desk.pane.foot.give_up_button.isVisible()

    assert said(out) == GAVE_UP
    assert path.read_bytes() == b"the one before"
    assert os.listdir(tmp_path) == ["bed.pdf"]


@pytest.mark.parametrize("step", [1, 2, 3, 4])
def test_it_can_be_given_up_at_every_page(plain: Listed, tmp_path: Path, step: int) -> None:
    def told(done: int) -> None:
        if done == step:
            raise GivenUp

    with pytest.raises(GivenUp):
        written(plain.planset, [0, plain.place("ends")], tmp_path / "bed.pdf", told)

    assert os.listdir(tmp_path) == []


def test_a_folder_that_is_not_there_is_told_in_a_sentence(
    qtbot: QtBot, out: PlanFiles, tmp_path: Path
) -> None:
    with qtbot.waitSignal(out.ended, timeout=LONG):
        assert out.desk.listed is not None
        out.save(out.desk.listed, tmp_path / "no such folder" / "bed.pdf")

    assert "bed.pdf was not saved: there is no such file or folder." in said(out)
    assert os.listdir(tmp_path) == []


def test_a_full_disk_is_told_in_a_sentence(
    plain: Listed, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / "bed.pdf"
    path.write_bytes(b"the one before")

    def full(_handle: int) -> None:
        raise OSError(errno.ENOSPC, "full")

    monkeypatch.setattr(files.os, "fsync", full)
    with pytest.raises(BadInput, match="was not saved: there is no room left on the disk"):
        written(plain.planset, [0], path, lambda _: None)

    assert path.read_bytes() == b"the one before"
    assert os.listdir(tmp_path) == ["bed.pdf"]


def test_without_a_tick_there_is_nothing_to_save(out: PlanFiles) -> None:
    out.desk.pane.list.none_button.click()

    assert not out.desk.pane.foot.pdf_button.isEnabled()
    assert not out.desk.pane.foot.print_button.isEnabled()


# ---------------------------------------------------------------- paper


def pdf_printer(path: Path, out: PlanFiles) -> QPrinter:
    assert out.desk.listed is not None
    printer = printer_for(out.desk.listed.planset.setting.paper, "Bed")
    printer.setOutputFormat(QPrinter.OutputFormat.PdfFormat)
    printer.setOutputFileName(str(path))
    return printer


def print_to(qtbot: QtBot, out: PlanFiles, printer: QPrinter) -> None:
    with qtbot.waitSignal(out.ended, timeout=LONG):
        assert out.desk.listed is not None
        out.print_on(out.desk.listed, printer)


def test_every_ticked_page_is_printed_on_the_paper_that_it_is_laid_out_for(
    qtbot: QtBot, out: PlanFiles, tmp_path: Path
) -> None:
    print_to(qtbot, out, pdf_printer(tmp_path / "bed.pdf", out))

    pages = pypdf.PdfReader(tmp_path / "bed.pdf").pages
    assert len(pages) == 3
    for page in pages:
        box = page.mediabox
        assert float(box.width) * POINT == pytest.approx(LETTER.width, abs=0.3)  # whole points
        assert float(box.height) * POINT == pytest.approx(LETTER.height, abs=0.3)
    assert said(out) == "3 pages printed."


@pytest.mark.parametrize("paper", [LETTER, A4])
def test_a_mm_on_paper_is_a_mm(qtbot: QtBot, out: PlanFiles, tmp_path: Path, paper: Paper) -> None:
    """The rule at the head of a page, between its margins, is measured in the printed file."""
    printer = pdf_printer(tmp_path / "bed.pdf", out)
    if paper is A4:
        printer.setPageSize(QPageSize(QPageSize.PageSizeId.A4))

    print_to(qtbot, out, printer)

    file = pypdfium2.PdfDocument(tmp_path / "bed.pdf")
    scale = 8.0  # px to a mm
    picture = file[1].render(scale=scale * POINT).to_pil().convert("L")
    file.close()
    wide = picture.width
    head = range(round(20 * scale), round(45 * scale))
    rows = [y for y in head if longest(picture, y) > wide / 2]
    assert rows
    assert longest(picture, rows[0]) / scale == pytest.approx(LETTER.width - 34.0, abs=0.5)
    assert ("keep their true size" in said(out)) == (paper is A4)


def longest(picture: Image.Image, y: int) -> int:
    """The longest dark run of a row, px."""
    best = run = 0
    for x in range(picture.width):
        run = run + 1 if picture.getpixel((x, y)) < 160 else 0
        best = max(best, run)
    return best


def test_letters_are_printed_as_outlines_and_lines_as_lines(
    qtbot: QtBot, out: PlanFiles, tmp_path: Path
) -> None:
    print_to(qtbot, out, pdf_printer(tmp_path / "bed.pdf", out))

    for page in pypdf.PdfReader(tmp_path / "bed.pdf").pages:
        assert not list(page.images)


def test_giving_up_ends_the_print(qtbot: QtBot, out: PlanFiles, tmp_path: Path) -> None:
    out.desk.pane.list.all_button.click()
    printer = pdf_printer(tmp_path / "bed.pdf", out)

    with qtbot.waitSignal(out.ended, timeout=LONG):
        assert out.desk.listed is not None
        out.print_on(out.desk.listed, printer)
        qtbot.mouseClick(out.desk.pane.foot.give_up_button, Qt.MouseButton.LeftButton)

    assert said(out).startswith("Given up")
    assert not out.desk.pane.foot.bar.isVisible()


def test_a_window_that_closes_breaks_off_the_print(
    qtbot: QtBot, out: PlanFiles, tmp_path: Path
) -> None:
    out.desk.pane.list.all_button.click()
    assert out.desk.listed is not None
    out.print_on(out.desk.listed, pdf_printer(tmp_path / "bed.pdf", out))
    assert out._job is not None and out._job.painter.isActive()

    out.desk.session.worker.wait()

    assert not out._job.painter.isActive()


@pytest.mark.qt_log_ignore("QPainter::begin")  # Qt says it as well
def test_a_printer_that_takes_nothing_is_told_in_a_sentence(
    qtbot: QtBot, out: PlanFiles, tmp_path: Path
) -> None:
    printer = pdf_printer(tmp_path / "no such folder" / "bed.pdf", out)

    print_to(qtbot, out, printer)

    assert "does not take the pages" in said(out)


def test_the_print_dialog_asks_for_a_printer_and_not_for_pages(
    qtbot: QtBot, out: PlanFiles
) -> None:
    qtbot.mouseClick(out.desk.pane.foot.print_button, Qt.MouseButton.LeftButton)

    dialog = out.dialog
    assert isinstance(dialog, QPrintDialog)
    assert not dialog.testOption(QPrintDialog.PrintDialogOption.PrintPageRange)
    assert "3 pages" in dialog.windowTitle()
    assert not has_other_paper(dialog.printer(), LETTER)
    dialog.reject()
