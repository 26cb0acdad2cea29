"""New, open, save, plan: the questions that files need, each asked without stopping the window."""

from __future__ import annotations

import logging
from collections.abc import Callable
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING, Any

from PySide6.QtCore import QObject, Qt, QUrl, Signal
from PySide6.QtGui import QDesktopServices
from PySide6.QtWidgets import QDialog, QFileDialog, QMessageBox, QWidget

from app.panes.notice import Notice
from app.panes.wishes import offer_text, offered_changes
from model.errors import BedError, CannotBuild

if TYPE_CHECKING:
    from app.session import Session
    from model.bed import Design

log = logging.getLogger(__name__)
DEMOS = Path(__file__).resolve().parents[2] / "resources" / "demos"
DESIGNS = "Bed designs (*.bedwright)"
Then = Callable[[], None]


class FileDesk(QObject):
    """Knows where the open design lies; asks before something is lost."""

    wrote_plan = Signal(str)
    working = Signal(str)  # what is under way; empty when it is done

    def __init__(self, session: Session, window: QWidget, notice: Notice) -> None:
        super().__init__(window)
        self._session, self._window, self._notice = session, window, notice
        self.dialog: QDialog | None = None

    # ------------------------------------------------------------ new and open

    def new(self, start: Path | None = None) -> None:
        """Start again: from the defaults or from a demo."""
        self.leave(partial(self._start, start))

    def open(self) -> None:
        """Ask for a file and open it."""
        self.leave(lambda: self._ask_file("Open a design", self.open_path))

    def open_path(self, path: Path) -> bool:
        """Open a design file; what is wrong with it is said, and the open bed stays."""
        from model.designs import read

        return self._shown(lambda: read(path), path, path.name)

    def show_design(self, design: Design) -> bool:
        """Show a design that has no file yet, as unsaved work."""
        is_shown = self._shown(lambda: design, None, design.name)
        if is_shown:
            self._session.mark_unsaved()
        return is_shown

    def _start(self, start: Path | None) -> None:
        from model.bed import Design
        from model.designs import read

        self._shown(lambda: read(start) if start else Design(), None, start.stem if start else "")

    def _shown(self, make: Callable[[], Design], path: Path | None, called: str) -> bool:
        design: Design | None = None
        try:
            design = make()
            self._session.open(design, path)
        except BedError as trouble:
            self._session.start()
            self._tell_trouble(f"{called} is not opened; the bed on view stays.", trouble)
            if design is not None and isinstance(trouble, CannotBuild):
                self._look_for_a_way(design, path, trouble)
            return False
        except Exception:
            log.exception("The design could not be opened")
            self._session.start()
            own = "the fault is Bedwright's own, not the design's."
            self._notice.tell(f"{called} is not opened: {own}", is_trouble=True)
            return False
        self._notice.hide()
        return True

    def _look_for_a_way(self, design: Design, path: Path | None, trouble: CannotBuild) -> None:
        """Search beside the window for changes with which the refused design builds."""
        session = self._session
        said, bed = self._notice.label.text(), session.bed
        is_stale = self._notice.isHidden

        def offer(mended: Any) -> None:
            if not is_stale() and self._notice.label.text() == said and mended.changes:
                changed = design.with_choices(offered_changes(mended, session.unit))
                answer = ("Open it with what works", lambda: self._open_changed(changed, path))
                words = f"{said} {offer_text(mended, session.unit)}"
                self._notice.tell(words, [answer], is_trouble=True)

        session.worker.ask(
            "open",
            lambda: session.ways.works(design, trouble, bed.dimensions.book, bed, is_stale),
            offer,
            lambda trouble: None if is_stale() else session.worker.unexpected(trouble),
        )

    def _open_changed(self, design: Design, path: Path | None) -> None:
        if self._shown(lambda: design, path, design.name):
            self._session.mark_unsaved()

    # ------------------------------------------------------------ save

    def save(self, then: Then | None = None) -> None:
        """Write the design to its file; ask for one if it has none."""
        if self._session.path is None:
            self.save_as(then)
        else:
            self._write(self._session.path, then)

    def save_as(self, then: Then | None = None) -> None:
        """Ask for a file and write the design to it."""
        dialog = self._file_dialog("Save the design as")
        dialog.setAcceptMode(QFileDialog.AcceptMode.AcceptSave)
        dialog.setDefaultSuffix("bedwright")
        dialog.selectFile(str(self._session.path or file_name(self._session.design.name)))
        dialog.fileSelected.connect(lambda name: self._write(Path(name), then))
        self._show(dialog)

    def _write(self, path: Path, then: Then | None) -> None:
        from model.designs import write

        try:
            self._session.settle()
            write(self._session.design, path)
        except BedError as trouble:
            self._tell_trouble("The design is not saved.", trouble)
            return
        except OSError as trouble:
            self._notice.tell(f"The design is not saved: {trouble.strerror}.", is_trouble=True)
            return
        self._session.mark_saved(path)
        if then is not None:
            then()

    # ------------------------------------------------------------ before something is lost

    def leave(self, then: Then) -> None:
        """Go on with `then`, once unsaved work is saved or given up."""
        self._session.take_now()
        if not self._session.is_unsaved:
            then()
            return
        box = QMessageBox(self._window)
        box.setIcon(QMessageBox.Icon.Question)
        box.setWindowTitle("Unsaved work")
        box.setText(f"“{self._session.design.name}” has changes that are not saved.")
        box.setInformativeText("Save them first?")
        save = box.addButton("Save", QMessageBox.ButtonRole.AcceptRole)
        lose = box.addButton("Throw away", QMessageBox.ButtonRole.DestructiveRole)
        box.setEscapeButton(box.addButton("Stay", QMessageBox.ButtonRole.RejectRole))
        box.setDefaultButton(save)
        save.clicked.connect(lambda: self.save(then))
        lose.clicked.connect(lambda: then())
        self._show(box)

    # ------------------------------------------------------------ plan

    def write_plan(self) -> None:
        """Ask for a folder and write the plan package beside the window's own work."""
        dialog = QFileDialog(self._window, "Write the plan package into a folder")
        dialog.setFileMode(QFileDialog.FileMode.Directory)
        dialog.setOption(QFileDialog.Option.ShowDirsOnly, True)
        dialog.fileSelected.connect(lambda name: self.write_plan_to(Path(name)))
        self._show(dialog)

    def write_plan_to(self, folder: Path) -> None:
        """Write the plan package of the bed on view."""
        self._session.settle()
        bed = self._session.bed
        self.working.emit(f"Writing the plan package to {folder} …")

        def write() -> int:
            from model.exports.package import write_package

            return len(write_package(bed, folder))

        self._session.worker.ask("plan", write, partial(self._planned, folder), self._plan_failed)

    def _planned(self, folder: Path, files: int) -> None:
        self.working.emit("")
        link = QUrl.fromLocalFile(str(folder))
        answer = ("Open the folder", lambda: QDesktopServices.openUrl(link))
        self._notice.tell(f"The plan package is written: {files} files in {folder}", [answer])
        self.wrote_plan.emit(str(folder))

    def _plan_failed(self, trouble: Exception) -> None:
        self.working.emit("")
        if isinstance(trouble, BedError | OSError):
            self._tell_trouble("The plan package is not written.", trouble)
        else:
            self._session.worker.unexpected(trouble)
            self._notice.tell(
                "The plan package is not written: a mistake of Bedwright's own.", is_trouble=True
            )

    # ------------------------------------------------------------ inside

    def _ask_file(self, title: str, chosen: Callable[[Path], object]) -> None:
        dialog = self._file_dialog(title)
        dialog.setFileMode(QFileDialog.FileMode.ExistingFile)
        dialog.fileSelected.connect(lambda name: chosen(Path(name)))
        self._show(dialog)

    def _file_dialog(self, title: str) -> QFileDialog:
        path = self._session.path
        return QFileDialog(self._window, title, str(path.parent if path else Path.home()), DESIGNS)

    def _show(self, dialog: QDialog) -> None:
        dialog.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self.dialog = dialog
        dialog.open()  # modal to the window, yet nothing waits for it

    def _tell_trouble(self, what: str, trouble: Exception) -> None:
        self._notice.tell(f"{what} {trouble}", is_trouble=True)


def file_name(design: str) -> str:
    """A file name from the design's own: letters, figures, underscores."""
    words = "".join(c if c.isalnum() else " " for c in design.casefold()).split()
    return "_".join(words) or "bed"
