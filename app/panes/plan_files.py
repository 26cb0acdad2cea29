"""The plan set leaves the window: printed, or saved as a PDF file, all of it or nothing."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Qt, QUrl, Signal
from PySide6.QtGui import QDesktopServices, QPainter
from PySide6.QtWidgets import QDialog, QFileDialog, QWidget

from app.panes.breath import Breath
from app.panes.file_desk import file_name
from app.panes.notice import Notice
from app.panes.plan_desk import PlanDesk
from app.panes.plan_turn import Listed
from model.errors import BedError

if TYPE_CHECKING:
    from PySide6.QtPrintSupport import QPrinter

    from model.planset.book import PlanSet
    from model.planset.page import Page

LANE = "plan set leaves"
GAVE_UP = "Given up: no file is written."
BROKE_OFF = "The plan set is not saved: a mistake of Bedwright's own."
NOT_TAKEN = "The printer does not take the pages; see whether it is switched on, or its file open."


class GivenUp(Exception):
    """The maker does not want it any more."""


class PlanFiles(QObject):
    """Asks where to, does it page by page, and says how far it is."""

    reached = Signal(int, int)  # steps done, of how many
    ended = Signal()

    def __init__(self, desk: PlanDesk, window: QWidget, notice: Notice) -> None:
        super().__init__(desk)
        self.desk, self._window, self._notice = desk, window, notice
        self.dialog: QDialog | None = None
        self._breath = Breath()
        self._job: Printing | None = None
        foot = desk.pane.foot
        foot.pdf_asked.connect(lambda: desk.when_known(self.ask_for_file))
        foot.print_asked.connect(lambda: desk.when_known(self.ask_for_printer))
        foot.given_up.connect(self.give_up)
        self.reached.connect(foot.show_work, Qt.ConnectionType.QueuedConnection)
        desk.session.worker.leaving.connect(self.leave)

    def give_up(self) -> None:
        """Stop after the page under way."""
        self._breath.stop()

    def leave(self) -> None:
        """The window closes: no answer comes any more, so a print under way is broken off here."""
        self.give_up()
        if self._job is not None and self._job.painter.isActive():
            self._job.printer.abort()
            self._job.painter.end()

    # ------------------------------------------------------------ a file

    def ask_for_file(self, found: Listed) -> None:
        """Ask for a file and write the ticked pages to it."""
        session = self.desk.session
        folder = session.path.parent if session.path else Path.home()
        dialog = QFileDialog(
            self._window, "Save the plan set as PDF", str(folder), "PDF files (*.pdf)"
        )
        dialog.setAcceptMode(QFileDialog.AcceptMode.AcceptSave)
        dialog.setDefaultSuffix("pdf")
        dialog.selectFile(f"{file_name(session.design.name)}_plan.pdf")
        dialog.fileSelected.connect(lambda name: self.save(found, Path(name)))
        self._show(dialog)

    def save(self, found: Listed, path: Path) -> None:
        """Write the ticked pages to a file beside the window."""
        places = self._begin("Writing the plan set …")
        told = partial(self._told, self._breath, 2 * len(places))
        self.desk.session.worker.ask(
            LANE,
            lambda: written(found.planset, places, path, told),
            lambda _: self._saved(path, len(places)),
            self._not_saved,
        )

    def _told(self, breath: Breath, of: int, done: int) -> None:
        """In the worker's thread: the window gets its turn, and may have given up."""
        self.reached.emit(done, of)
        if breath.stops():
            raise GivenUp

    def _saved(self, path: Path, pages: int) -> None:
        self._end("")
        link = QUrl.fromLocalFile(str(path))
        answer = ("Open the file", lambda: QDesktopServices.openUrl(link))
        self._notice.tell(f"The plan set is saved: {_pages(pages)} in {path}", [answer])

    def _not_saved(self, trouble: Exception) -> None:
        if isinstance(trouble, GivenUp):
            self._end(GAVE_UP)
        elif isinstance(trouble, BedError):
            self._end(trouble.sentence, is_trouble=True)
        else:
            self.desk.session.worker.unexpected(trouble)
            self._end(BROKE_OFF, is_trouble=True)

    # ------------------------------------------------------------ a printer

    def ask_for_printer(self, found: Listed) -> None:
        """Ask for a printer and print the ticked pages."""
        from PySide6.QtPrintSupport import QAbstractPrintDialog, QPrintDialog

        from app.panes.plan_print import printer_for  # 40 ms that no start of the window pays

        printer = printer_for(found.planset.setting.paper, found.planset.title)
        dialog = QPrintDialog(printer, self._window)
        dialog.setWindowTitle(f"Print {_pages(len(self.desk.pane.list.chosen))} of the plan set")
        # Which pages is told by the ticks in the list, which is in sight behind the dialog.
        dialog.setOption(QAbstractPrintDialog.PrintDialogOption.PrintPageRange, False)
        dialog.finished.connect(
            lambda code: (
                self.print_on(found, printer) if code == QDialog.DialogCode.Accepted else None
            )
        )
        self._show(dialog)

    def print_on(self, found: Listed, printer: QPrinter) -> None:
        """Print the ticked pages, one after the other, drawn beside the window."""
        from app.panes.plan_print import has_other_paper, lay_paper

        paper = found.planset.setting.paper
        is_other = has_other_paper(printer, paper)
        if not is_other:
            lay_paper(printer, paper)
        printer.setFullPage(True)
        painter = QPainter()
        if not painter.begin(printer):
            self.desk.pane.foot.say(NOT_TAKEN, is_trouble=True)
            self.ended.emit()
            return
        places = self._begin("Printing the plan set …")
        said = f"{_pages(len(places))} printed."
        if is_other:
            name = printer.pageLayout().pageSize().name()
            said = (
                f"{said} They are laid out for {paper.name}; on {name} they keep their true size."
            )
        self._job = Printing(printer, painter, found.planset, places, self._breath, said)
        self._print(self._job, 0)

    def _print(self, job: Printing, done: int) -> None:
        """The page at a place of those chosen, then the next one."""
        self.desk.pane.foot.show_work(done, len(job.places))
        if job.breath.is_stopped:
            job.printer.abort()
            job.painter.end()
            self._end("Given up: what the printer has taken so far may still come out.")
        elif done == len(job.places):
            job.painter.end()
            self._end(job.said)
        else:
            at = job.places[done]
            self.desk.session.worker.ask(
                LANE, lambda: job.planset.page(at), partial(self._printed, job, done),
                partial(self._not_printed, job),
            )  # fmt: skip

    def _printed(self, job: Printing, done: int, page: Page) -> None:
        if done and not job.printer.newPage():
            job.painter.end()
            self._end(NOT_TAKEN, is_trouble=True)
            return
        from app.panes.plan_print import paint_on

        paint_on(job.painter, job.printer, page)
        self._print(job, done + 1)

    def _not_printed(self, job: Printing, trouble: Exception) -> None:
        job.printer.abort()
        job.painter.end()
        self.desk.session.worker.unexpected(trouble)
        self._end("Not printed: a mistake of Bedwright's own.", is_trouble=True)

    # ------------------------------------------------------------ both

    def _begin(self, said: str) -> tuple[int, ...]:
        self._breath = Breath()
        places = tuple(sorted(self.desk.pane.list.chosen))
        self.desk.pane.foot.say(said)
        self.desk.pane.foot.show_work(0, len(places))
        return places

    def _end(self, said: str, is_trouble: bool = False) -> None:
        self.desk.pane.foot.show_work(0, 0)
        self.desk.pane.foot.say(said, is_trouble)
        self.ended.emit()

    def _show(self, dialog: QDialog) -> None:
        dialog.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self.dialog = dialog
        QDialog.open(dialog)  # that of a print dialog wants a receiver


class Printing:
    """A set under way to a printer: pages by their places, and what is said at the end."""

    def __init__(
        self, printer: QPrinter, painter: QPainter, planset: PlanSet, places: Sequence[int],
        breath: Breath, said: str,
    ) -> None:  # fmt: skip
        self.printer, self.painter, self.planset = printer, painter, planset
        self.places, self.breath, self.said = places, breath, said


def written(
    planset: PlanSet, places: Sequence[int], path: Path, told: Callable[[int], None]
) -> None:
    """Draw these pages and write them to a file in place of the one that is there, if there is.

    `told` hears of each page twice, when it is drawn and when it is set, and may raise to give up:
    then the folder is as it was. Refused with BadInput: a folder that cannot be written, a full
    disk.
    """
    from model.exports.files import replace_file
    from model.exports.pdf import pdf_file

    pages = []
    for done, at in enumerate(places, 1):
        pages.append(planset.page(at))
        told(done)
    content = pdf_file(
        pages, planset.title, lambda done: told(len(places) + done), author=planset.author
    )
    replace_file(path, content)


def _pages(many: int) -> str:
    return "1 page" if many == 1 else f"{many} pages"
