"""The window: the only place that knows every pane, and what each has to tell the others."""

from __future__ import annotations

import logging
import sys
from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING, Any

from PySide6.QtCore import QCoreApplication, QLocale, Qt, QTimer
from PySide6.QtGui import QCloseEvent, QSurfaceFormat
from PySide6.QtWidgets import QApplication, QMainWindow, QTabWidget

from app.panes.checks_pane import ChecksPane
from app.panes.choices_pane import ChoicesPane
from app.panes.clearances_pane import ClearancesPane
from app.panes.cost_desk import CostDesk
from app.panes.cost_pane import CostPane
from app.panes.cutting_desk import CuttingDesk
from app.panes.cutting_pane import CuttingPane
from app.panes.design_strip import DesignStrip
from app.panes.file_desk import DEMOS, FileDesk
from app.panes.kept_work import KeptWork
from app.panes.look_strip import LookStrip
from app.panes.materials_desk import MaterialsDesk
from app.panes.materials_pane import MaterialsPane
from app.panes.menus import Commands, Menus
from app.panes.notice import Notice
from app.panes.parts_pane import PartsPane
from app.panes.plan_desk import PlanDesk
from app.panes.plan_files import PlanFiles
from app.panes.plan_pane import PlanPane
from app.panes.publisher_desk import PublisherDesk
from app.panes.reasons import reasons
from app.panes.refusal_banner import RefusalBanner
from app.panes.remedies import Remedies
from app.panes.stock_desk import KINDS, StockDesk
from app.panes.stock_pane import StockPane
from app.panes.strength_desk import StrengthDesk
from app.panes.strength_pane import StrengthPane
from app.panes.strength_strip import StrengthStrip
from app.panes.summary_line import SummaryLine
from app.panes.why_pane import WhyPane
from app.panes.wishes import Wishes
from app.panes.workbench import Workbench, stacked
from app.session import Session
from app.style import dress
from model.brief import all_choices
from model.brief.words import in_unit
from model.errors import BadInput
from model.units import show_length

if TYPE_CHECKING:
    from app.panes.plan_turn import Listed
    from app.view.bed_view import BedView
    from model.bed import Bed

LONGEST_WAIT = 1000  # ms
log = logging.getLogger(__name__)
PARTS, CLEARANCES, CHECKS, STRENGTH, MATERIALS, STOCK, CUTTING, COST, PLAN_SET = range(9)


class Window(QMainWindow):
    """One open bed."""

    def __init__(self, session: Session, kept: KeptWork | None = None) -> None:
        super().__init__()
        self.session = session
        self.kept = kept or KeptWork(session)
        self.choices, self.parts, self.checks = ChoicesPane(), PartsPane(), ChecksPane()
        self.clearances, self.why = ClearancesPane(), WhyPane()
        self.strength, self.loads = StrengthPane(), StrengthStrip()
        self.materials, self.stock = MaterialsPane(), StockPane(KINDS)
        self.cutting, self.cost, self.planset = CuttingPane(), CostPane(), PlanPane()
        self.strip, self.look, self.summary = DesignStrip(), LookStrip(), SummaryLine()
        self.banner, self.notice = RefusalBanner(), Notice()
        self.view = _bed_view()
        self.lists = QTabWidget(documentMode=True)
        for pane, words in (
            (self.parts, "Parts"), (self.clearances, "Clearances"), (self.checks, "Checks"),
            (self.strength, "Strength"), (self.materials, "Materials"),
            (self.stock, "Stock"), (self.cutting, "Boards and sheets"), (self.cost, "Cost"),
            (self.planset, "Plan set"),
        ):  # fmt: skip
            self.lists.addTab(pane, words)
        bed = stacked(self.look, self.loads, self.banner, self.view)
        self.bench = Workbench(self.choices, bed, self.lists, self.why)
        self.setCentralWidget(stacked(self.strip, self.notice, self.bench))
        self.statusBar().addWidget(self.summary, 1)
        self.statusBar().setSizeGripEnabled(False)
        self.desk = FileDesk(session, self, self.notice)
        self.menus = Menus(self, self._commands(), DEMOS)
        self.wishes = Wishes(session, self.choices, self.banner)
        self.remedies = Remedies(session, self.checks)
        self._is_leaving = False
        self._asked_bed: Bed | None = None  # the bed whose reasons are told
        self._unit = ""  # in which the numbers on the bed are written
        self.desk_of_cutting = CuttingDesk(session, self.cutting)
        self.desk_of_stock = StockDesk(session, self.stock)
        self.desk_of_cost = CostDesk(session, self.cost)
        self.desk_of_plans = PlanDesk(session, self.planset)
        self.plan_files = PlanFiles(self.desk_of_plans, self, self.notice)
        self.publisher_desk = PublisherDesk(session, self.planset, self)
        self._connect()
        self.desk_of_strength = StrengthDesk(
            session, self.view, self.strength, self.loads, self.look
        )
        self.materials_desk = MaterialsDesk(session, self.materials, self.choices, self)
        if session.has_bed:
            self._show_bed()
            self._show_history()
        if session.is_judged:
            self._show_lists()
        self.resize(1280, 800)

    # ------------------------------------------------------------ wiring

    def _connect(self) -> None:
        session, choices = self.session, self.choices
        choices.edited.connect(session.choose)
        choices.dragged.connect(session.drag)
        choices.settled.connect(session.settle)
        choices.given_up.connect(session.give_up)
        session.changed.connect(self._show_bed)
        session.judged.connect(self._show_lists)
        session.history_moved.connect(self._show_history)
        self.strip.renamed.connect(session.rename)
        self.strip.unit_chosen.connect(lambda unit: session.choose("shown_unit", unit))
        self.strip.undo_button.clicked.connect(session.undo)
        self.strip.redo_button.clicked.connect(session.redo)
        self.strip.plan_button.clicked.connect(self.desk.write_plan)
        self.desk.working.connect(self.summary.working.setText)
        self.summary.checks_asked.connect(lambda: self.show_list(CHECKS))
        for pane in (self.choices, self.parts, self.checks, self.clearances):
            pane.asked_why.connect(self.ask_why)
        self.why.asked.connect(self.ask_why)
        self.why.choice_shown.connect(choices.go_to)
        self.strength.choice_shown.connect(choices.go_to)
        for lists in (self.parts, self.strength):
            lists.picked.connect(self._pick_pieces)
        self.desk_of_cutting.pieces_picked.connect(self._pick_cut_pieces)
        self.desk_of_plans.pieces_picked.connect(self._pick_drawn_pieces)
        for pane in (self.cutting, self.planset):
            pane.room_asked.connect(self._give_lists_room)
        self.view.picked.connect(self._pick_piece)
        self.look.looked_from.connect(self.view.look_from)
        self.look.drawers_pulled.connect(lambda share: self.view.pull_drawers(share))
        self.look.pulled_apart.connect(self.view.pull_apart)
        self.look.switched.connect(self._switch)
        self.look.coloured.connect(self.view.colour_by)
        self.view.dimension_picked.connect(self.ask_why)

    def _commands(self) -> Commands:
        desk, session = self.desk, self.session
        return Commands(
            new=desk.new, new_from=desk.new, open=desk.open, save=desk.save, save_as=desk.save_as,
            write_plan=desk.write_plan, close=self.close, undo=session.undo, redo=session.redo,
            print_plans=lambda: self._with_plans(self.plan_files.ask_for_printer),
            save_plans=lambda: self._with_plans(self.plan_files.ask_for_file),
            find_choice=self.choices.find_line.setFocus, find_part=self._find_part,
            copy_list=self.parts.copy, show_list=self.show_list,
            look_from=lambda view: self.view.look_from(view), fit=lambda: self.view.fit(),
        )  # fmt: skip

    # ------------------------------------------------------------ what is shown

    def _show_bed(self, _moved: Any = None) -> None:
        bed, unit = self.session.bed, self.session.unit
        self.choices.show_values({n: bed.design.value(n) for n in all_choices()}, unit)
        if unit != self._unit:
            self._unit = unit
            self.view.write_lengths(
                lambda mm: show_length(mm, unit), lambda words: in_unit(words, unit)
            )
        self.view.show_bed(bed)
        self.clearances.show_bed(bed, unit)
        self.summary.show_bed(bed, unit)
        self.strip.show_design(bed.design.name, unit)
        self._follow_why()

    def _show_lists(self) -> None:
        bed, unit = self.session.bed, self.session.unit
        self.parts.show_bed(bed, unit)
        self.checks.show_findings(bed.findings, unit)
        self.summary.show_findings(bed.findings)

    def _show_history(self) -> None:
        session = self.session
        for thing in (self.menus.undo, self.strip.undo_button):
            thing.setEnabled(session.can_undo)
        for thing in (self.menus.redo, self.strip.redo_button):
            thing.setEnabled(session.can_redo)
        file = f" ({session.path.name})" if session.path else ""
        self.setWindowTitle(f"{session.design.name}{file}[*] – Bedwright")
        self.setWindowModified(session.is_unsaved)
        self._follow_why()

    def show_list(self, place: int) -> None:
        """Bring one of the lists to the front."""
        self.lists.setCurrentIndex(place)

    def _with_plans(self, then: Callable[[Listed], None]) -> None:
        self.show_list(PLAN_SET)
        self.desk_of_plans.when_known(then)

    def _find_part(self) -> None:
        self.show_list(PARTS)
        self.parts.filter_line.setFocus()

    # ------------------------------------------------------------ why, and picking

    def ask_why(self, name: str) -> None:
        """Say why a dimension is what it is, or what hangs on a choice."""
        bed, known = self.session.bed, all_choices()
        self._asked_bed = bed
        try:
            told = list(reasons(bed, name, self.session.unit))
            self.why.tell(name, told, known.__contains__)
        except BadInput:  # a dimension of a place that this bed does not have
            self.why.clear()

    def _follow_why(self) -> None:
        """The reasons follow the bed, once the hand is off the slider: they can be long."""
        session = self.session
        if self.why.name and not session.is_dragging and self._asked_bed is not session.bed:
            self.ask_why(self.why.name)

    def _pick_piece(self, piece: int) -> None:
        self.parts.choose_piece(piece)
        self.strength.choose_piece(piece)
        self.desk_of_cutting.pick(piece)
        self.desk_of_plans.pick(piece)
        self.view.select((piece,) if piece >= 0 else ())
        if piece >= 0 and self.lists.currentIndex() == CHECKS:
            self.show_list(PARTS)
        self._say_picked(piece)

    def _pick_pieces(self, pieces: tuple[int, ...]) -> None:
        self.desk_of_cutting.pick_all(pieces)
        self.desk_of_plans.pick_all(pieces)
        self.view.select(pieces)
        self._say_picked(pieces[0] if pieces else -1)

    def _pick_cut_pieces(self, pieces: tuple[int, ...]) -> None:
        """Picked on its board: what it becomes is shown in the lists and on the bed."""
        self.desk_of_plans.pick_all(pieces)
        self._show_picked(pieces)

    def _pick_drawn_pieces(self, pieces: tuple[int, ...]) -> None:
        """Picked on a page of the plan set."""
        self.desk_of_cutting.pick_all(pieces)
        self._show_picked(pieces)

    def _give_lists_room(self, is_wanted: bool) -> None:
        """The button is down in every list that has it."""
        for tools in (self.cutting.tools, self.planset.tools):
            tools.room_button.setChecked(is_wanted)
        self.bench.give_lists_room(is_wanted)

    def _show_picked(self, pieces: tuple[int, ...]) -> None:
        piece = pieces[0] if pieces else -1
        self.parts.choose_piece(piece)
        self.strength.choose_piece(piece)
        self.view.select(pieces)
        self._say_picked(piece)

    def _say_picked(self, piece: int) -> None:
        if piece < 0:
            self.look.say_picked("")
            return
        self.look.say_picked(self.parts.words_for(piece, self.session.bed.pieces.labels[piece]))

    def _switch(self, name: str, is_on: bool) -> None:
        {
            "mattress": self.view.show_mattress,
            "see_through": self.view.see_through,
            "dimensions": self.view.show_dimensions,
            "shadow": self.view.show_shadow,
            "parallel": self.view.look_parallel,
        }[name](is_on)

    def start(self, path: Path | None = None) -> None:
        """Open a design, or a new bed, and offer what an earlier window left behind."""
        if path is not None:
            self.desk.open_path(path)
        self.session.start()
        self.offer_left_behind()

    # ------------------------------------------------------------ leaving

    def say_mistake(self, kind: type[BaseException], trouble: BaseException, trace: Any) -> None:
        """A mistake of our own: logged with its trace and said on screen; work is kept aside."""
        log.error("Something broke off", exc_info=(kind, trouble, trace))
        self.kept.keep()
        said = "Something went wrong inside Bedwright; the bed on view stays. Save your work."
        self.notice.tell(f"{said} ({kind.__name__}: {trouble})", is_trouble=True)

    def offer_left_behind(self) -> None:
        """Offer what an earlier window could not save."""
        for path in self.kept.found():
            design = self.kept.read(path)
            if design is None:
                continue
            answers = [
                ("Open it", lambda d=design, p=path: self._take_over(d, p)),
                ("Throw it away", lambda p=path: self.kept.throw_away(p)),
            ]
            said = f"“{design.name}” was not saved when Bedwright last ended. It is still here."
            self.notice.tell(said, answers)
            return

    def _take_over(self, design: Any, path: Path) -> None:
        def take() -> None:
            if self.desk.show_design(design):
                self.kept.throw_away(path)

        self.desk.leave(take)

    def closeEvent(self, event: QCloseEvent) -> None:
        if self._is_leaving or not self.session.is_unsaved:
            self.kept.forget()
            self.session.worker.wait()
            super().closeEvent(event)
            return
        event.ignore()
        self.desk.leave(self._leave)

    def _leave(self) -> None:
        self._is_leaving = True
        self.close()


def _bed_view() -> BedView:
    from app.view.bed_view import BedView  # 200 ms: after the window's other parts are asked for

    return BedView()


def open_window(design_path: Path | None = None) -> int:
    """Open the window on a design, or on a new bed; gives the exit code."""
    QCoreApplication.setAttribute(Qt.ApplicationAttribute.AA_ShareOpenGLContexts)
    QLocale.setDefault(QLocale.c())  # lengths are read by our own rules, alike on every system
    app = QApplication(sys.argv[:1])
    app.setApplicationName("Bedwright")
    dress(app)
    _choose_surface()
    window = Window(Session())
    sys.excepthook = window.say_mistake
    window.show()
    _after_first_picture(window, lambda: window.start(design_path))
    return app.exec()


def _after_first_picture(window: Window, start: Callable[[], None]) -> None:
    """The window is there at once; its bed follows as soon as it is solved."""
    waiting = QTimer(window, singleShot=True, interval=LONGEST_WAIT)
    waiting.timeout.connect(start)
    waiting.start()  # a window that is never painted, because it is minimised, starts as well
    if window.view.canvas is not None:
        at_once = Qt.ConnectionType.SingleShotConnection
        window.view.canvas.frameSwapped.connect(lambda: waiting.setInterval(0), at_once)
    else:
        waiting.setInterval(0)


def _choose_surface() -> None:
    """Smooth edges where a graphics card pays for them."""
    from app.view.renderer import is_software, renderer

    surface = QSurfaceFormat.defaultFormat()
    surface.setSamples(0 if is_software(renderer()) else 4)
    QSurfaceFormat.setDefaultFormat(surface)
