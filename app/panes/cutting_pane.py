"""Boards and sheets: what is cut from what, drawn to scale, and in what order it is sawn.

Three pages share one picked plan: the list of all plans, the drawings, and the cuts in their order.
Where the pane is wide enough the drawings stand beside the list as well.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Collection, Sequence
from typing import Any

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QHideEvent, QResizeEvent, QShowEvent
from PySide6.QtWidgets import (
    QLabel,
    QScrollArea,
    QSplitter,
    QStackedWidget,
    QVBoxLayout,
    QWidget,
)

from app.panes.cutting_foot import CuttingFoot
from app.panes.cutting_lights import Moment, lights
from app.panes.cutting_misfits import CuttingMisfits
from app.panes.cutting_order import CuttingOrder
from app.panes.cutting_sheets import PIECE, Board
from app.panes.cutting_tools import DRAWINGS, ORDER, PLANS, CuttingTools
from app.panes.cutting_view import CuttingView
from app.tables.cutting import PLAN_COLUMNS, SETTING_COLUMNS, SettingRow, material_words
from app.tables.rows import Rows
from app.tables.view import TableView
from model.cutting.record import Layout, Plan
from model.drawings.cut_names import CutNames
from model.drawings.cut_steps import SawnPlan
from model.drawings.cut_told import Shown
from model.drawings.plan_words import plan_sentences, runs_words, title_words

SHARES = {PLANS: [6300, 3700], DRAWINGS: [0, 10_000], ORDER: [4000, 6000]}  # list, drawings
WIDE = 940  # px: room for the drawings beside the list of plans
FIRST = "Planning the cuts …"


class CuttingPane(QWidget):
    """Plans or settings at the left, drawings beside them, and the cuts one by one."""

    picked = Signal(str)  # a piece's name, "" for none
    ticked = Signal(str, bool)  # the key of a cut
    offer_taken = Signal(str)  # the key of a plan that is to be kept, or replaced by a better one
    room_asked = Signal(bool)
    seen = Signal()
    left = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.plans: tuple[SawnPlan, ...] = ()
        self.names = CutNames()
        self.done: Collection[str] = ()
        self.offers: dict[str, tuple[str, str]] = {}
        self._unit, self._key = "mm", ""
        self._moment = Moment()
        self._is_told = False
        self._drawn: tuple[Plan | None, str, CutNames] = (None, "", self.names)  # what is in view
        self.table = TableView(Rows(PLAN_COLUMNS), "Materials to cut")
        self.settings = TableView(Rows(SETTING_COLUMNS), "Settings in the order of sawing")
        for table in (self.table, self.settings):
            table.stretch(0)
        self.view, self.order, self.misfits = CuttingView(), CuttingOrder(), CuttingMisfits()
        self.told = QLabel(FIRST, wordWrap=True, margin=8)
        self.told.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        self.told.setAlignment(Qt.AlignmentFlag.AlignTop)
        self.told.setAccessibleName("About the plan that is picked")
        self.tools, self.foot = CuttingTools(), CuttingFoot()
        self._stack = QStackedWidget()
        self._lay_out()
        self._connect()
        self.show_page(PLANS)

    # ------------------------------------------------------------ how it lies

    def _lay_out(self) -> None:
        for page in (self._plans_page(), self.settings):
            self._stack.addWidget(page)
        self._parts = QSplitter(Qt.Orientation.Horizontal)
        self._parts.setChildrenCollapsible(False)
        self._stack.setMinimumWidth(230)
        for place, widget in enumerate((self._stack, self.view)):
            self._parts.addWidget(widget)
            self._parts.setStretchFactor(place, 1)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.setSpacing(0)
        whole.addWidget(self.tools)
        whole.addWidget(self.misfits)
        whole.addWidget(self._parts, 1)
        whole.addWidget(self.order)
        whole.addWidget(self.foot)

    def _plans_page(self) -> QSplitter:
        words = QScrollArea(widgetResizable=True)
        words.setWidget(self.told)
        page = QSplitter(Qt.Orientation.Vertical)
        page.setChildrenCollapsible(False)
        for widget, share in ((self.table, 3), (words, 2)):
            page.addWidget(widget)
            page.setStretchFactor(page.count() - 1, share)
        page.setSizes([3000, 2000])
        return page

    def _share_out(self) -> None:
        """Who has the room: the list, the drawings, or both."""
        page = self.page
        self._stack.setVisible(page != DRAWINGS)
        self.view.setVisible(page != PLANS or self.width() >= WIDE)
        self.order.setVisible(page == ORDER)
        self.foot.show_parts(page == DRAWINGS, page != ORDER)
        self.foot.setVisible(page != ORDER or self.foot.is_searching)
        self.tools.show_drawing_tools(not self.view.isHidden())

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._share_out()

    def _connect(self) -> None:
        self.tools.page_chosen.connect(self.show_page)
        self.tools.plan_chosen.connect(self.choose_plan)
        self.tools.board_asked.connect(lambda by: self.view.show_board(self.view.board + by))
        self.tools.zoom_asked.connect(self._zoom)
        self.tools.room_asked.connect(self.room_asked)
        self.table.row_chosen.connect(self._plan_chosen)
        self.table.doubleClicked.connect(lambda _: self.show_page(DRAWINGS))
        self.settings.row_chosen.connect(self._setting_chosen)
        self.view.piece_picked.connect(self._piece_pressed)
        self.view.piece_pointed.connect(self._point)
        self.view.cut_picked.connect(self._cut_pressed)
        self.view.stepped.connect(self._stepped)
        self.view.ticked.connect(self._space)
        self.view.board_changed.connect(self._name_board)
        self.view.tip = lambda about: self._tip(about)
        self.order.moved.connect(self._moved)
        self.order.ticked.connect(self.ticked)
        self.foot.offer_taken.connect(lambda: self.offer_taken.emit(self._key))

    # ------------------------------------------------------------ what is shown

    @property
    def plan(self) -> SawnPlan | None:
        """The plan that is picked."""
        return next((each for each in self.plans if each.key == self._key), None)

    @property
    def page(self) -> int:
        """The page on view."""
        return self.tools.page

    @property
    def is_in_order(self) -> bool:
        """Whether the cuts are shown one by one."""
        return self.page == ORDER

    def show_plans(
        self, plans: Sequence[SawnPlan], names: CutNames, done: Collection[str], unit: str
    ) -> None:
        """Other plans, or the same ones further on; what was picked stays picked."""
        self.plans, self.names, self.done, self._unit = tuple(plans), names, done, unit
        if self.plan is None:
            self._key = self.plans[0].key if self.plans else ""
        self._is_told = True
        self.table.sorted.rows.show_records(self.plans, unit)
        self._is_told = False
        self.choose_plan(self._key)

    def show_trouble(self, sentence: str) -> None:
        """There are no plans, and why."""
        self.show_plans((), self.names, (), self._unit)
        self.told.setText(sentence)

    def show_page(self, place: int) -> None:
        """0: all plans, 1: the drawings of one, 2: its cuts in their order."""
        self.tools.press_page(place)
        self._stack.setCurrentIndex(1 if place == ORDER else 0)
        self._share_out()
        self._parts.setSizes(SHARES[place])
        self._show_plan()
        if place == ORDER:
            self.view.setFocus()  # for its keys: back, next, tick

    def offer(self, offers: dict[str, tuple[str, str]]) -> None:
        """For keys of plans: a sentence, and the words on the button that takes the offer."""
        self.offers = offers
        self._tell()

    def say_progress(self, words: str, button: str = "") -> None:
        """How far the search for better plans is; `button` stops it or has it go on."""
        self.foot.say_progress(words, button)
        self._share_out()

    def pick(self, names: Collection[str]) -> None:
        """Pieces are picked elsewhere: show the board of the first one."""
        self._moment = self._moment._replace(picked=tuple(names))
        holding = next((p for p in self.plans if any(map(p.holding, names))), None)
        if holding is not None and not any(map(self.plan.holding, names) if self.plan else ()):
            self.choose_plan(holding.key)
        self._light()
        if holding is not None and self.isVisible():
            first = next(name for name in names if holding.holding(name))
            self.view.show_about(f"{PIECE}{first}")

    def choose_plan(self, key: str) -> None:
        """Show the plan of a task."""
        self._is_told = True
        self._key = key
        self.table.choose(lambda row: row.key == key)
        listed = [(material_words(each, self._unit), each.key) for each in self.plans]
        self.tools.offer(listed, key)
        self._is_told = False
        self._show_plan()

    # ------------------------------------------------------------ inside

    def _show_plan(self) -> None:
        plan = self.plan
        self._tell()
        if plan is None:
            self._drawn = None, "", self.names
            self.view.show_boards(())
            self.settings.sorted.rows.show_records((), self._unit)
            return
        if not self._is_drawn(plan):
            self._drawn = plan.cut.plan, self._unit, self.names
            self.view.show_boards([self._board(plan, each) for each in plan.layouts])
        self._show_settings(plan)
        self.order.show_plan(plan, self.done)

    def _is_drawn(self, plan: SawnPlan) -> bool:
        """Whether the drawings show this very plan already, under the same names."""
        drawn, unit, names = self._drawn
        return drawn is plan.cut.plan and unit == self._unit and names.parts == self.names.parts

    def _board(self, plan: SawnPlan, layout: Layout) -> Board:
        title = title_words(plan, layout)
        return Board(
            layout,
            Shown(
                unit=self._unit, names=self.names.parts, numbers=plan.numbers(layout),
                title=title, all_named=False, is_rough=plan.cut.plan.task.kind != "sheets",
            ),
        )  # fmt: skip

    def _show_settings(self, plan: SawnPlan) -> None:
        made = Counter(step.batch for step in plan.steps if step.key in self.done)
        rows = [
            SettingRow(place, batch, _boards(plan, place), made[place])
            for place, batch in enumerate(plan.batches)
        ]
        self._is_told = True
        self.settings.sorted.rows.show_records(rows, self._unit)
        self._is_told = False

    def _tell(self) -> None:
        plan = self.plan
        sentence, words = self.offers.get(self._key, ("", ""))
        if plan is None:
            self.told.setText("" if self.plans else FIRST)
            self.foot.tell("", "", "")
            return
        told = plan_sentences(plan, self._unit)
        self.told.setText(" ".join((*told, sentence)))
        self.foot.tell(sentence or told[0], "\n".join(told), words)
        self._share_out()

    def _light(self) -> None:
        if self.plan is not None:
            self.view.light(lights(self.plan, self._moment))

    def _tip(self, about: str) -> str:
        if about.startswith(PIECE):
            return self.names.told(about.removeprefix(PIECE), self._unit)
        number = int(about.rpartition("/")[2])
        steps = self.plan.steps if self.plan is not None else ()
        return next((f"{s.setting}\n{s.detail}" for s in steps if s.number == number), "")

    def _name_board(self, place: int) -> None:
        self.tools.show_board(place, len(self.plan.layouts) if self.plan is not None else 0)

    # ------------------------------------------------------------ what is pressed

    def _plan_chosen(self, row: Any) -> None:
        if not self._is_told and row is not None:
            self.choose_plan(row.key)

    def _zoom(self, by: int) -> None:
        if by:
            self.view.zoom_by(by)
        else:
            self.view.set_zoom(1.0)

    def _setting_chosen(self, row: Any) -> None:
        if self._is_told or row is None or self.plan is None:
            return
        steps = [k for k, step in enumerate(self.plan.steps) if step.batch == row.place]
        still = (k for k in steps if self.plan.steps[k].key not in self.done)
        self.order.go_to(next(still, steps[0]))

    def _piece_pressed(self, name: str) -> None:
        self._moment = self._moment._replace(picked=(name,) if name else ())
        self._light()
        self.picked.emit(name)

    def _point(self, name: str) -> None:
        self._moment = self._moment._replace(pointed=name)
        self._light()

    def _cut_pressed(self, number: int) -> None:
        self.show_page(ORDER)
        self.order.go_to_cut(number)

    def _stepped(self, steps: int) -> None:
        if self.is_in_order:
            self.order.step_by(steps)
        else:
            self.view.show_board(self.view.board + steps)

    def _space(self) -> None:
        if self.is_in_order:
            self.order.tick()

    def _moved(self, place: int) -> None:
        """The order shows another step: light it, and bring its board into sight."""
        plan = self.plan
        if plan is None:
            return
        is_shown = self.is_in_order and bool(plan.steps)
        done = self.done if is_shown else ()
        self._moment = self._moment._replace(step=place if is_shown else -1, ticked=done)
        self._light()
        if not is_shown:
            return
        step = plan.steps[place]
        self._is_told = True
        self.settings.choose(lambda row: row.place == step.batch)
        self._is_told = False
        numbers = [layout.number for layout in plan.layouts]
        self.view.show_board(numbers.index(step.layout))

    def showEvent(self, event: QShowEvent) -> None:
        super().showEvent(event)
        self.seen.emit()

    def hideEvent(self, event: QHideEvent) -> None:
        super().hideEvent(event)
        self.left.emit()


def _boards(plan: SawnPlan, batch: int) -> str:
    """On which boards a setting is used."""
    return runs_words(step.layout for step in plan.steps if step.batch == batch)
